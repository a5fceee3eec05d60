package groundbass.audience.statistics;

import java.time.LocalDate;
import java.util.List;

/**
 * The students who took their first thing of a series in one week, those who have left among them.
 *
 * @param joined the Monday of that week
 * @param students how many of them took something in that week, in the next one, and so on, up to the last that is summed up
 */
public record Cohort(LocalDate joined, List<Long> students) {
    public Cohort {
        students = List.copyOf(students);
    }
}
