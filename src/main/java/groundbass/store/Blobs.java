package groundbass.store;

import groundbass.identity.Sha256;
import groundbass.store.fault.DamagedFileException;
import groundbass.store.fault.FilesAway;
import java.io.ByteArrayInputStream;
import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.URI;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Set;
import java.util.function.Predicate;

/**
 * Files kept by their content: whoever holds the digest can open the file, and equal files are kept once. Which digests
 * are still wanted is told by database rows, never here. Thread-safe.
 *
 * <p>Where the place that keeps them is away as a whole, each throws {@link FilesAway}: that says nothing of any file.
 */
public interface Blobs {
    /** Something that writes a file from beginning to end. */
    @FunctionalInterface
    interface Content {
        void writeTo(OutputStream out) throws IOException;
    }

    /** An open file that is read at any place, best from there on and in order. For one thread. */
    interface Opened extends Closeable {
        /** Fills {@code into} from {@code position}. @return how many bytes, -1 at the end */
        int read(ByteBuffer into, long position) throws IOException;
    }

    /** A file of this machine, to be read while this is open. What had to be copied for it goes when it is closed. */
    interface Local extends Closeable {
        Path path();
    }

    /**
     * How an object store shall give a file to somebody who brings an address that we have signed.
     *
     * @param at the store's origin as readers reach it
     * @param mediaType what it shall be called
     * @param disposition whether it is saved, and under which name (RFC 6266)
     * @param life how long the address is good
     */
    record Lent(URI at, String mediaType, Optional<String> disposition, Duration life) {}

    /**
     * Keeps a stream, never holding it in memory; when this returns, the file outlives a power cut. The stream is not closed.
     *
     * @param limit the most bytes to take
     * @return empty where the stream is longer than the limit; nothing is kept then
     */
    Optional<Blob> put(InputStream in, long limit) throws IOException;

    /** Keeps what {@code content} writes, without a limit: for files that the program makes itself. */
    Blob put(Content content) throws IOException;

    /** Keeps some bytes. */
    default Blob put(byte[] content) throws IOException {
        return put(new ByteArrayInputStream(content), content.length).orElseThrow();
    }

    /** Whether this file is here and whole. */
    boolean exists(Sha256 sha256) throws IOException;

    /**
     * @throws java.nio.file.NoSuchFileException where no such file is kept
     * @throws DamagedFileException where it is no longer what the digest says
     */
    InputStream open(Sha256 sha256) throws IOException;

    /**
     * How long it is.
     *
     * @throws java.nio.file.NoSuchFileException where no such file is kept
     * @throws DamagedFileException where it is no longer what the digest says
     */
    long length(Sha256 sha256) throws IOException;

    /** Opens it to be read in parts; throws as {@link #length}. */
    Opened openAnywhere(Sha256 sha256) throws IOException;

    /** A file of this machine that holds it, for programs and libraries that want one; throws as {@link #length}. */
    Local local(Sha256 sha256) throws IOException;

    /**
     * Its place below the folder that a front server may send files from, with slashes; empty where it lies in no folder of
     * this machine. Throws as {@link #length}.
     */
    Optional<String> placeInFolder(Sha256 sha256) throws IOException;

    /**
     * An address under which whoever has it gets the file from the place that keeps it, for a while; empty where that gives
     * files to nobody else. It is made without asking whether the file is there.
     *
     * @throws FilesAway where it cannot be made
     */
    default Optional<URI> lend(Sha256 sha256, Lent as) throws IOException {
        return Optional.empty();
    }

    /**
     * Reads a file through, however lately it was read; what is damaged is put aside, where this process may move it.
     *
     * @return its length; empty where it is missing or damaged
     */
    OptionalLong verify(Sha256 sha256) throws IOException;

    /** What was asked for in vain, because it is missing or damaged, since this was last called. */
    Set<Sha256> missed();

    /**
     * Takes away files that no row names and that are older than a day; they can come back for weeks. A file is young when
     * it was put; a folder counts the day anew whenever a sweep found it wanted, a bucket does not. Sweep more often than
     * daily.
     *
     * @param named whether any row names this digest; asked while sweeping
     */
    Swept sweep(Predicate<Sha256> named) throws IOException;
}
