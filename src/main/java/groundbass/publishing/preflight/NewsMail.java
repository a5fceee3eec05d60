package groundbass.publishing.preflight;

import groundbass.audience.news.NewsReaders;
import groundbass.catalog.series.SeriesId;
import groundbass.post.Outbox;

/**
 * Tells how letters to many are going to go out.
 *
 * @param leaves whether a mail server takes letters
 */
public record NewsMail(boolean leaves, NewsReaders readers, Outbox outbox) {
    /** @param undelivered what {@link #undelivered} says, which is the same for all series */
    public MailOutlook outlook(SeriesId series, int undelivered) {
        return new MailOutlook(readers.count(series).reached(), leaves, undelivered);
    }

    /** How many letters of the last days came to nobody. */
    public int undelivered() {
        return outbox.undelivered();
    }
}
