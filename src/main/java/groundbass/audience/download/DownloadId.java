package groundbass.audience.download;

import groundbass.identity.IdForm;
import groundbass.identity.TextValue;
import groundbass.store.RandomId;
import java.time.Instant;
import java.util.Optional;

/**
 * The id of one download record: nine letters and digits of the moment, seven at random. In order of time, so that rows
 * written together lie together; that it can be guessed does not matter, since {@link DownloadToken} signs it.
 */
public record DownloadId(String value) implements TextValue {
    /** Nine digits to the base of 36 last until the year 5188. */
    private static final int MOMENT = 9;

    public DownloadId {
        IdForm.require(value);
    }

    /** No id that is made at this instant or later comes before this text, and every earlier one does. */
    public static String lowest(Instant at) {
        return moment(at) + "0".repeat(IdForm.LENGTH - MOMENT);
    }

    /** A new id at an instant; seven of 32 letters make two alike in one millisecond a matter of 2^-35. */
    public static DownloadId next(Instant now) {
        return new DownloadId(moment(now) + RandomId.next().substring(MOMENT));
    }

    private static String moment(Instant at) {
        String moment = Long.toString(at.toEpochMilli(), 36);
        return "0".repeat(Math.max(0, MOMENT - moment.length())) + moment;
    }

    /** Reads text from outside; empty where it has not the form of an id. */
    public static Optional<DownloadId> parse(String text) {
        return IdForm.isId(text) ? Optional.of(new DownloadId(text)) : Optional.empty();
    }

    @Override
    public String toString() {
        return value;
    }
}
