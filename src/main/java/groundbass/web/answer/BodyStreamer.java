package groundbass.web.answer;

import jakarta.servlet.ServletOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.eclipse.jetty.ee10.servlet.HttpOutput;

/**
 * Copies a part of a body to a response in chunks. The chunks lie outside the heap and go to the socket as they are:
 * {@code FileChannel.transferTo} into a servlet's stream would copy every 8 KiB twice. Used once, by one thread.
 */
final class BodyStreamer {
    // a chunk that is only begun is not counted as sent: larger ones would be a little faster, and leave larger gaps
    // between the ranges of a reader who was cut off and comes back for the rest
    private static final int CHUNK = 64 * 1024;
    private static final Queue<ByteBuffer> SPARE = new ConcurrentLinkedQueue<>();

    private long sent;

    /** How many bytes have left so far. */
    long sent() {
        return sent;
    }

    /** Sends {@code count} bytes from {@code position}; returns only when all of them have been handed to the system. */
    void copy(FileBody.Opened body, long position, long count, ServletOutputStream out) throws IOException {
        var spare = SPARE.poll();
        var chunk = spare == null ? ByteBuffer.allocateDirect(CHUNK) : spare;
        try {
            while (sent < count) {
                fill(chunk, body, position + sent, count - sent);
                int full = chunk.remaining();
                write(out, chunk);
                sent += full;
            }
            out.flush();
        } finally {
            SPARE.add(chunk);
        }
    }

    private static void fill(ByteBuffer chunk, FileBody.Opened body, long position, long left) throws IOException {
        chunk.clear();
        chunk.limit((int) Math.min(CHUNK, left));
        if (body.read(chunk, position) < 0) {
            throw new IOException("the file ended before its size");
        }
        chunk.flip();
    }

    private static void write(ServletOutputStream out, ByteBuffer chunk) throws IOException {
        if (out instanceof HttpOutput direct) {
            direct.write(chunk);
        } else {
            Channels.newChannel(out).write(chunk);
        }
    }
}
