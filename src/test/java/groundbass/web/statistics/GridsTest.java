package groundbass.web.statistics;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.statistics.Cohort;
import groundbass.audience.statistics.HourUse;
import groundbass.web.statistics.ClockGrid.Square;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The numbers were worked out by hand. */
class GridsTest {
    private static final HourUse QUIET = new HourUse(1, 9, 1);
    private static final HourUse BUSY = new HourUse(2, 10, 4);

    @Test
    void theBusiestHourIsNamedFirstAndDrawnFull() {
        var grid = ClockGrid.of(List.of(QUIET, BUSY));
        assertThat(grid.best()).contains(BUSY);
        assertThat(grid.busiest()).containsExactly(BUSY, QUIET);
        assertThat(grid.squares()).containsExactly(new Square(QUIET, "0.25"), new Square(BUSY, "1.00"));
    }

    @Test
    void whoComesBackIsAShareOfWhoBegan() {
        var monday = LocalDate.of(2026, 2, 2);
        var row = CohortGrid.of(List.of(new Cohort(monday, List.of(4L, 1L))))
                .rows()
                .get(0);
        assertThat(row.joined()).isEqualTo(monday);
        assertThat(row.squares())
                .containsExactly(new CohortGrid.Square(0, 4, 100, "1.00"), new CohortGrid.Square(1, 1, 25, "0.25"));
    }
}
