package groundbass.audience.statistics;

import groundbass.audience.student.Student;
import java.time.Instant;
import org.jdbi.v3.core.mapper.Nested;
import org.jdbi.v3.core.mapper.reflect.ColumnName;

/** What one student took of some episodes: how many downloads, of how many episodes, from when to when. */
public record StudentUse(
        @Nested Student student,
        long downloads,
        long episodes,
        @ColumnName("first_at") Instant first,
        @ColumnName("last_at") Instant last) {}
