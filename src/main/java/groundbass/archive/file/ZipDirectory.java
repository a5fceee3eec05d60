package groundbass.archive.file;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Path;

/**
 * How long the list of files in a zip is, which whoever opens it holds in memory (PKWARE .ZIP file format specification,
 * sections 4.3.12 to 4.3.16).
 */
public final class ZipDirectory {
    /** A good 300,000 files. */
    public static final long LONGEST = 1 << 25;

    private static final int END = 0x06054b50;
    private static final int END_64 = 0x06064b50;
    private static final int LARGEST_END = 22 + 0xffff + 20 + 56;
    private static final int LENGTH = 12;
    private static final int LENGTH_64 = 40;
    private static final long ELSEWHERE = 0xffffffffL;

    private ZipDirectory() {}

    /** What any record that may be the end of the zip says, the most of them; 0 where there is none. */
    public static long length(Path file) throws IOException {
        try (var channel = FileChannel.open(file)) {
            long size = channel.size();
            var tail = ByteBuffer.allocate((int) Math.min(size, LARGEST_END)).order(ByteOrder.LITTLE_ENDIAN);
            long from = size - tail.capacity();
            while (tail.hasRemaining() && channel.read(tail, from + tail.position()) >= 0) {
                // a read may give less than was asked for
            }
            return longest(tail.flip());
        }
    }

    private static long longest(ByteBuffer tail) {
        long longest = 0;
        for (int at = 0; at + Integer.BYTES <= tail.limit(); at++) {
            int signature = tail.getInt(at);
            if (signature == END && at + LENGTH + Integer.BYTES <= tail.limit()) {
                long length = tail.getInt(at + LENGTH) & ELSEWHERE;
                longest = Math.max(longest, length == ELSEWHERE ? 0 : length);
            } else if (signature == END_64 && at + LENGTH_64 + Long.BYTES <= tail.limit()) {
                long length = tail.getLong(at + LENGTH_64);
                longest = Math.max(longest, length < 0 ? Long.MAX_VALUE : length);
            }
        }
        return longest;
    }
}
