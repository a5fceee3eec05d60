package groundbass.audience.question;

import groundbass.catalog.episode.EpisodeId;
import groundbass.post.EmailAddress;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;

/**
 * A question, and what became of it.
 *
 * @param lesson the title of the lesson, as it is called today
 * @param email whose question it is
 * @param locale the language in which an answer's letter is written around it
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
        Optional<Instant> settledAt) {}
