package groundbass.audience.rollup;

import groundbass.audience.download.DownloadRows;
import groundbass.audience.rollup.Watermark.Span;
import groundbass.audience.student.StudentId;
import groundbass.store.OneMoment;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * Keeps the sums of what was taken. A record is summed up two days after it began, when nothing changes it any more, exactly
 * once, in one transaction with the mark that says until when; what is younger is read from the records. Two nodes may do
 * this at once, and a step that is broken off has done nothing.
 */
public final class RollUps {
    /** Steps of one pass; a site with years of records is summed up after some passes. */
    private static final int STEPS = 20;

    private final Jdbi jdbi;
    private final Clock clock;

    public RollUps(Jdbi jdbi, Clock clock) {
        this.jdbi = jdbi;
        this.clock = clock;
    }

    /** Sums up what has settled, some steps of it; to be run every few minutes. @return whether more may be left */
    public boolean pass() {
        for (int step = 0; step < STEPS; step++) {
            if (!step()) {
                return false;
            }
        }
        return true;
    }

    /** Throws all sums away but those of students who have left, and makes them again. Pages are right meanwhile, but slow. */
    public void recompute() {
        jdbi.useTransaction(RollUps::forget);
        boolean more = true;
        while (more) {
            more = step();
        }
    }

    /**
     * Throws all sums away but those of students who have left; later passes make them again. In the transaction that
     * writes records of a time that may be summed up already.
     */
    public static void forget(Handle handle) {
        Watermark.lock(handle);
        LessonSums.clear(handle);
        SeriesWeeks.clear(handle);
        Watermark.reset(handle);
    }

    /**
     * Counts all records that are summed up once more, as they were at one moment; nobody waits for it meanwhile.
     *
     * @return where sums and records differ, a line for each table; empty where they agree
     */
    public List<String> differences() {
        return jdbi.inTransaction(OneMoment.LEVEL, handle -> new Proof(handle).differences());
    }

    /** Until the transaction ends nobody else sums up; for whoever locks rows of students before {@link #depart}. */
    public static void hold(Handle handle) {
        Watermark.lock(handle);
    }

    /** Keeps what a student had part in counted, before their records lose them; in the transaction in which they leave. */
    public static void depart(Handle handle, StudentId student) {
        Watermark.lock(handle);
        Departure.of(handle, student).count();
        DownloadRows.depart(handle, student);
    }

    private boolean step() {
        return jdbi.inTransaction(handle -> {
            Optional<Span> next = Watermark.next(handle, clock);
            next.ifPresent(span -> {
                // a crash leaves open what nobody has swept yet
                DownloadRows.breakOff(handle, span.firstId(), span.endId());
                LessonSums.add(handle, span);
                Watermark.moveTo(handle, span.until());
            });
            return next.isPresent() || new SeriesWeeks(handle, Watermark.at(handle)).step();
        });
    }
}
