package groundbass.web.answer;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** Bytes that can be read from any place: a file, or an array. */
sealed interface FileBody {
    /** Opens the body; the caller closes it. */
    Opened open() throws IOException;

    /** An open body. {@code read} fills {@code into} from {@code position} and returns how much it read, or -1. */
    interface Opened extends AutoCloseable {
        long size() throws IOException;

        int read(ByteBuffer into, long position) throws IOException;

        @Override
        void close() throws IOException;
    }

    record OnDisk(Path file) implements FileBody {
        @Override
        public Opened open() throws IOException {
            var channel = FileChannel.open(file, StandardOpenOption.READ);
            return new Opened() {
                @Override
                public long size() throws IOException {
                    return channel.size();
                }

                @Override
                public int read(ByteBuffer into, long position) throws IOException {
                    return channel.read(into, position);
                }

                @Override
                public void close() throws IOException {
                    channel.close();
                }
            };
        }
    }

    /** The array is shared with the caller, who does not change it. */
    @SuppressWarnings("ArrayRecordComponent")
    record InMemory(byte[] bytes) implements FileBody {
        @Override
        public Opened open() {
            return new Opened() {
                @Override
                public long size() {
                    return bytes.length;
                }

                @Override
                public int read(ByteBuffer into, long position) {
                    int count = (int) Math.min(into.remaining(), bytes.length - position);
                    into.put(bytes, (int) position, count);
                    return count == 0 ? -1 : count;
                }

                @Override
                public void close() {}
            };
        }
    }
}
