package groundbass.audience.question;

import groundbass.catalog.episode.EpisodeId;
import java.util.Objects;
import java.util.Optional;

/**
 * A question as it was typed.
 *
 * @param line which of the lesson's lines: {@code line}, {@code exercise-1}
 * @param place empty where the lesson as a whole is meant
 * @param words at most {@link #LONGEST} characters
 */
public record TypedQuestion(EpisodeId episode, Topic topic, String line, Optional<AskedPlace> place, String words) {
    /** Of a question, and of an answer. */
    public static final int LONGEST = 2_000;

    public TypedQuestion {
        Objects.requireNonNull(episode);
        Objects.requireNonNull(topic);
        Objects.requireNonNull(line);
        Objects.requireNonNull(place);
        if (words.isBlank() || words.length() > LONGEST) {
            throw new IllegalArgumentException("a question has 1 to " + LONGEST + " characters");
        }
    }
}
