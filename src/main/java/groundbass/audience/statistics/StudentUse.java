package groundbass.audience.statistics;

import groundbass.audience.student.Student;
import java.time.Instant;

/** What one student took of some episodes: how many downloads, of how many episodes, from when to when. */
public record StudentUse(Student student, long downloads, long episodes, Instant first, Instant last) {}
