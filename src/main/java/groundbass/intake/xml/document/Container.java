package groundbass.intake.xml.document;

import groundbass.intake.notice.Unreadable;
import groundbass.text.Message;
import java.io.ByteArrayInputStream;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;

/**
 * The document in a compressed MusicXML file: the one that {@code META-INF/container.xml} names first (MusicXML 4.0,
 * container reference). What a zip unpacks to is counted while it is unpacked, whatever it says of itself.
 */
public final class Container {
    /** Of the document, and of everything in the file that comes before it. */
    static final int LARGEST_UNPACKED = 48 << 20;

    private static final int MOST_ENTRIES = 1_000;
    private static final String INDEX = "META-INF/container.xml";

    private final byte[] file;
    private long unpacked;

    private Container(byte[] file) {
        this.file = file;
    }

    public static boolean isZip(byte[] file) {
        return file.length > 3 && file[0] == 'P' && file[1] == 'K' && file[2] == 3 && file[3] == 4;
    }

    public static Document document(byte[] file) throws Unreadable {
        String root = rootFile(Document.of(() -> new Container(file).entry(INDEX)));
        return Document.of(() -> new Container(file).entry(root));
    }

    private static Unreadable noScore() {
        return new Unreadable(Message.of("intake.refused.container"));
    }

    private static String rootFile(Document index) throws Unreadable {
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

    /** The content of an entry, to be unpacked as it is read. */
    private InputStream entry(String name) throws IOException, Unreadable {
        var zip = new ZipInputStream(new ByteArrayInputStream(file));
        try {
            return find(name, zip);
        } catch (IllegalArgumentException e) {
            // names that are no text are an illegal argument to the library
            zip.close();
            throw new Unreadable(Message.of("intake.refused.zip"), e);
        } catch (IOException | Unreadable e) {
            zip.close();
            throw e;
        }
    }

    private InputStream find(String name, ZipInputStream zip) throws IOException, Unreadable {
        int entries = 0;
        for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
            if (++entries > MOST_ENTRIES) {
                throw new Unreadable(Message.of("intake.refused.size"));
            }
            var content = new Counted(zip);
            if (entry.getName().equals(name)) {
                return content;
            }
            content.transferTo(OutputStream.nullOutputStream());
        }
        throw noScore();
    }

    /** What an entry unpacks to, as long as all that was unpacked before is not too much together with it. */
    private final class Counted extends FilterInputStream {
        private Counted(InputStream content) {
            super(content);
        }

        @Override
        public int read() throws IOException {
            int read = super.read();
            count(read < 0 ? 0 : 1);
            return read;
        }

        @Override
        public int read(byte[] buffer, int offset, int length) throws IOException {
            int read = super.read(buffer, offset, length);
            count(Math.max(0, read));
            return read;
        }

        private void count(int bytes) throws IOException {
            unpacked += bytes;
            if (unpacked > LARGEST_UNPACKED) {
                throw Document.tooLarge();
            }
        }
    }
}
