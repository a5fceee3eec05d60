package groundbass.audio;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Arrays;

/**
 * Passes on what the encoder writes, but for its first frame, an empty one that it keeps free for {@link Mp3Info}: what
 * stands in there is known at the end only.
 */
final class Mp3Body extends FilterOutputStream {
    /** An MPEG frame of layer III is never longer. */
    private static final int LONGEST = 1_441;

    private static final int POLYNOMIAL = 0xA001; // of CRC-16, bits reversed

    private final byte[] first = new byte[LONGEST];
    private int kept;
    private int firstLength = LONGEST;
    private long bytes;
    private int checksum;

    Mp3Body(OutputStream out) {
        super(out);
    }

    @Override
    public void write(int value) throws IOException {
        write(new byte[] {(byte) value}, 0, 1);
    }

    @Override
    public void write(byte[] encoded, int from, int count) throws IOException {
        int at = from;
        while (at < from + count && kept < firstLength) {
            keep(encoded[at++]);
        }
        int left = from + count - at;
        out.write(encoded, at, left);
        bytes += left;
        for (int i = at; i < from + count; i++) {
            checksum = checksum(checksum, encoded[i]);
        }
    }

    private void keep(byte value) {
        first[kept++] = value;
        if (kept == Mp3Frame.HEADER) {
            firstLength = frame().length();
        }
    }

    private Mp3Frame frame() {
        int header = (first[0] & 0xff) << 24 | (first[1] & 0xff) << 16 | (first[2] & 0xff) << 8 | first[3] & 0xff;
        return Mp3Frame.read(header).orElseThrow(() -> new IllegalStateException("the encoder wrote no frame"));
    }

    static int checksum(int before, int value) {
        int checksum = before ^ value & 0xff;
        for (int bit = 0; bit < 8; bit++) {
            checksum = (checksum & 1) == 0 ? checksum >> 1 : checksum >> 1 ^ POLYNOMIAL;
        }
        return checksum;
    }

    /** The frame that comes before all that was passed on. @param samples that were encoded of each channel */
    byte[] info(long samples) {
        return Mp3Info.of(Arrays.copyOf(first, firstLength), frame(), samples, bytes, checksum);
    }
}
