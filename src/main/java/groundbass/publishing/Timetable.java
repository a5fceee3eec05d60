package groundbass.publishing;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.EpisodeState.Scheduled;
import groundbass.catalog.series.Rhythm;
import groundbass.catalog.series.Rhythms;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesId;
import groundbass.catalog.series.SeriesRows;
import groundbass.form.FieldProblem;
import groundbass.form.Outcome;
import groundbass.publishing.Wish.Aim;
import groundbass.release.ReleaseId;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jdbi.v3.core.Handle;

/**
 * What an educator does with the hours of a series' rhythm: a lesson takes one or moves to another, two change places, one
 * is skipped. Whoever changes an hour locks the series, so that of two windows one is told what the other did. Numbers and
 * addresses of lessons stay as they are.
 */
public final class Timetable {
    private final PublishingParts parts;
    private final Publisher publisher;
    private final Rhythms rhythms;

    public Timetable(PublishingParts parts, Publisher publisher, Rhythms rhythms) {
        this.parts = parts;
        this.publisher = publisher;
        this.rhythms = rhythms;
    }

    /** Promises a lesson for a free hour of its series; where it was promised for another, it moves. */
    public Outcome<ReleaseId> promise(EducatorId who, EpisodeId id, LocalDateTime hour, Seen seen) {
        var promised = parts.jdbi.inTransaction(handle -> {
            var series = seriesOf(handle, who, id);
            if (series.isEmpty()) {
                return Outcome.<ReleaseId>refused("", "catalog.problem.gone");
            }
            var problem = taken(series.get(), id, hour);
            return problem.isPresent()
                    ? Outcome.<ReleaseId>refused(List.of(problem.get()))
                    : promise(who, id, hour, series.get().zone(), seen);
        });
        promised.result().ifPresent(parts.queue::add);
        return promised;
    }

    private Outcome<ReleaseId> promise(EducatorId who, EpisodeId id, LocalDateTime hour, ZoneId zone, Seen seen) {
        var promise = Promise.of(hour, zone, parts.clock.instant());
        return promise.result()
                .map(kept -> publisher.enter(who, id, Wish.of(Aim.OUT_THEN, kept, seen)))
                .orElseGet(() -> Outcome.refused(promise.problems()));
    }

    /** Why an hour is not to be had: it is none of the rhythm, or a break, or another lesson has it. */
    private Optional<FieldProblem> taken(Series series, EpisodeId id, LocalDateTime hour) {
        var rhythm = rhythms.of(series.id());
        if (rhythm.filter(one -> isHour(one, hour)).isEmpty()) {
            return Optional.of(meanwhile("publishing.problem.hour.none"));
        }
        if (rhythm.get().breaks().contains(hour.toLocalDate())) {
            return Optional.of(meanwhile("publishing.problem.hour.break"));
        }
        return lessonAt(series, hour)
                .filter(other -> !other.id().equals(id))
                .map(other -> meanwhile("publishing.problem.hour.taken", other.title()));
    }

    private static boolean isHour(Rhythm rhythm, LocalDateTime hour) {
        return rhythm.time().equals(hour.toLocalTime()) && rhythm.holds(hour.toLocalDate());
    }

    private Optional<Episode> lessonAt(Series series, LocalDateTime hour) {
        return Promise.of(hour, series.zone(), parts.clock.instant()).result().flatMap(promise -> inHand(series)
                .filter(episode ->
                        episode.state() instanceof Scheduled one && one.at().equals(promise.at()))
                .findFirst());
    }

    private Stream<Episode> inHand(Series series) {
        return parts.episodes.inHand(series.id(), 0).stream();
    }

    /**
     * Lets two promised lessons of one series change places.
     *
     * @param seen how each stood on the page, the first one's first
     */
    public Outcome<EpisodeId> swap(EducatorId who, EpisodeId one, EpisodeId other, List<Seen> seen) {
        return parts.jdbi.inTransaction(handle -> {
            var series = seriesOf(handle, who, one);
            var first = lock(handle, one);
            var second = lock(handle, other);
            boolean here = series.isPresent()
                    && first.isPresent()
                    && second.filter(lesson ->
                                    lesson.series().equals(series.get().id()))
                            .isPresent();
            return here
                    ? swap(handle, who, first.get(), second.get(), seen)
                    : Outcome.refused("", "catalog.problem.gone");
        });
    }

    private Optional<Episode> lock(Handle handle, EpisodeId id) {
        return parts.episodes.lock(handle, id);
    }

    private Outcome<EpisodeId> swap(Handle handle, EducatorId who, Episode first, Episode second, List<Seen> seen) {
        boolean still = seen.get(0).holds(first.state()) && seen.get(1).holds(second.state());
        if (!still || !waits(first) || !waits(second)) {
            return Outcome.refused(List.of(Wish.otherwise()));
        }
        var mine = (Scheduled) first.state();
        var theirs = (Scheduled) second.state();
        parts.episodes.schedule(handle, first.id(), hourOf(theirs, mine));
        parts.episodes.schedule(handle, second.id(), hourOf(mine, theirs));
        parts.audit.append(handle, who, "episode.swapped", first.id() + " with " + second.id());
        return Outcome.done(first.id());
    }

    /** Whether its hour is still to come: what is due may be going out at this moment. */
    private boolean waits(Episode episode) {
        return episode.state() instanceof Scheduled promise && !promise.isDue(parts.clock.instant());
    }

    private Scheduled hourOf(Scheduled hour, Scheduled lesson) {
        return new Scheduled(hour.at(), hour.zone(), hour.local(), parts.clock.instant(), lesson.firstRelease());
    }

    /** Takes a lesson's hour back. */
    public Outcome<EpisodeId> free(EducatorId who, EpisodeId id, Seen seen) {
        return publisher.withdraw(who, id, seen);
    }

    /** Makes an hour of the rhythm a break; one that a lesson has must be freed first. */
    public Outcome<SeriesId> skip(EducatorId who, SeriesId id, LocalDate day) {
        return onDay(who, id, day, (handle, series, rhythm) -> {
            var lesson = lessonAt(series, day.atTime(rhythm.time()));
            if (lesson.isPresent()) {
                return Optional.of(
                        meanwhile("publishing.problem.hour.taken", lesson.get().title()));
            }
            rhythms.skip(handle, who, id, day); // one that is a break already stays one
            return Optional.empty();
        });
    }

    /** Makes a break an hour again. */
    public Outcome<SeriesId> resume(EducatorId who, SeriesId id, LocalDate day) {
        return onDay(who, id, day, (handle, series, rhythm) -> {
            rhythms.resume(handle, who, id, day);
            return Optional.empty();
        });
    }

    /** What is done on a day of a rhythm. @return why it cannot be done */
    private interface OnDay {
        Optional<FieldProblem> act(Handle handle, Series series, Rhythm rhythm);
    }

    private Outcome<SeriesId> onDay(EducatorId who, SeriesId id, LocalDate day, OnDay act) {
        return parts.jdbi.inTransaction(handle -> {
            SeriesRows.lock(handle, id);
            var series = parts.catalog.ownedBy(who, id);
            if (series.isEmpty()) {
                return Outcome.<SeriesId>refused("", "catalog.problem.gone");
            }
            var rhythm = rhythms.of(id).filter(one -> one.holds(day));
            var problem = rhythm.isEmpty()
                    ? Optional.of(meanwhile("publishing.problem.hour.none"))
                    : act.act(handle, series.get(), rhythm.get());
            return problem.map(one -> Outcome.<SeriesId>refused(List.of(one))).orElseGet(() -> Outcome.done(id));
        });
    }

    /** The series of a lesson of theirs, locked. */
    private Optional<Series> seriesOf(Handle handle, EducatorId who, EpisodeId id) {
        var series = parts.episodes.ownedBy(who, id).flatMap(episode -> parts.catalog.find(episode.series()));
        series.ifPresent(one -> SeriesRows.lock(handle, one.id()));
        return series;
    }

    private static FieldProblem meanwhile(String key, Object... args) {
        return FieldProblem.of(Wish.STANDING, key, args);
    }
}
