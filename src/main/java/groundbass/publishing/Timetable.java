package groundbass.publishing;

import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.EpisodeState.Scheduled;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.ReleaseRhythm;
import groundbass.catalog.series.Rhythms;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesId;
import groundbass.catalog.series.SeriesRows;
import groundbass.document.EpisodeDocument;
import groundbass.form.FieldProblem;
import groundbass.form.Outcome;
import groundbass.publishing.Wish.Aim;
import groundbass.publishing.preflight.Preflight;
import groundbass.release.ReleaseId;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
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
        return publisher.prepare(who, id, document -> promise(who, id, document, hour, seen));
    }

    private Outcome<ReleaseId> promise(
            EducatorId who, EpisodeId id, EpisodeDocument document, LocalDateTime hour, Seen seen) {
        return parts.jdbi.inTransaction(handle -> {
            var series = seriesOf(handle, who, id);
            if (series.isEmpty()) {
                return Outcome.<ReleaseId>refused("", "catalog.problem.gone");
            }
            var promise = Promise.of(hour, series.get().zone(), parts.clock.instant());
            var problem = taken(series.get(), id, hour).or(() -> passed(promise));
            return problem.isPresent()
                    ? Outcome.<ReleaseId>refused(List.of(problem.get()))
                    : publisher.enter(
                            who,
                            id,
                            document,
                            Wish.of(Aim.OUT_THEN, promise.result().orElseThrow(), seen));
        });
    }

    /** Why an hour cannot be promised that is one of the rhythm: it struck since the page was opened, or never comes. */
    private static Optional<FieldProblem> passed(Outcome<Promise> promise) {
        return promise.problems().stream()
                .findFirst()
                .map(problem -> new FieldProblem(Seen.STANDING, problem.key(), problem.args()));
    }

    /** Why an hour is not to be had: it is none of the rhythm, or a break, or another lesson has it. */
    private Optional<FieldProblem> taken(Series series, EpisodeId id, LocalDateTime hour) {
        var rhythm = rhythms.of(series.id());
        if (rhythm.filter(one -> one.isHour(hour)).isEmpty()) {
            return Optional.of(meanwhile("publishing.problem.hour.none"));
        }
        if (rhythm.get().breaks().contains(hour.toLocalDate())) {
            return Optional.of(meanwhile("publishing.problem.hour.break"));
        }
        return lessonAt(series, hour)
                .filter(other -> !other.id().equals(id))
                .map(other -> meanwhile("publishing.problem.hour.taken", other.title()));
    }

    private Optional<Episode> lessonAt(Series series, LocalDateTime hour) {
        return Promise.at(hour, series.zone()).flatMap(at -> parts.episodes.inHand(series.id(), 0).stream()
                .filter(episode ->
                        episode.state() instanceof Scheduled one && one.at().equals(at))
                .findFirst());
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
        var ended = Stream.concat(ended(first, theirs), ended(second, mine)).toList();
        if (!ended.isEmpty()) {
            return Outcome.refused(ended);
        }
        parts.episodes.schedule(handle, first.id(), hourOf(theirs, mine));
        parts.episodes.schedule(handle, second.id(), hourOf(mine, theirs));
        parts.audit.append(handle, who, AuditWord.EPISODE_SWAPPED, first.id() + " with " + second.id());
        return Outcome.done(first.id());
    }

    /** Why a lesson, as it was written last, cannot go out at an hour: what it is permitted ends before. */
    private Stream<FieldProblem> ended(Episode lesson, Scheduled hour) {
        var day = hour.local().toLocalDate();
        var rights =
                parts.look().at(lesson).draft().map(draft -> draft.document().rights());
        return rights
                .filter(one -> Preflight.ended(one, day).isPresent())
                .flatMap(one -> one.licence().lastDay())
                .map(last -> meanwhile("publishing.problem.swap.ended", lesson.title(), last, day))
                .stream();
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

    /** Makes an hour of the rhythm a break; one that a lesson has must be freed first, and one that has struck stays. */
    public Outcome<SeriesId> skip(EducatorId who, SeriesId id, LocalDate day) {
        return onDay(who, id, day, (handle, series, rhythm) -> {
            var hour = day.atTime(rhythm.time());
            if (Promise.at(hour, series.zone()).filter(this::hasStruck).isPresent()) {
                return Optional.of(meanwhile("publishing.problem.hour.over"));
            }
            var lesson = lessonAt(series, hour);
            if (lesson.isPresent()) {
                return Optional.of(
                        meanwhile("publishing.problem.hour.taken", lesson.get().title()));
            }
            rhythms.skip(handle, who, id, day); // one that is a break already stays one
            return Optional.empty();
        });
    }

    private boolean hasStruck(Instant hour) {
        return !hour.isAfter(parts.clock.instant());
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
        Optional<FieldProblem> act(Handle handle, Series series, ReleaseRhythm rhythm);
    }

    private Outcome<SeriesId> onDay(EducatorId who, SeriesId id, LocalDate day, OnDay act) {
        return parts.jdbi.inTransaction(handle -> {
            SeriesRows.lock(handle, id);
            var series = parts.catalog.open(who, Deed.WRITE, id);
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

    /** The series of a lesson in which they write, locked. */
    private Optional<Series> seriesOf(Handle handle, EducatorId who, EpisodeId id) {
        var series = parts.episodes.open(who, Deed.WRITE, id).flatMap(episode -> parts.catalog.find(episode.series()));
        series.ifPresent(one -> SeriesRows.lock(handle, one.id()));
        return series;
    }

    private static FieldProblem meanwhile(String key, Object... args) {
        return FieldProblem.of(Seen.STANDING, key, args);
    }
}
