package groundbass.intake;

import static groundbass.intake.Scores.HEAD;
import static groundbass.intake.Scores.bass;
import static groundbass.intake.Scores.bytes;
import static groundbass.intake.Scores.note;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.intake.Intake.Refused;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;

/** Files made to do harm, and files that are broken: all get an answer, soon, and nothing beside them is read. */
class HostileFilesTest {
    private static final String CONTAINER =
            "<container><rootfiles><rootfile full-path='score.xml'/></rootfiles></container>";

    private static String why(byte[] file) {
        var outcome = Intake.read(file, Optional.empty());
        assertThat(outcome).isInstanceOf(Refused.class);
        return ((Refused) outcome).why().key();
    }

    private static byte[] withEntity(String declared, String used) {
        String score = new String(bass(HEAD + note("A", 2, 16)), StandardCharsets.UTF_8);
        return score.replace(Scores.DOCTYPE, "<!DOCTYPE score-partwise [" + declared + "]>")
                .replace("<part-name>Bass", "<part-name>Bass" + used)
                .getBytes(StandardCharsets.UTF_8);
    }

    /** XML 1.0 section 4.2.2: what an external entity names is not read. */
    @Test
    void anExternalEntityIsNotResolved() {
        assertThat(why(withEntity("<!ENTITY host SYSTEM 'file:///etc/hostname'>", "&host;")))
                .isEqualTo("intake.refused.xml");
        assertThat(why(withEntity("<!ENTITY net SYSTEM 'http://127.0.0.1:1/x'>", "&net;")))
                .isEqualTo("intake.refused.xml");
    }

    @Test
    void anEntityThatGrowsIsNotUnfolded() {
        String bomb =
                "<!ENTITY a 'aaaaaaaaaa'><!ENTITY b '&a;&a;&a;&a;&a;&a;&a;&a;'><!ENTITY c '&b;&b;&b;&b;&b;&b;&b;&b;'>";
        assertThat(why(withEntity(bomb, "&c;"))).isEqualTo("intake.refused.xml");
    }

    @Test
    void aParameterEntityIsNotFetched() {
        assertThat(Intake.read(withEntity("<!ENTITY % far SYSTEM 'http://127.0.0.1:1/x'> %far;", ""), Optional.empty()))
                .isInstanceOf(Brought.class);
    }

    @Test
    void aDocumentTypeAloneDoesNoHarm() {
        assertThat(Intake.read(bass(HEAD + note("A", 2, 16)), Optional.empty())).isInstanceOf(Brought.class);
    }

    @Test
    void elementsInsideElementsComeToAnEnd() {
        byte[] deep = bytes("<score-partwise><part id='P1'><measure>" + "<note>".repeat(100_000));
        assertThat(why(deep)).isEqualTo("intake.refused.size");
    }

    @Test
    void aZipThatGrowsIsLeftInTime() throws IOException {
        byte[] growing = zip(
                "META-INF/container.xml", CONTAINER.getBytes(StandardCharsets.UTF_8), "score.xml", new byte[64 << 20]);
        assertThat(growing.length).isLessThan(1 << 20);
        assertThat(why(growing)).isEqualTo("intake.refused.size");
        byte[] before =
                zip("filler", new byte[64 << 20], "META-INF/container.xml", CONTAINER.getBytes(StandardCharsets.UTF_8));
        assertThat(why(before)).isEqualTo("intake.refused.size");
    }

    @Test
    void aZipWithoutAScoreSaysSo() throws IOException {
        assertThat(why(zip("letter.txt", new byte[3], "other.txt", new byte[3])))
                .isEqualTo("intake.refused.container");
        assertThat(why(zip(
                        "META-INF/container.xml",
                        CONTAINER.replace("score", "missing").getBytes(StandardCharsets.UTF_8),
                        "score.xml",
                        new byte[3])))
                .isEqualTo("intake.refused.container");
    }

    @Test
    void whatIsTooLargeIsNotLookedAt() {
        assertThat(why(new byte[Intake.LARGEST + 1])).isEqualTo("intake.refused.size");
    }

    @Test
    void whatIsNoScoreIsRefused() {
        assertThat(why("just words".getBytes(StandardCharsets.UTF_8))).isEqualTo("intake.refused.kind");
        assertThat(why(bytes("<html/>"))).isEqualTo("intake.refused.root");
        assertThat(why(new byte[0])).isEqualTo("intake.refused.kind");
        assertThat(why(bytes("<score-partwise>"))).isEqualTo("intake.refused.xml");
    }

    /** XML 1.0 section 4.3.3 and appendix F. */
    @Test
    void charactersAreReadAsTheFileNamesThem() {
        String score = new String(bass(HEAD + note("A", 2, 16)), StandardCharsets.UTF_8).replace("Bass<", "Baß<");
        String other = score.replace("UTF-8", "ISO-8859-1");
        assertThat(name(score.getBytes(StandardCharsets.UTF_8))).isEqualTo("Baß");
        assertThat(name(other.getBytes(StandardCharsets.ISO_8859_1))).isEqualTo("Baß");
        assertThat(name(score.replace("UTF-8", "UTF-16").getBytes(StandardCharsets.UTF_16)))
                .isEqualTo("Baß");
        assertThat(why(score.getBytes(StandardCharsets.ISO_8859_1))).isEqualTo("intake.refused.characters");
        assertThat(why(score.replace("UTF-8", "no-such").getBytes(StandardCharsets.UTF_8)))
                .isEqualTo("intake.refused.characters");
    }

    private static String name(byte[] file) {
        return ((Brought) Intake.read(file, Optional.empty())).part().name();
    }

    private static byte[] zip(String first, byte[] one, String second, byte[] other) throws IOException {
        var bytes = new ByteArrayOutputStream();
        try (var zip = new ZipOutputStream(bytes)) {
            zip.putNextEntry(new ZipEntry(first));
            zip.write(one);
            zip.putNextEntry(new ZipEntry(second));
            zip.write(other);
        }
        return bytes.toByteArray();
    }
}
