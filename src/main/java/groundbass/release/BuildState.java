package groundbass.release;

import java.util.Objects;

/** How far the building of a release has come. */
public sealed interface BuildState {
    /** Nobody has begun. */
    record Waiting() implements BuildState {}

    /** Under way: so many of its steps are done. */
    record Building(int done, int total) implements BuildState {}

    /** Every file is there and stays as it is. */
    record Ready() implements BuildState {}

    /** It could not be built; the cause, for the educator. */
    record Failed(String cause) implements BuildState {
        public Failed {
            Objects.requireNonNull(cause);
        }
    }
}
