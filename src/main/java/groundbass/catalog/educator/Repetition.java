package groundbass.catalog.educator;

import java.util.Objects;

/** What a request is that names an idempotency key, as far as those of the last day tell. */
public sealed interface Repetition {
    /** The first of this key: it is to be done, and its answer to be kept. */
    record First() implements Repetition {}

    /** The one before it has not been answered yet. */
    record UnderWay() implements Repetition {}

    /** Something else was asked under this key. */
    record Otherwise() implements Repetition {}

    /** It was answered. */
    record Answered(ProgramAnswer answer) implements Repetition {
        public Answered {
            Objects.requireNonNull(answer);
        }
    }
}
