package groundbass.store.fault;

import java.util.stream.Stream;

/** What was thrown, what that was thrown for, and so on: a thread among many has its faults wrapped. */
public final class Causes {
    /** Causes may go in a circle. */
    private static final int DEEPEST = 10;

    private Causes() {}

    /** The outermost first. */
    public static Stream<Throwable> of(Throwable thrown) {
        return Stream.iterate(thrown, e -> e != null, Throwable::getCause).limit(DEEPEST);
    }
}
