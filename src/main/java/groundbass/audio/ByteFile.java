package groundbass.audio;

import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.SeekableByteChannel;
import java.nio.charset.StandardCharsets;

/**
 * Reads numbers anywhere in a file through a small window, which moves forward cheaply. Whoever opened the channel closes
 * it. Not thread-safe.
 */
final class ByteFile {
    private static final int WINDOW = 1 << 16;

    private final SeekableByteChannel channel;
    private final long length;
    private final ByteBuffer window = ByteBuffer.allocate(WINDOW).limit(0);
    private long windowAt;

    ByteFile(SeekableByteChannel channel) throws IOException {
        this.channel = channel;
        this.length = channel.size();
    }

    long length() {
        return length;
    }

    boolean has(long at, long count) {
        return at >= 0 && count <= length - at;
    }

    /** One byte as 0 to 255. @throws EOFException where the file does not reach that far */
    int u8(long at) throws IOException {
        if (at < windowAt || at >= windowAt + window.limit()) {
            moveTo(at);
        }
        return Byte.toUnsignedInt(window.get((int) (at - windowAt)));
    }

    int littleEndian16(long at) throws IOException {
        return u8(at) | u8(at + 1) << 8;
    }

    long littleEndian32(long at) throws IOException {
        return littleEndian16(at) | (long) littleEndian16(at + 2) << 16;
    }

    int bigEndian32(long at) throws IOException {
        return u8(at) << 24 | u8(at + 1) << 16 | u8(at + 2) << 8 | u8(at + 3);
    }

    /** Whether these characters (Latin-1) stand there; false where the file ends before. */
    boolean says(long at, String characters) throws IOException {
        return holds(at, characters.getBytes(StandardCharsets.ISO_8859_1));
    }

    /** Whether these bytes stand there; false where the file ends before. */
    boolean holds(long at, byte[] expected) throws IOException {
        if (!has(at, expected.length)) {
            return false;
        }
        for (int i = 0; i < expected.length; i++) {
            if (u8(at + i) != Byte.toUnsignedInt(expected[i])) {
                return false;
            }
        }
        return true;
    }

    private void moveTo(long at) throws IOException {
        if (!has(at, 1)) {
            throw new EOFException("byte " + at + " of " + length);
        }
        window.clear();
        channel.position(at);
        while (window.hasRemaining() && channel.read(window) > 0) {
            // a read may bring less than was asked for
        }
        window.flip();
        windowAt = at;
        if (window.limit() == 0) {
            throw new EOFException("byte " + at + " of " + length);
        }
    }
}
