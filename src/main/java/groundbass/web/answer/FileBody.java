package groundbass.web.answer;

import groundbass.identity.Sha256;
import groundbass.store.Blobs;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.List;
import java.util.Optional;

/** Bytes that can be read from any place: a stored file, or an array. */
sealed interface FileBody {
    /** Opens the body; the caller closes it. */
    Opened open() throws IOException;

    /** An open body. {@code read} fills {@code into} from {@code position} and returns how much it read, or -1. */
    interface Opened extends AutoCloseable {
        long size() throws IOException;

        int read(ByteBuffer into, long position) throws IOException;

        /** Sees that it can be read from there, before anybody is told so. */
        default void begin(long position) throws IOException {}

        @Override
        void close() throws IOException;
    }

    /** A stored file; nothing of it is fetched before it is read. */
    record Stored(Blobs blobs, Sha256 sha256, long length) implements FileBody {
        @Override
        public Opened open() {
            return new OpenedStored(this);
        }
    }

    final class OpenedStored implements Opened {
        private final Stored stored;
        private Optional<Blobs.Opened> opened = Optional.empty();

        private OpenedStored(Stored stored) {
            this.stored = stored;
        }

        @Override
        public long size() {
            return stored.length();
        }

        @Override
        public void begin(long position) throws IOException {
            read(ByteBuffer.allocate(0), position);
        }

        @Override
        public int read(ByteBuffer into, long position) throws IOException {
            if (opened.isEmpty()) {
                opened = Optional.of(stored.blobs().openAnywhere(stored.sha256()));
            }
            return opened.get().read(into, position);
        }

        @Override
        public void close() throws IOException {
            if (opened.isPresent()) {
                opened.get().close();
            }
        }
    }

    /** Bodies one after the other. */
    record Joined(List<FileBody> parts) implements FileBody {
        public Joined {
            parts = List.copyOf(parts);
        }

        @Override
        public Opened open() throws IOException {
            var ends = new long[parts.size()];
            long size = 0;
            for (int i = 0; i < ends.length; i++) {
                try (var part = parts.get(i).open()) {
                    size += part.size();
                }
                ends[i] = size;
            }
            return new OpenedParts(parts, ends);
        }
    }

    /** One of several bodies is open at a time. */
    final class OpenedParts implements Opened {
        private final List<FileBody> parts;
        private final long[] ends;
        private int at = -1;
        private Opened opened;

        private OpenedParts(List<FileBody> parts, long[] ends) {
            this.parts = parts;
            this.ends = ends;
        }

        @Override
        public long size() {
            return ends.length == 0 ? 0 : ends[ends.length - 1];
        }

        @Override
        public void begin(long position) throws IOException {
            read(ByteBuffer.allocate(0), position);
        }

        @Override
        public int read(ByteBuffer into, long position) throws IOException {
            int part = 0;
            while (part < ends.length && position >= ends[part]) {
                part++;
            }
            if (part == ends.length) {
                return -1;
            }
            change(part);
            return opened.read(into, position - (part == 0 ? 0 : ends[part - 1]));
        }

        private void change(int part) throws IOException {
            if (part != at) {
                close();
                opened = parts.get(part).open();
                at = part;
            }
        }

        @Override
        public void close() throws IOException {
            if (opened != null) {
                opened.close();
                opened = null;
                at = -1;
            }
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
