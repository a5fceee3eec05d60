package groundbass.audience.download;

import groundbass.audience.student.StudentId;
import groundbass.catalog.episode.EpisodeId;
import java.util.List;
import org.jdbi.v3.core.Jdbi;

/** Which releases of a lesson a student has taken files of. */
public final class HeldReleases {
    private final Jdbi jdbi;

    public HeldReleases(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    /** Their ids, in no order. */
    public List<String> of(StudentId student, EpisodeId lesson) {
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select distinct release_id from download
                        where student_id = :student and episode_id = :lesson and not robot and not own""")
                .bind("student", student)
                .bind("lesson", lesson)
                .mapTo(String.class)
                .list());
    }
}
