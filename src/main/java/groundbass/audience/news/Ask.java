package groundbass.audience.news;

import groundbass.catalog.series.SeriesId;
import groundbass.post.EmailAddress;
import java.util.Locale;

/**
 * What somebody asks for.
 *
 * @param locale the language in which letters are to be written
 * @param wording what they agree to, word for word as it was shown
 */
public record Ask(SeriesId series, EmailAddress email, Locale locale, String wording, AskedOn askedOn) {}
