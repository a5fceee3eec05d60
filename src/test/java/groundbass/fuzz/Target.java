package groundbass.fuzz;

import java.util.List;
import java.util.Random;

/** Something that takes whatever it is given: an answer or a refusal comes, never an exception. */
interface Target extends AutoCloseable {
    /** Good inputs, from which spoiled ones are made. */
    List<byte[]> examples();

    /** Words that mean something there, or come close. */
    List<String> words();

    /** @throws Throwable what was found: a fault of ours */
    void take(byte[] input, Random random) throws Throwable;

    @Override
    default void close() {}
}
