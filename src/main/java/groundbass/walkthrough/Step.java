package groundbass.walkthrough;

import groundbass.score.Passage;
import java.util.Objects;

/** What is said of one stretch of the line: whole sentences of plain text. */
public record Step(Passage passage, Anchor anchor, String text) {
    public Step {
        Objects.requireNonNull(passage);
        Objects.requireNonNull(anchor);
        if (text.isBlank()) {
            throw new IllegalArgumentException("a step says something");
        }
    }

    public Step saying(String other) {
        return new Step(passage, anchor, other);
    }
}
