package groundbass.audio;

import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;

/**
 * A stream that is not asked for more without end: a decoder that looks for a next frame behind the end of a file that
 * broke off would look for ever.
 */
final class EndingStream extends FilterInputStream {
    private static final int PATIENCE = 1_000;

    private int asked;

    EndingStream(InputStream in) {
        super(in);
    }

    /** The end was reached long ago. */
    static final class Ended extends RuntimeException {
        private static final long serialVersionUID = 1L;
    }

    @Override
    public int read() throws IOException {
        int read = super.read();
        count(read < 0);
        return read;
    }

    /** Also who asks for nothing, again and again, gets nowhere. */
    @Override
    public int read(byte[] bytes, int from, int length) throws IOException {
        int read = super.read(bytes, from, length);
        count(read <= 0);
        return read;
    }

    private void count(boolean inVain) {
        asked = inVain ? asked + 1 : 0;
        if (asked > PATIENCE) {
            throw new Ended();
        }
    }
}
