package groundbass.form;

import java.util.List;
import java.util.Objects;
import java.util.Optional;

/** What became of something that a person asked for: it is done, or there are problems to tell. */
public sealed interface Outcome<T> {
    /** It is done; this came of it. */
    record Done<T>(T value) implements Outcome<T> {
        public Done {
            Objects.requireNonNull(value);
        }
    }

    /** Nothing was changed; at least one problem. */
    record Refused<T>(List<FieldProblem> problems) implements Outcome<T> {
        public Refused {
            problems = List.copyOf(problems);
            if (problems.isEmpty()) {
                throw new IllegalArgumentException("refused without a problem");
            }
        }
    }

    static <T> Outcome<T> done(T value) {
        return new Done<>(value);
    }

    static <T> Outcome<T> refused(List<FieldProblem> problems) {
        return new Refused<>(problems);
    }

    static <T> Outcome<T> refused(String field, String key, Object... args) {
        return new Refused<>(List.of(FieldProblem.of(field, key, args)));
    }

    /** The value, where it is done. */
    default Optional<T> result() {
        return this instanceof Done<T> done ? Optional.of(done.value()) : Optional.empty();
    }

    /** The problems; none where it is done. */
    default List<FieldProblem> problems() {
        return this instanceof Refused<T> refused ? refused.problems() : List.of();
    }
}
