package groundbass.audience.question;

import groundbass.identity.IdForm;
import groundbass.identity.TextValue;
import groundbass.store.RandomId;
import java.util.Optional;

/** The id of a question. */
public record QuestionId(String value) implements TextValue {
    public QuestionId {
        IdForm.require(value);
    }

    static QuestionId next() {
        return new QuestionId(RandomId.next());
    }

    /** Reads text from outside; empty where it has not the form of an id. */
    public static Optional<QuestionId> parse(String text) {
        return IdForm.isId(text) ? Optional.of(new QuestionId(text)) : Optional.empty();
    }
}
