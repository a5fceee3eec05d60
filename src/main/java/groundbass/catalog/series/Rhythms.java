package groundbass.catalog.series;

import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.EducatorId;
import groundbass.form.Outcome;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** The rhythms of the series, as rows. */
public final class Rhythms {
    /** Where it is told that another window has saved since. */
    public static final String MEANWHILE = "base";

    private final Jdbi jdbi;
    private final Audit audit;

    public Rhythms(Jdbi jdbi, Audit audit) {
        this.jdbi = jdbi;
        this.audit = audit;
    }

    public Optional<ReleaseRhythm> of(SeriesId series) {
        return jdbi.withHandle(handle -> handle.createQuery(
                        "select first_on, at_time, weeks from series_rhythm where series_id = :series")
                .bind("series", series)
                .mapTo(Row.class)
                .findOne()
                .map(row -> row.rhythm(breaks(handle, series))));
    }

    private record Row(LocalDate firstOn, String atTime, int weeks) {
        ReleaseRhythm rhythm(SortedSet<LocalDate> breaks) {
            return new ReleaseRhythm(firstOn, LocalTime.parse(atTime), weeks, breaks);
        }
    }

    private static TreeSet<LocalDate> breaks(Handle handle, SeriesId series) {
        return new TreeSet<>(handle.createQuery("select free_on from series_break where series_id = :series")
                .bind("series", series)
                .mapTo(LocalDate.class)
                .list());
    }

    /** Saves what an educator typed for a series of theirs, where nothing is wrong with it. Promised hours stay. */
    public Outcome<Optional<ReleaseRhythm>> save(EducatorId who, SeriesId series, RhythmForm form) {
        return save(who, series, form, "");
    }

    /**
     * The same for an educator who saw the rhythm as it stood.
     *
     * @param base what its form said then, as {@link RhythmForm#base} names it; empty for however it stands
     * @return refused where it was changed since
     */
    public Outcome<Optional<ReleaseRhythm>> save(EducatorId who, SeriesId series, RhythmForm form, String base) {
        var outcome = form.read();
        return outcome.result().isEmpty()
                ? outcome
                : jdbi.inTransaction(
                        handle -> save(handle, who, series, outcome.result().get(), base));
    }

    private Outcome<Optional<ReleaseRhythm>> save(
            Handle handle, EducatorId who, SeriesId series, Optional<ReleaseRhythm> rhythm, String base) {
        SeriesRows.lock(handle, series);
        var stored = RhythmForm.of(of(series));
        if (!base.isEmpty() && !stored.base().equals(base)) {
            return Outcome.refused(
                    MEANWHILE,
                    "rhythm.problem.meanwhile",
                    stored.first(),
                    stored.time(),
                    stored.weeks(),
                    stored.breaks());
        }
        handle.createUpdate("delete from series_rhythm where series_id = :series")
                .bind("series", series)
                .execute();
        rhythm.ifPresent(kept -> insert(handle, series, kept));
        audit.append(handle, who, AuditWord.RHYTHM_CHANGED, series.value());
        return Outcome.done(rhythm);
    }

    /** Makes a day of the rhythm a break, within the caller's transaction. @return false where it is one already */
    public boolean skip(Handle handle, EducatorId who, SeriesId series, LocalDate day) {
        if (breaks(handle, series).contains(day)) {
            return false;
        }
        enter(handle, series, day);
        audit.append(handle, who, AuditWord.RHYTHM_SKIPPED, series + " " + day);
        return true;
    }

    /** Takes a break back, within the caller's transaction. @return false where it is none */
    public boolean resume(Handle handle, EducatorId who, SeriesId series, LocalDate day) {
        boolean was = handle.createUpdate("delete from series_break where series_id = :series and free_on = :day")
                        .bind("series", series)
                        .bind("day", day)
                        .execute()
                == 1;
        if (was) {
            audit.append(handle, who, AuditWord.RHYTHM_RESUMED, series + " " + day);
        }
        return was;
    }

    private static void insert(Handle handle, SeriesId series, ReleaseRhythm rhythm) {
        handle.createUpdate("""
                        insert into series_rhythm (series_id, first_on, at_time, weeks)
                        values (:series, :first, :time, :weeks)""")
                .bind("series", series)
                .bind("first", rhythm.first())
                .bind("time", rhythm.time().toString())
                .bind("weeks", rhythm.weeks())
                .execute();
        for (var day : rhythm.breaks()) {
            enter(handle, series, day);
        }
    }

    private static void enter(Handle handle, SeriesId series, LocalDate day) {
        handle.createUpdate("insert into series_break (series_id, free_on) values (:series, :day)")
                .bind("series", series)
                .bind("day", day)
                .execute();
    }
}
