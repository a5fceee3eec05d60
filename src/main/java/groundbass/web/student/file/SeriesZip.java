package groundbass.web.student.file;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/** The bundles of several lessons as one zip, whose size nobody knows before. Used by one thread. */
final class SeriesZip {
    private final String folder;
    private final ZipOutputStream zip;
    private long read;

    SeriesZip(String folder, OutputStream out) {
        this.folder = folder;
        this.zip = new ZipOutputStream(out);
    }

    /** @param lesson the folder for it; a bundle that has one of that name brings it along */
    void add(String lesson, InputStream bundle) throws IOException {
        read = 0;
        var from = new ZipInputStream(new Counted(bundle));
        for (var entry = from.getNextEntry(); entry != null; entry = from.getNextEntry()) {
            String inside = entry.getName().startsWith(lesson + "/") ? entry.getName() : lesson + "/" + entry.getName();
            var copy = new ZipEntry(folder + "/" + inside);
            copy.setTimeLocal(entry.getTimeLocal());
            // what was stored does not shrink; its size would have to be known before to store it here
            boolean stored = entry.getMethod() == ZipEntry.STORED;
            zip.setLevel(stored ? Deflater.NO_COMPRESSION : Deflater.DEFAULT_COMPRESSION);
            zip.putNextEntry(copy);
            from.transferTo(zip);
            zip.closeEntry();
        }
        zip.flush();
    }

    /** How many bytes of the bundle that was added last were read. */
    long read() {
        return read;
    }

    void finish() throws IOException {
        zip.finish();
    }

    private final class Counted extends FilterInputStream {
        Counted(InputStream in) {
            super(in);
        }

        @Override
        public int read() throws IOException {
            int one = super.read();
            read += one < 0 ? 0 : 1;
            return one;
        }

        @Override
        public int read(byte[] into, int from, int most) throws IOException {
            int count = super.read(into, from, most);
            read += Math.max(0, count);
            return count;
        }
    }
}
