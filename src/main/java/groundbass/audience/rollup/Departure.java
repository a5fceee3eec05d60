package groundbass.audience.rollup;

import groundbass.audience.student.StudentId;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.series.SeriesId;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jdbi.v3.core.Handle;

/**
 * The weeks in which a student took something, by lesson and by series, told from their records before these lose them.
 * They go from the sums that are made of records to those of students who have left.
 */
final class Departure {
    private final Handle handle;
    private final Map<Subject, TreeSet<LocalDate>> weeks = new TreeMap<>();

    private Departure(Handle handle) {
        this.handle = handle;
    }

    /** A lesson or a series, and the week of it that is not summed up yet, if any is. */
    private record Subject(String id, boolean isSeries, Optional<LocalDate> nextWeek) implements Comparable<Subject> {
        @Override
        public int compareTo(Subject that) {
            return id.compareTo(that.id);
        }

        boolean hasSummed(LocalDate week) {
            return nextWeek.filter(week::isBefore).isPresent();
        }
    }

    private record Taken(
            EpisodeId episode,
            SeriesId series,
            ZoneId zone,
            Optional<LocalDate> nextWeek,
            Instant startedAt,
            Optional<Instant> began) {
        LocalDate week() {
            return Mondays.of(startedAt, zone);
        }

        boolean isInAWeekOfTheSeries() {
            return began.map(at -> !week().isBefore(Mondays.of(at, zone))).orElse(false);
        }
    }

    static Departure of(Handle handle, StudentId student) {
        var departure = new Departure(handle);
        handle.createQuery("""
                        select download.episode_id as episode, series.id as series,
                            coalesce(taken_series.zone, series.zone) as zone, taken_series.next_week,
                            download.started_at, <began> as began
                        from download join episode on episode.id = download.episode_id
                        join series on series.id = episode.series_id
                        left join taken_series on taken_series.series_id = series.id
                        where download.student_id = :student""").define("began", SeriesWeeks.BEGAN).bind("student", student).mapTo(Taken.class).stream()
                .filter(Taken::isInAWeekOfTheSeries)
                .forEach(departure::note);
        return departure;
    }

    private void note(Taken taken) {
        var week = taken.week();
        weeks(new Subject(taken.episode().value(), false, taken.nextWeek())).add(week);
        weeks(new Subject(taken.series().value(), true, taken.nextWeek())).add(week);
    }

    private TreeSet<LocalDate> weeks(Subject subject) {
        return weeks.computeIfAbsent(subject, key -> new TreeSet<>());
    }

    void count() {
        weeks.forEach((subject, all) -> all.forEach(week -> count(subject, all.first(), week)));
    }

    private void count(Subject subject, LocalDate joined, LocalDate week) {
        keep(subject.id(), joined, week);
        if (subject.hasSummed(week)) {
            takeAway(subject, joined, week);
        }
    }

    private void keep(String subject, LocalDate joined, LocalDate week) {
        int known = handle.execute(
                "update taken_departed set students = students + 1 where subject = ? and joined = ? and week = ?",
                subject,
                joined,
                week);
        if (known == 0) {
            handle.execute(
                    "insert into taken_departed (subject, joined, week, students) values (?, ?, ?, 1)",
                    subject,
                    joined,
                    week);
        }
    }

    private void takeAway(Subject subject, LocalDate joined, LocalDate week) {
        if (subject.isSeries()) {
            handle.execute(
                    "update taken_cohort set students = students - 1 where series_id = ? and joined = ? and week = ?",
                    subject.id(),
                    joined,
                    week);
            handle.execute(
                    "update taken_series_week set students = students - 1 where series_id = ? and week = ?",
                    subject.id(),
                    week);
        } else {
            handle.execute(
                    "update taken_week set students = students - 1 where episode_id = ? and week = ?",
                    subject.id(),
                    week);
        }
    }
}
