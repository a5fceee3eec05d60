package groundbass.store.bucket;

import groundbass.store.Blobs;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.util.Optional;

/** An object read at any place: whoever reads on from where they were is given the same stream. */
final class OpenedObject implements Blobs.Opened {
    /** Opens the object from a byte of it on. */
    @FunctionalInterface
    interface Source {
        InputStream from(long position) throws IOException;
    }

    private final long length;
    private final Source source;
    private Optional<InputStream> stream = Optional.empty();
    private long at;

    OpenedObject(long length, Source source) {
        this.length = length;
        this.source = source;
    }

    @Override
    public int read(ByteBuffer into, long position) throws IOException {
        if (position >= length) {
            return -1;
        }
        if (stream.isEmpty() || position != at) {
            close();
            stream = Optional.of(source.from(position));
            at = position;
        }
        return filled(into, stream.get());
    }

    /** As full as can be: what comes in small pieces is sent on in larger ones. */
    private int filled(ByteBuffer into, InputStream from) throws IOException {
        var channel = Channels.newChannel(from);
        int before = into.position();
        for (int n = 0; n >= 0 && into.hasRemaining(); ) {
            n = channel.read(into);
        }
        int read = into.position() - before;
        at += read;
        return read == 0 ? -1 : read;
    }

    @Override
    public void close() throws IOException {
        if (stream.isPresent()) {
            stream.get().close();
            stream = Optional.empty();
        }
    }
}
