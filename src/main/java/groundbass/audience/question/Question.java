package groundbass.audience.question;

import groundbass.catalog.episode.EpisodeId;
import groundbass.post.EmailAddress;
import groundbass.text.Message;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;

/**
 * A question, and what became of it.
 *
 * @param lesson the title of the lesson, as it is called today
 * @param email whose question it is
 * @param locale the language in which an answer's letter is written around it
 * @param line which of the lesson's lines, as in {@link TypedQuestion}
 * @param outcome empty while it waits
 * @param answer empty where the letter says all
 */
public record Question(
        QuestionId id,
        EpisodeId episode,
        String lesson,
        EmailAddress email,
        Locale locale,
        Topic topic,
        String line,
        Optional<AskedPlace> place,
        String words,
        Instant askedAt,
        Optional<QuestionEnd> outcome,
        Optional<String> answer,
        Optional<Instant> settledAt) {
    private static final String EXERCISE = "exercise-";

    /** The number of the exercise that it is about; empty where it is about the lesson's own line. */
    public Optional<Integer> exercise() {
        return line.startsWith(EXERCISE)
                ? Optional.of(Integer.valueOf(line.substring(EXERCISE.length())))
                : Optional.empty();
    }

    /** In words what it is about: the exercise, the bar and the count, or the whole lesson. */
    public Message at() {
        var bar = place.map(AskedPlace::inWords);
        return exercise()
                .map(number -> bar.map(inside -> Message.of("question.at.exercise.in", number, inside))
                        .orElseGet(() -> Message.of("question.at.exercise", number)))
                .or(() -> bar)
                .orElseGet(() -> Message.of("question.at.all"));
    }
}
