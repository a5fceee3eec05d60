package groundbass.audience.statistics;

import groundbass.audience.download.Download;
import groundbass.audience.download.DownloadRows;
import groundbass.audience.student.StudentId;
import groundbass.audience.student.Students;
import groundbass.catalog.episode.EpisodeId;
import groundbass.post.EmailAddress;
import groundbass.store.Instants;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.ZoneId;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.StatementContext;

/**
 * What was taken, in numbers. Episodes are given by id, a series as all of its episodes. A download of a robot or the
 * repeated one of an anonymous visitor is not counted; a student who left is counted as anonymous.
 */
public final class Statistics {
    private final Jdbi jdbi;

    public Statistics(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    /** One entry for each of the episodes, in their order, also where nothing was taken. */
    public List<EpisodeUse> ofEpisodes(List<EpisodeId> episodes) {
        if (episodes.isEmpty()) return List.of();
        var tallies = new EpisodeTallies(episodes);
        jdbi.useHandle(handle -> handle.createQuery("""
                        select episode_id, file_name, student_id, state, robot, count(*) as taken from download
                        where episode_id in (<episodes>) and not repeated
                        group by episode_id, file_name, student_id, state, robot""")
                .bindList("episodes", values(episodes))
                .map((row, context) -> tallies.add(row))
                .forEach(counted -> {}));
        return tallies.inOrder();
    }

    public EpisodeUse ofEpisode(EpisodeId episode) {
        return ofEpisodes(List.of(episode)).get(0);
    }

    /** Every week from the first to the last in which something was taken, in the educator's zone. */
    public List<WeekUse> byWeek(Collection<EpisodeId> episodes, ZoneId zone) {
        if (episodes.isEmpty()) return List.of();
        return jdbi.withHandle(
                handle -> {
                    try (Stream<Download> downloads = handle
                            .createQuery("""
                            select * from download where episode_id in (<episodes>) and not robot and not repeated""")
                            .bindList("episodes", values(episodes))
                            .map(DownloadRows::download)
                            .stream()) {
                        return Weeks.of(downloads, zone);
                    }
                });
    }

    /** Who took anything of the episodes, the latest first. */
    public List<StudentUse> students(Collection<EpisodeId> episodes) {
        if (episodes.isEmpty()) return List.of();
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select student.*, taken.downloads, taken.episodes, taken.first_at, taken.last_at
                        from student join (
                            select student_id, count(*) as downloads, count(distinct episode_id) as episodes,
                                min(started_at) as first_at, max(started_at) as last_at
                            from download where episode_id in (<episodes>) and not robot and not repeated
                            group by student_id) taken on taken.student_id = student.id
                        order by taken.last_at desc, student.id""")
                .bindList("episodes", values(episodes))
                .map(Statistics::studentUse)
                .list());
    }

    /** All that a student took, the latest first. */
    public List<Download> ofStudent(StudentId student) {
        return jdbi.withHandle(handle -> handle.createQuery(
                        "select * from download where student_id = :student order by started_at desc, id")
                .bind("student", student.value())
                .map(DownloadRows::download)
                .list());
    }

    /** Who took which file when, the earliest first; robots and repeated requests left out. */
    public List<Taken> taken(Collection<EpisodeId> episodes) {
        if (episodes.isEmpty()) return List.of();
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select download.*, student.email from download
                        left join student on student.id = download.student_id
                        where episode_id in (<episodes>) and not robot and not repeated
                        order by started_at, download.id""")
                .bindList("episodes", values(episodes))
                .map(Statistics::takenRow)
                .list());
    }

    private static List<String> values(Collection<EpisodeId> episodes) {
        return episodes.stream().map(EpisodeId::value).toList();
    }

    private static StudentUse studentUse(ResultSet row, StatementContext context) throws SQLException {
        return new StudentUse(
                Students.student(row, context),
                row.getLong("downloads"),
                row.getLong("episodes"),
                Instants.from(row, "first_at"),
                Instants.from(row, "last_at"));
    }

    private static Taken takenRow(ResultSet row, StatementContext context) throws SQLException {
        return new Taken(
                Optional.ofNullable(row.getString("email")).map(EmailAddress::new),
                DownloadRows.download(row, context));
    }
}
