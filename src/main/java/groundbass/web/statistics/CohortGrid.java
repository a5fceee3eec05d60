package groundbass.web.statistics;

import groundbass.audience.statistics.Cohort;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;

/** Students by the week in which they began, a row each; a square for each week after, the darker the more of them took something. */
public record CohortGrid(List<Row> rows) {
    /** So many weeks are shown, back from the last. */
    static final int MOST = 12;

    public CohortGrid {
        rows = List.copyOf(rows);
    }

    /** Those who began in one week. */
    public record Row(LocalDate joined, List<Square> squares) {
        public Row {
            squares = List.copyOf(squares);
        }
    }

    /**
     * One week of them.
     *
     * @param after weeks since they began
     * @param share how many of a hundred of those who began
     */
    public record Square(int after, long students, long share, String opacity) {}

    static CohortGrid of(List<Cohort> cohorts) {
        return new CohortGrid(cohorts.stream()
                .map(cohort -> new Row(cohort.joined(), squares(cohort.students())))
                .toList());
    }

    private static List<Square> squares(List<Long> students) {
        long began = Math.max(1, students.get(0));
        return IntStream.range(0, students.size())
                .mapToObj(after -> square(after, students.get(after), began))
                .toList();
    }

    private static Square square(int after, long students, long began) {
        return new Square(
                after,
                students,
                Math.round(100.0 * students / began),
                String.format(Locale.ROOT, "%.2f", (double) students / began));
    }

    public boolean isEmpty() {
        return rows.isEmpty();
    }

    /** How many weeks the first row has. */
    public List<Integer> weeks() {
        return IntStream.range(
                        0,
                        rows.stream()
                                .mapToInt(row -> row.squares().size())
                                .max()
                                .orElse(0))
                .boxed()
                .toList();
    }
}
