package groundbass.walkthrough.words;

import groundbass.score.Passage;
import java.util.Objects;

/** A step before it knows its neighbours. {@code subject} says what it tells, without the number of its bar. */
public record Told(Passage passage, String subject, String text) {
    public Told {
        Objects.requireNonNull(passage);
        Objects.requireNonNull(subject);
        Objects.requireNonNull(text);
    }

    /** The same with one more sentence. */
    public Told and(String sentence) {
        return new Told(passage, subject, text + " " + sentence);
    }
}
