package groundbass.web.statistics;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.statistics.DownloadCounts;
import groundbass.audience.statistics.WeekUse;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** All figures are counted by hand. */
class WeekChartTest {
    private static final LocalDate MONDAY = LocalDate.of(2026, 3, 2);
    private static final LocalDate FRIDAY = LocalDate.of(2026, 3, 20);

    @Test
    void stacksWhatArrivedUnderWhatBrokeOffUnderWhatNobodySaw() {
        var chart = WeekChart.of(List.of(new WeekUse(MONDAY, 3, new DownloadCounts(10, 4, 1, 1))), FRIDAY);
        assertThat(chart.top()).isEqualTo(20);
        var column = chart.best();
        assertThat(column.complete()).isEqualTo(new ColumnScale.Part(500, 500));
        assertThat(column.broken()).isEqualTo(new ColumnScale.Part(300, 200));
        assertThat(column.unknown()).isEqualTo(new ColumnScale.Part(200, 100));
    }

    @Test
    void reachesToThisWeekAndShowsWeeksWithoutDownloads() {
        var chart = WeekChart.of(List.of(new WeekUse(MONDAY, 1, new DownloadCounts(1, 0, 0, 0))), FRIDAY);
        assertThat(chart.columns()).hasSize(12);
        assertThat(chart.first()).isEqualTo("2025-12-29");
        assertThat(chart.latest().week()).isEqualTo(new WeekUse(LocalDate.of(2026, 3, 16), 0, DownloadCounts.NONE));
        assertThat(chart.best().x()).isEqualTo(9 * 10);
        assertThat(chart.sinceTheFirst())
                .extracting(WeekUse::monday)
                .containsExactly(LocalDate.of(2026, 3, 16), LocalDate.of(2026, 3, 9), MONDAY);
    }

    @Test
    void showsAtMostTheLastYear() {
        var weeks = IntStream.range(0, 80)
                .mapToObj(i -> new WeekUse(MONDAY.plusWeeks(i), 1, new DownloadCounts(1, 0, 0, 0)))
                .toList();
        var chart = WeekChart.of(weeks, MONDAY.plusWeeks(79));
        assertThat(chart.columns()).hasSize(52);
        assertThat(chart.first()).isEqualTo(MONDAY.plusWeeks(28));
    }

    @Test
    void isEmptyWhereNothingWasTaken() {
        var chart = WeekChart.of(List.of(), FRIDAY);
        assertThat(chart.isEmpty()).isTrue();
        assertThat(chart.sinceTheFirst()).isEmpty();
        assertThat(chart.hasBroken() || chart.hasUnknown()).isFalse();
    }

    @ParameterizedTest
    @CsvSource({"0, 2", "2, 2", "3, 4", "5, 10", "10, 10", "11, 20", "61, 100", "100, 100", "401, 1000"})
    void itsTopIsARoundNumberAboveTheMost(long most, long top) {
        assertThat(ColumnScale.upTo(most).top()).isEqualTo(top);
    }
}
