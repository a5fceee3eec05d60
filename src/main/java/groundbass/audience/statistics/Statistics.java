package groundbass.audience.statistics;

import groundbass.audience.download.Download;
import groundbass.audience.download.DownloadRows;
import groundbass.audience.rollup.Counting;
import groundbass.audience.student.DemoAddress;
import groundbass.audience.student.StudentId;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.series.SeriesId;
import groundbass.store.OneMoment;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * What was taken, in numbers. A download of a robot, one of an educator at the desk or the repeated one of an anonymous
 * visitor is not counted; a student who left stays counted, as nobody in particular. Numbers come from the sums that {@code RollUps} keeps and from the records that are not in them yet;
 * what may be long is asked for in parts or told one after another.
 */
public final class Statistics {
    private final Jdbi jdbi;

    public Statistics(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    /** One entry for each of the episodes, in their order, also where nothing was taken. */
    public List<EpisodeUse> ofEpisodes(List<EpisodeId> episodes) {
        if (episodes.isEmpty()) return List.of();
        return jdbi.inTransaction(OneMoment.LEVEL, handle -> {
            var tallies = new EpisodeTallies(episodes);
            FileSums.of(handle, episodes).forEach(tallies::add);
            return tallies.inOrder();
        });
    }

    public EpisodeUse ofEpisode(EpisodeId episode) {
        return ofEpisodes(List.of(episode)).get(0);
    }

    /** One entry for each of the episodes, in their order, also where nothing was taken. */
    public List<LessonAges> ages(List<EpisodeId> episodes) {
        if (episodes.isEmpty()) return List.of();
        return jdbi.inTransaction(OneMoment.LEVEL, handle -> {
            var ages = AgeSums.of(handle, episodes);
            return episodes.stream()
                    .map(episode -> ages.getOrDefault(episode, LessonAges.none(episode)))
                    .toList();
        });
    }

    /** Those of the weeks in which something was taken, in their order. */
    public List<WeekUse> byWeek(StatisticsScope scope, Weeks weeks) {
        return jdbi.inTransaction(OneMoment.LEVEL, handle -> byWeek(handle, scope, weeks));
    }

    private static List<WeekUse> byWeek(Handle handle, StatisticsScope scope, Weeks weeks) {
        var sums = new WeekSums(handle, scope, weeks);
        var next = sums.next();
        var departed = sums.departed();
        return Stream.concat(
                        next.stream().flatMap(week -> sums.before(week).stream()),
                        WeekRows.of(handle, scope, weeks, next).stream())
                .map(week -> week.withMore(departed.getOrDefault(week.monday(), 0L)))
                .sorted(Comparator.comparing(WeekUse::monday))
                .toList();
    }

    /**
     * Who took anything of the series, the latest first.
     *
     * @param skipped how many of the first are left out
     * @param most how many there are at most
     */
    public List<StudentUse> students(Collection<SeriesId> series, int skipped, int most) {
        if (series.isEmpty()) return List.of();
        var latest = new LatestStudents(jdbi, series).first(skipped + most);
        var wanted = latest.subList(Math.min(skipped, latest.size()), latest.size());
        var uses = uses(series, wanted);
        // an account may have ended between the two
        return wanted.stream().map(uses::get).filter(Objects::nonNull).toList();
    }

    private Map<StudentId, StudentUse> uses(Collection<SeriesId> series, List<StudentId> students) {
        if (students.isEmpty()) return Map.of();
        return jdbi.withHandle(handle -> handle
                .createQuery("""
                        select student.id, student.email, student.locale, student.created_at, taken.downloads,
                            taken.episodes, taken.first_at, taken.last_at
                        from student join (
                            select student_id, count(*) as downloads, count(distinct episode_id) as episodes,
                                min(started_at) as first_at, max(started_at) as last_at
                            from download where student_id in (<students>) and %s and <counted>
                            group by student_id) taken on taken.student_id = student.id""".formatted(Counting.OF_SERIES))
                .define("counted", Counting.COUNTED)
                .bindList("ids", series)
                .bindList("students", students)
                .mapTo(StudentUse.class)
                .stream()
                .collect(Collectors.toMap(use -> use.student().id(), Function.identity())));
    }

    /** The series of which somebody invented took something: their figures are a demonstration's. */
    public Set<SeriesId> invented() {
        return jdbi.withHandle(handle -> new HashSet<>(handle.createQuery("""
                        select distinct series_id from episode where id in (
                            select download.episode_id from student
                            join download on download.student_id = student.id where student.email like :demo)""")
                .bind("demo", "%@" + DemoAddress.DOMAIN)
                .mapTo(SeriesId.class)
                .list()));
    }

    /** All that a student took, the latest first; also what is counted nowhere. */
    public List<Download> ofStudent(StudentId student) {
        return jdbi.withHandle(handle -> handle.createQuery(
                        "select <columns> from download where student_id = :student order by started_at desc, id")
                .define("columns", DownloadRows.COLUMNS)
                .bind("student", student)
                .mapTo(Download.class)
                .list());
    }

    /** Of each series of which a student took anything: since when, and how often. */
    public List<TakingPart> takingPart(StudentId student) {
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select series_id as series, joined, weeks from taking_student
                        where student_id = :student order by joined, series_id""")
                .bind("student", student)
                .mapTo(TakingPart.class)
                .list());
    }

    /** The last downloads of an episode, the latest first. */
    public List<AddressedDownload> latest(EpisodeId episode, int most) {
        return TakenRows.ofLesson(jdbi, episode).latest(most);
    }

    /** Tells who took which file of an episode when, the earliest first, without ever holding all of it. */
    public void taken(EpisodeId episode, Consumer<AddressedDownload> each) {
        TakenRows.ofLesson(jdbi, episode).forEach(false, each);
    }

    /** Tells what students took of the series, the earliest first, without ever holding all of it. */
    public void takenByStudents(Collection<SeriesId> series, Consumer<AddressedDownload> each) {
        if (!series.isEmpty()) TakenRows.ofSeries(jdbi, series).forEach(true, each);
    }
}
