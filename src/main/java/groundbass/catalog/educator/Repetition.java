package groundbass.catalog.educator;

import java.time.Instant;
import java.util.Objects;

/** What a request is that names an idempotency key, as far as those of the last day tell. */
public sealed interface Repetition {
    /**
     * The first of this key: it is to be done, and its answer to be kept.
     *
     * @param token the id of the token
     * @param begunAt when it was entered, to the microsecond; tells it from another that begins when it counts as broken off
     */
    record First(String token, String key, Instant begunAt) implements Repetition {
        public First {
            Objects.requireNonNull(token);
            Objects.requireNonNull(key);
            Objects.requireNonNull(begunAt);
        }
    }

    /** Its token was withdrawn since it was let in. */
    record LetInNoMore() implements Repetition {}

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
