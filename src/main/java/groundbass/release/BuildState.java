package groundbass.release;

import java.time.Instant;
import java.util.Objects;

/** How far the building of a release has come. */
public sealed interface BuildState {
    /** Nobody has begun. */
    record Waiting() implements BuildState {}

    /** Under way: so many of its steps are done. */
    record Building(int done, int total) implements BuildState {}

    /** Every file is there and stays as it is. */
    record Ready() implements BuildState {}

    /**
     * It could not be built so far.
     *
     * @param cause for the educator
     * @param tries how often it was tried
     * @param again when it is tried next
     */
    record Failed(String cause, int tries, Instant again) implements BuildState {
        public Failed {
            Objects.requireNonNull(cause);
            Objects.requireNonNull(again);
        }
    }

    /** A later release took its place before its files were there; nobody builds it any more. */
    record Overtaken() implements BuildState {}
}
