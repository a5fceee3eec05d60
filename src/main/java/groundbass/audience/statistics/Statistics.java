package groundbass.audience.statistics;

import groundbass.audience.download.Download;
import groundbass.audience.download.DownloadRows;
import groundbass.audience.student.DemoAddress;
import groundbass.audience.student.StudentId;
import groundbass.catalog.episode.EpisodeId;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.generic.GenericType;

/**
 * What was taken, in numbers. Episodes are given by id, a series as all of its episodes. A download of a robot, one of an
 * educator at the desk or the repeated one of an anonymous visitor is not counted; a student who left is counted as
 * anonymous. The database sums; what may be long is asked for in parts or told one after another.
 */
public final class Statistics {
    private final Jdbi jdbi;

    public Statistics(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    /** One entry for each of the episodes, in their order, also where nothing was taken. */
    public List<EpisodeUse> ofEpisodes(List<EpisodeId> episodes) {
        if (episodes.isEmpty()) return List.of();
        return jdbi.withHandle(handle -> {
            var tallies = new EpisodeTallies(episodes, studentsOf(handle, episodes));
            handle.createQuery("""
                            select episode_id as episode, file_name as file, state, robot, count(*) as taken,
                                count(student_id) as known
                            from download where episode_id in (<episodes>) and not own and not repeated
                            group by episode_id, file_name, state, robot""")
                    .bindList("episodes", episodes)
                    .mapTo(EpisodeTallies.Taken.class)
                    .forEach(tallies::add);
            return tallies.inOrder();
        });
    }

    public EpisodeUse ofEpisode(EpisodeId episode) {
        return ofEpisodes(List.of(episode)).get(0);
    }

    private static Map<EpisodeId, Long> studentsOf(Handle handle, List<EpisodeId> episodes) {
        return handle.createQuery("""
                        select episode_id, count(distinct student_id) as students from download
                        where download.episode_id in (<episodes>) and <counted> group by episode_id""")
                .define("counted", Counted.ONES)
                .bindList("episodes", episodes)
                .setMapKeyColumn("episode_id")
                .setMapValueColumn("students")
                .collectInto(new GenericType<>() {});
    }

    /** Those of the weeks in which something was taken, in their order. */
    public List<WeekUse> byWeek(Collection<EpisodeId> episodes, Weeks weeks) {
        if (episodes.isEmpty()) return List.of();
        return jdbi.withHandle(handle -> WeekRows.of(handle, episodes, weeks));
    }

    /**
     * Who took anything of the episodes, the latest first.
     *
     * @param skipped how many of the first are left out
     * @param most how many there are at most
     */
    public List<StudentUse> students(Collection<EpisodeId> episodes, int skipped, int most) {
        if (episodes.isEmpty()) return List.of();
        var latest = new TakenRows(jdbi, episodes).latestStudents(skipped + most);
        var wanted = latest.subList(Math.min(skipped, latest.size()), latest.size());
        var uses = uses(episodes, wanted);
        return wanted.stream().map(uses::get).toList();
    }

    private Map<StudentId, StudentUse> uses(Collection<EpisodeId> episodes, List<StudentId> students) {
        if (students.isEmpty()) return Map.of();
        return jdbi.withHandle(handle -> handle
                .createQuery("""
                        select student.id, student.email, student.locale, student.created_at, taken.downloads,
                            taken.episodes, taken.first_at, taken.last_at
                        from student join (
                            select student_id, count(*) as downloads, count(distinct episode_id) as episodes,
                                min(started_at) as first_at, max(started_at) as last_at
                            from download where student_id in (<students>) and coalesce(download.episode_id, '') in (<episodes>) and <counted>
                            group by student_id) taken on taken.student_id = student.id""")
                .define("counted", Counted.ONES)
                .bindList("episodes", episodes)
                .bindList("students", students)
                .mapTo(StudentUse.class)
                .stream()
                .collect(Collectors.toMap(use -> use.student().id(), Function.identity())));
    }

    /** Those of the episodes of which somebody invented took something: their figures are a demonstration's. */
    public Set<EpisodeId> invented() {
        return jdbi.withHandle(handle -> new HashSet<>(handle.createQuery("""
                        select distinct download.episode_id from student
                        join download on download.student_id = student.id where student.email like :demo""")
                .bind("demo", "%@" + DemoAddress.DOMAIN)
                .mapTo(EpisodeId.class)
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

    /** The last downloads of an episode, the latest first. */
    public List<AddressedDownload> latest(EpisodeId episode, int most) {
        return new TakenRows(jdbi, List.of(episode)).latest(most);
    }

    /** Tells who took which file when, the earliest first, without ever holding all of it. */
    public void taken(Collection<EpisodeId> episodes, Consumer<AddressedDownload> each) {
        if (!episodes.isEmpty()) new TakenRows(jdbi, episodes).forEach(false, each);
    }

    /** Tells what students took, the earliest first, without ever holding all of it. */
    public void takenByStudents(Collection<EpisodeId> episodes, Consumer<AddressedDownload> each) {
        if (!episodes.isEmpty()) new TakenRows(jdbi, episodes).forEach(true, each);
    }
}
