package groundbass.web.statistics;

import groundbass.audience.visit.CourseClicks;
import java.util.Optional;

/** A course that a lesson leads to, and how many followed its link. @param title empty where the lesson names it no more */
public record CourseRow(Optional<String> title, String address, long visitors) {
    static CourseRow of(CourseClicks clicks, ReleasedLines.Found release) {
        return new CourseRow(release.course(clicks.address()), clicks.address(), clicks.visitors());
    }
}
