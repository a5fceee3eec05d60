package groundbass.audience.rollup;

import groundbass.audience.download.DownloadId;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/** Until when the records are summed up: whoever moves it holds its row, so that no record is counted by two nodes. */
public final class Watermark {
    /**
     * A record changes no more: requests join it for a day after it began ({@code Downloads}), and no single transfer lasts
     * another one.
     */
    static final Duration SETTLED = Duration.ofDays(2);
    /** Records of so long are summed up in one transaction. */
    private static final Duration AT_ONCE = Duration.ofDays(7);

    private static final Instant NOTHING = Instant.EPOCH;

    private Watermark() {}

    /** The ids of records that began before this text are summed up, all others are not. */
    public static String of(Handle handle) {
        return DownloadId.lowest(at(handle));
    }

    static Instant at(Handle handle) {
        return read(handle, "");
    }

    /** Until the transaction ends nobody else sums up, and no student's records lose their student. */
    static Instant lock(Handle handle) {
        return read(handle, " for update");
    }

    private static Instant read(Handle handle, String how) {
        return handle.createQuery("select before from summed_up" + how)
                .mapTo(Instant.class)
                .one();
    }

    static void moveTo(Handle handle, Instant before) {
        handle.createUpdate("update summed_up set before = :before")
                .bind("before", before)
                .execute();
    }

    static void reset(Handle handle) {
        moveTo(handle, NOTHING);
    }

    /** What can be summed up next, empty where nothing can: a span of whole hours. */
    static Optional<Span> next(Handle handle, Clock clock) {
        Instant settled = clock.instant().minus(SETTLED).truncatedTo(ChronoUnit.HOURS);
        Instant before = lock(handle);
        Instant from = before.equals(NOTHING) ? first(handle).orElse(settled) : before;
        if (!from.isBefore(settled)) {
            return Optional.empty();
        }
        Instant until = from.truncatedTo(ChronoUnit.HOURS).plus(AT_ONCE);
        return Optional.of(new Span(before, until.isBefore(settled) ? until : settled));
    }

    private static Optional<Instant> first(Handle handle) {
        return handle.createQuery("select started_at from download where id = (select min(id) from download)")
                .mapTo(Instant.class)
                .findOne();
    }

    /** From one instant up to, not including, another. */
    record Span(Instant from, Instant until) {
        String firstId() {
            return DownloadId.lowest(from);
        }

        String endId() {
            return DownloadId.lowest(until);
        }
    }
}
