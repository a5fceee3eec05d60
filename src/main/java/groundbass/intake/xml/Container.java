package groundbass.intake.xml;

import groundbass.intake.notice.Unreadable;
import groundbass.text.Message;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;

/**
 * The document in a compressed MusicXML file: the one that {@code META-INF/container.xml} names first (MusicXML 4.0,
 * container reference). What a zip unpacks to is counted while it is unpacked, whatever it says of itself.
 */
final class Container {
    /** Of the document, and of everything in the file that comes before it. */
    static final int LARGEST_UNPACKED = 48 << 20;

    private static final int MOST_ENTRIES = 1_000;
    private static final String INDEX = "META-INF/container.xml";

    private final byte[] file;
    private long unpacked;

    private Container(byte[] file) {
        this.file = file;
    }

    static boolean isZip(byte[] file) {
        return file.length > 3 && file[0] == 'P' && file[1] == 'K' && file[2] == 3 && file[3] == 4;
    }

    static byte[] document(byte[] file) throws Unreadable {
        var container = new Container(file);
        var index = container.entry(INDEX).orElseThrow(Container::noScore);
        return container.entry(rootFile(index)).orElseThrow(Container::noScore);
    }

    private static Unreadable noScore() {
        return new Unreadable(Message.of("intake.refused.container"));
    }

    private static String rootFile(byte[] index) throws Unreadable {
        try (var source = XmlSource.of(index)) {
            while (source.next()) {
                if (source.isStart() && source.name().equals("rootfile")) {
                    return Optional.ofNullable(source.attributes().get("full-path"))
                            .orElseThrow(Container::noScore);
                }
            }
        }
        throw noScore();
    }

    private Optional<byte[]> entry(String name) throws Unreadable {
        unpacked = 0;
        try (var zip = new ZipInputStream(new ByteArrayInputStream(file))) {
            int entries = 0;
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                if (++entries > MOST_ENTRIES) {
                    throw new Unreadable(Message.of("intake.refused.size"));
                }
                if (entry.getName().equals(name)) {
                    return Optional.of(content(zip));
                }
                pass(zip);
            }
            return Optional.empty();
        } catch (IOException | IllegalArgumentException e) {
            // names that are no text are an illegal argument to the library
            throw new Unreadable(Message.of("intake.refused.zip"), e);
        }
    }

    private byte[] content(ZipInputStream zip) throws IOException, Unreadable {
        int room = (int) (LARGEST_UNPACKED - unpacked);
        byte[] content = zip.readNBytes(room + 1);
        if (content.length > room) {
            throw new Unreadable(Message.of("intake.refused.size"));
        }
        return content;
    }

    private void pass(ZipInputStream zip) throws IOException, Unreadable {
        byte[] buffer = new byte[8192];
        for (int read = zip.read(buffer); read >= 0; read = zip.read(buffer)) {
            unpacked += read;
            if (unpacked > LARGEST_UNPACKED) {
                throw new Unreadable(Message.of("intake.refused.size"));
            }
        }
    }
}
