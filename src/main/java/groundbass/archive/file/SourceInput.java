package groundbass.archive.file;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/** A file of an archive while it is read: what is wrong with it is told apart from what is wrong with our own disk. */
public final class SourceInput extends FilterInputStream {
    SourceInput(InputStream in) {
        super(in);
    }

    /** The file cannot be unpacked. */
    public static final class Damaged extends IOException {
        private static final long serialVersionUID = 1L;

        Damaged(IOException cause) {
            super(cause);
        }
    }

    @Override
    public int read() throws IOException {
        try {
            return super.read();
        } catch (IOException e) {
            throw new Damaged(e);
        }
    }

    @Override
    public int read(byte[] bytes, int from, int length) throws IOException {
        try {
            return super.read(bytes, from, length);
        } catch (IOException e) {
            throw new Damaged(e);
        }
    }
}
