package groundbass.musicxml;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDateTime;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/**
 * A MusicXML document in its compressed form, {@code .mxl}: a zip that begins with the uncompressed entry
 * {@code mimetype}, and whose {@code META-INF/container.xml} names the document (MusicXML 4.0, container reference). The
 * same document gives the same bytes wherever it is made: every entry has one early time.
 */
public final class CompressedMusicXml {
    public static final String MEDIA_TYPE = "application/vnd.recordare.musicxml";

    private static final String DOCUMENT = "line.musicxml";

    /** The first even second of the format's calendar is taken for a time before it, and gets a field with a time zone. */
    private static final LocalDateTime EARLY = LocalDateTime.of(1980, 1, 1, 0, 0, 2);

    private CompressedMusicXml() {}

    /** @param document what {@link MusicXmlFile} made */
    public static byte[] of(byte[] document) {
        var bytes = new ByteArrayOutputStream();
        try (var zip = new ZipOutputStream(bytes)) {
            stored(zip, "mimetype", MEDIA_TYPE.getBytes(StandardCharsets.US_ASCII));
            deflated(zip, "META-INF/container.xml", XmlText.bytes(container()));
            deflated(zip, DOCUMENT, document);
        } catch (IOException e) {
            throw new UncheckedIOException("a zip in memory cannot be written", e);
        }
        return bytes.toByteArray();
    }

    private static Node container() {
        var file = Node.empty("rootfile").with("full-path", DOCUMENT).with("media-type", MusicXmlFile.MEDIA_TYPE);
        return Node.of("container", Node.of("rootfiles", file));
    }

    private static void stored(ZipOutputStream zip, String name, byte[] content) throws IOException {
        var crc = new CRC32();
        crc.update(content);
        var entry = new ZipEntry(name);
        entry.setMethod(ZipEntry.STORED);
        entry.setSize(content.length);
        entry.setCrc(crc.getValue());
        put(zip, entry, content);
    }

    private static void deflated(ZipOutputStream zip, String name, byte[] content) throws IOException {
        put(zip, new ZipEntry(name), content);
    }

    private static void put(ZipOutputStream zip, ZipEntry entry, byte[] content) throws IOException {
        entry.setTimeLocal(EARLY);
        zip.putNextEntry(entry);
        zip.write(content);
        zip.closeEntry();
    }
}
