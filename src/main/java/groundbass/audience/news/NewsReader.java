package groundbass.audience.news;

import groundbass.catalog.series.SeriesId;
import groundbass.post.EmailAddress;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;

/**
 * Somebody who agreed to get the news of a series, and the record of it.
 *
 * @param wording what they agreed to, word for word as it was shown
 * @param askedAt when they asked for it; {@code agreedAt} is when they proved that the address is theirs
 * @param endedAt since when they get none; empty while they do
 */
public record NewsReader(
        NewsReaderId id,
        SeriesId series,
        EmailAddress email,
        Locale locale,
        String wording,
        AskedOn askedOn,
        Instant askedAt,
        Instant agreedAt,
        Optional<Instant> endedAt) {}
