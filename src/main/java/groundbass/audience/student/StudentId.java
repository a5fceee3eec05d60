package groundbass.audience.student;

import groundbass.identity.IdForm;
import groundbass.identity.TextValue;
import groundbass.store.RandomId;
import java.util.Optional;

/** The id of a student; it tells nothing about the person. */
public record StudentId(String value) implements TextValue {
    public StudentId {
        IdForm.require(value);
    }

    public static StudentId next() {
        return new StudentId(RandomId.next());
    }

    /** Reads text from outside; empty where it has not the form of an id. */
    public static Optional<StudentId> parse(String text) {
        return IdForm.isId(text) ? Optional.of(new StudentId(text)) : Optional.empty();
    }

    @Override
    public String toString() {
        return value;
    }
}
