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
    public MailOutlook outlook(SeriesId series) {
        return new MailOutlook(readers.count(series).reached(), leaves, outbox.undelivered());
    }
}
