package groundbass.store;

import groundbass.identity.Sha256;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.DigestOutputStream;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/** A file that {@link Blobs} keeps: its digest and its length in bytes. */
public record Blob(Sha256 sha256, long length) {
    private static final int BUFFER = 1 << 16;
    private static final Set<StandardOpenOption> OVER =
            Set.of(StandardOpenOption.CREATE, StandardOpenOption.TRUNCATE_EXISTING, StandardOpenOption.WRITE);

    public Blob {
        Objects.requireNonNull(sha256);
        if (length < 0) {
            throw new IllegalArgumentException("length below zero: " + length);
        }
    }

    /** Writes a file, new or in place of what is in it, onto the disk, and tells what it holds. */
    public static Blob write(Path file, Blobs.Content content) throws IOException {
        var digest = Sha256.digest();
        try (var channel = FileChannel.open(file, OVER)) {
            var out = new DigestOutputStream(Channels.newOutputStream(channel), digest);
            content.writeTo(out);
            out.flush();
            channel.force(true);
            return new Blob(Sha256.finish(digest), channel.size());
        }
    }

    /** Gives a file that was written whole its place among the kept ones. */
    public interface Settling {
        void settle(Path file, Blob blob) throws IOException;
    }

    /**
     * How a file comes in wherever it is kept: written whole first, then settled, and nothing is left of it where it was
     * written.
     *
     * @param limit bytes
     * @return empty where it is longer; then it is not settled
     */
    public static Optional<Blob> kept(Path temporary, long limit, Blobs.Content content, Settling into)
            throws IOException {
        try {
            var blob = write(temporary, content);
            if (blob.length() > limit) {
                return Optional.empty();
            }
            into.settle(temporary, blob);
            return Optional.of(blob);
        } finally {
            Files.deleteIfExists(temporary);
        }
    }

    /** All of a stream, or one byte more than the limit where it is longer. */
    public static Blobs.Content upTo(long limit, InputStream in) {
        return out -> copy(in, out, limit);
    }

    private static void copy(InputStream in, OutputStream out, long limit) throws IOException {
        byte[] buffer = new byte[BUFFER];
        long left = limit;
        for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
            out.write(buffer, 0, (int) Math.min(n, left + 1));
            left -= n;
            if (left < 0) {
                return;
            }
        }
    }
}
