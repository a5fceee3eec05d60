package groundbass.audience.news;

import groundbass.catalog.episode.EpisodeId;
import groundbass.post.EmailAddress;
import java.time.Instant;
import java.util.Locale;

/**
 * A letter of news that is still to be written.
 *
 * @param about the id of what it tells of; with the address it is unique
 * @param agreedAt when its reader agreed to such letters
 */
public record QueuedLetter(
        String about,
        NewsKind kind,
        EpisodeId episode,
        NewsReaderId reader,
        EmailAddress email,
        Locale locale,
        Instant agreedAt) {}
