package groundbass.store;

import groundbass.identity.Sha256;
import java.io.IOException;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/** {@link Blobs} as whoever runs the site has them: with the place where they lie, and with what keeps them the right ones. */
public interface BlobStore extends Blobs {
    /** The name under which each place keeps {@link #identity}. */
    String IDENTITY = "database.id";

    /** What an operator calls it: a folder, or an address such as {@code s3://bucket/prefix}. */
    String place();

    /**
     * From now on nothing is kept, moved or taken away without asking: a sweep asks before each file, and what is damaged,
     * or waits among what was taken away, stays where it is while the answer is no.
     *
     * @param held whether this process may write here; asked each time
     */
    void guardedBy(BooleanSupplier held);

    /** From now on nothing is moved: what is damaged is only told, for whoever looks beside a server. */
    void onlyRead();

    /** Writes something small, to see whether that can be done. @throws IOException where it cannot */
    void tryWriting() throws IOException;

    /** The name of every stored file, whatever it holds and whether any row names it. */
    void forEach(Consumer<Sha256> each) throws IOException;

    /** The identity of the site whose files these are; empty where none was given yet. */
    Optional<String> identity() throws IOException;

    /** Gives it one. */
    void identify(String identity) throws IOException;

    /** From now on a place without the identity is another. */
    void pair();

    /** Whether no file is kept yet. */
    boolean isEmpty() throws IOException;

    /** Whether a file of this name is kept, whatever it holds. */
    boolean holds(Sha256 sha256) throws IOException;

    /** Ends what connections there are. */
    default void close() {}
}
