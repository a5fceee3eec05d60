package groundbass.audience.student;

import groundbass.catalog.episode.EpisodeId;
import java.time.Clock;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * What students have practised, and what they like, joined from all browsers in which they sign in. It goes with the
 * account.
 */
public final class Practice {
    /** Lines of one student; nobody practises so many. */
    static final int MOST = 5_000;

    private static final String SELECT = """
            select episode_id as episode, line, practised_on, tempo, from_place, to_place from practised\s""";

    private final Jdbi jdbi;
    private final Clock clock;

    public Practice(Jdbi jdbi, Clock clock) {
        this.jdbi = jdbi;
        this.clock = clock;
    }

    /** Notes what a browser tells; what is known already and says more stays. Two windows may tell the same at once. */
    public void note(StudentId student, List<PractisedLine> lines) {
        jdbi.useTransaction(handle -> {
            if (Students.lock(handle, student)) note(handle, student, lines);
        });
    }

    private static void note(Handle handle, StudentId student, List<PractisedLine> lines) {
        Map<Name, PractisedLine> known = new HashMap<>();
        of(handle, student).forEach(line -> known.put(Name.of(line), line));
        for (var line : lines) {
            var before = Optional.ofNullable(known.get(Name.of(line)));
            if (before.map(line::saysMoreThan).orElseGet(() -> known.size() < MOST)) {
                write(handle, student, line);
                known.put(Name.of(line), line);
            }
        }
    }

    /** What tells the lines of one student apart. */
    private record Name(EpisodeId episode, String line) {
        static Name of(PractisedLine line) {
            return new Name(line.episode(), line.line());
        }
    }

    private static void write(Handle handle, StudentId student, PractisedLine line) {
        delete(handle, student, line);
        handle.createUpdate("""
                        insert into practised (student_id, episode_id, line, practised_on, tempo, from_place, to_place)
                        values (:student, :episode, :line, :practisedOn, :tempo, :fromPlace, :toPlace)""").bind("student", student).bindMethods(line).execute();
    }

    private static void delete(Handle handle, StudentId student, PractisedLine line) {
        handle.createUpdate("""
                        delete from practised
                        where student_id = :student and episode_id = :episode and line = :line""")
                .bind("student", student)
                .bind("episode", line.episode())
                .bind("line", line.line())
                .execute();
    }

    /** Makes a lesson a favourite, or no favourite any more; either can be done twice. */
    public void favour(StudentId student, EpisodeId episode, boolean chosen) {
        jdbi.useTransaction(handle -> {
            if (!Students.lock(handle, student)) return;
            unfavour(handle, student, episode);
            if (chosen) {
                handle.createUpdate("""
                                insert into favourite (student_id, episode_id, chosen_at)
                                values (:student, :episode, :now)""")
                        .bind("student", student)
                        .bind("episode", episode)
                        .bind("now", clock.instant())
                        .execute();
            }
        });
    }

    private static void unfavour(Handle handle, StudentId student, EpisodeId episode) {
        handle.execute(
                "delete from favourite where student_id = ? and episode_id = ?", student.value(), episode.value());
    }

    /** Forgets that a lesson was practised, and that it is a favourite: both, or after a fault neither. */
    public void forget(StudentId student, EpisodeId episode) {
        jdbi.useTransaction(handle -> {
            if (!Students.lock(handle, student)) return;
            unfavour(handle, student, episode);
            handle.execute(
                    "delete from practised where student_id = ? and episode_id = ?", student.value(), episode.value());
        });
    }

    /** What a student has practised, the last first. */
    public List<PractisedLine> of(StudentId student) {
        return jdbi.withHandle(handle -> of(handle, student));
    }

    private static List<PractisedLine> of(Handle handle, StudentId student) {
        return handle.createQuery(SELECT + "where student_id = :student order by practised_on desc, episode_id, line")
                .bind("student", student)
                .mapTo(PractisedLine.class)
                .list();
    }

    /** A student's favourites, the last first. */
    public List<EpisodeId> favourites(StudentId student) {
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select episode_id from favourite where student_id = :student
                        order by chosen_at desc, episode_id""")
                .bind("student", student)
                .mapTo(EpisodeId.class)
                .list());
    }
}
