package groundbass.musicxml;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.RandomLines;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.zip.ZipInputStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.audiveris.proxymusic.ScorePartwise;
import org.audiveris.proxymusic.mxl.Mxl;
import org.audiveris.proxymusic.util.Marshalling;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The compressed form as MusicXML 4.0, container reference, has it. */
class CompressedMusicXmlTest {
    private static final byte[] DOCUMENT = MusicXmlFile.of(RandomLines.line(3));

    private static Map<String, byte[]> entries(byte[] file) throws Exception {
        var entries = new LinkedHashMap<String, byte[]>();
        try (var zip = new ZipInputStream(new ByteArrayInputStream(file))) {
            for (var entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                entries.put(entry.getName(), zip.readAllBytes());
            }
        }
        return entries;
    }

    /** PKWARE's application note, 4.3.7: the name begins at byte 30 and the content follows it, here without extra field. */
    @Test
    void theMediaTypeStandsReadableAtTheHead() {
        var head = new String(CompressedMusicXml.of(DOCUMENT), 0, 80, StandardCharsets.ISO_8859_1);
        assertThat(head.substring(30)).startsWith("mimetypeapplication/vnd.recordare.musicxmlPK");
        assertThat((int) head.charAt(8)).as("stored").isZero();
    }

    @Test
    void theContainerNamesTheDocument() throws Exception {
        var entries = entries(CompressedMusicXml.of(DOCUMENT));
        assertThat(entries.keySet()).containsExactly("mimetype", "META-INF/container.xml", "line.musicxml");
        assertThat(entries.get("line.musicxml")).isEqualTo(DOCUMENT);
        var container = DocumentBuilderFactory.newDefaultInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(entries.get("META-INF/container.xml")));
        assertThat(container.getDocumentElement().getTagName()).isEqualTo("container");
        var file = container.getElementsByTagName("rootfile").item(0).getAttributes();
        assertThat(file.getNamedItem("full-path").getNodeValue()).isEqualTo("line.musicxml");
        assertThat(file.getNamedItem("media-type").getNodeValue()).isEqualTo("application/vnd.recordare.musicxml+xml");
    }

    @Test
    void anotherReaderOpensIt(@TempDir java.nio.file.Path folder) throws Exception {
        var file = java.nio.file.Files.write(folder.resolve("line.mxl"), CompressedMusicXml.of(DOCUMENT));
        try (var mxl = new Mxl.Input(file.toFile())) {
            var root = mxl.getRootFiles().get(0);
            var score = (ScorePartwise) Marshalling.unmarshal(mxl.getInputStream(mxl.getEntry(root.fullPath)));
            assertThat(score.getPart()).hasSize(1);
        }
    }

    @Test
    void theSameDocumentGivesTheSameBytes() {
        assertThat(CompressedMusicXml.of(DOCUMENT)).isEqualTo(CompressedMusicXml.of(DOCUMENT));
    }
}
