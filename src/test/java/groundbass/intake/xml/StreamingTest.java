package groundbass.intake.xml;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import groundbass.intake.notice.Unreadable;
import groundbass.intake.xml.document.Document;
import groundbass.intake.xml.document.XmlElement;
import java.io.ByteArrayInputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** A document is read piece by piece: no more of it is asked for than is looked at, and no piece is larger than is needed. */
class StreamingTest {
    private static final String NOTE = "<note><rest/><duration>4</duration></note>";

    private static String score(String measure) {
        return "<score-partwise><part id='P1'><measure number='1'>" + measure + "</measure></part></score-partwise>";
    }

    /** What it takes of a document before it shows the first item of a measure, and how many there are. */
    private static final class Watching implements ScoreWalk.Visitor {
        private long given;
        private long givenAtFirst = -1;
        private int items;

        private InputStream watched(InputStream bytes) {
            given = 0;
            return new FilterInputStream(bytes) {
                @Override
                public int read(byte[] buffer, int offset, int length) throws IOException {
                    int read = super.read(buffer, offset, length);
                    given += Math.max(0, read);
                    return read;
                }
            };
        }

        @Override
        public void head(XmlElement element) {
            // it has none
        }

        @Override
        public boolean wants(String part) {
            return true;
        }

        @Override
        public void beginMeasure(String part, Map<String, String> attributes) {
            // only its items are watched
        }

        @Override
        public void item(String part, XmlElement item) {
            givenAtFirst = items == 0 ? given : givenAtFirst;
            items++;
        }

        @Override
        public void endMeasure(String part) {
            // only its items are watched
        }
    }

    private static void walk(String document) throws Unreadable {
        ScoreWalk.of(Document.of(document.getBytes(StandardCharsets.UTF_8)), new Watching());
    }

    private static void isTooLarge(String document) {
        assertThatThrownBy(() -> walk(document)).isInstanceOfSatisfying(Unreadable.class, refused -> assertThat(
                        refused.message().key())
                .isEqualTo("intake.refused.size"));
    }

    @Test
    void aDocumentIsReadAsItIsLookedAt() throws Unreadable {
        byte[] head = "<score-partwise><part id='P1'><measure number='1'>".getBytes(StandardCharsets.UTF_8);
        byte[] notes = NOTE.repeat(1_000).getBytes(StandardCharsets.UTF_8);
        byte[] foot = "</measure></part></score-partwise>".getBytes(StandardCharsets.UTF_8);
        var watching = new Watching();
        var document = Document.of(() -> {
            var all = new ArrayList<InputStream>();
            all.add(new ByteArrayInputStream(head));
            for (int i = 0; i < 200; i++) {
                all.add(new ByteArrayInputStream(notes));
            }
            all.add(new ByteArrayInputStream(foot));
            return watching.watched(new SequenceInputStream(Collections.enumeration(all)));
        });
        ScoreWalk.of(document, watching);
        assertThat(watching.items).isEqualTo(200_000);
        assertThat(watching.given).isGreaterThan(8_000_000);
        assertThat(watching.givenAtFirst).isLessThan(100_000);
    }

    @Test
    void onePieceOfItHasItsBounds() throws Unreadable {
        walk(score("<note>" + "<x/>".repeat(40_000) + "</note>"));
        isTooLarge(score("<note>" + "<x/>".repeat(60_000) + "</note>"));
        isTooLarge(score("<note>" + ("<x>" + "y".repeat(4_000) + "</x>").repeat(300) + "</note>"));
        isTooLarge(score("<!--" + "y".repeat(2 << 20) + "-->"));
        isTooLarge(score("<note x='" + "y".repeat(2 << 20) + "'/>"));
    }

    /** What is shown and left again is not counted together. */
    @Test
    void manySmallPiecesAreNoLargeOne() throws Unreadable {
        walk(score(NOTE.repeat(60_000)));
    }

    @Test
    void namesAreCountedForTheParserKeepsThem() throws Unreadable {
        isTooLarge(score(numbered(6_000, "<n%d/>")));
        isTooLarge(score("<note " + "n".repeat(300) + "='1'/>"));
        isTooLarge(score(numbered(6_000, "<note n%d='1'/>")));
        isTooLarge(score(numbered(6_000, "<?n%d?>")));
        walk(score(numbered(1_000, "<n%d/>")));
    }

    private static String numbered(int count, String pattern) {
        List<String> all = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            all.add(pattern.formatted(i));
        }
        return String.join("", all);
    }

    @Test
    void morePartsThanAnyScoreHasAreRefused() throws Unreadable {
        String part = "<part id='%d'><measure number='1'/></part>";
        assertThatThrownBy(() ->
                        PartSurvey.of(Document.of(("<score-partwise>" + numbered(1_200, part) + "</score-partwise>")
                                .getBytes(StandardCharsets.UTF_8))))
                .isInstanceOf(Unreadable.class);
        assertThat(PartSurvey.of(Document.of(("<score-partwise>" + numbered(900, part) + "</score-partwise>")
                        .getBytes(StandardCharsets.UTF_8))))
                .hasSize(900);
    }
}
