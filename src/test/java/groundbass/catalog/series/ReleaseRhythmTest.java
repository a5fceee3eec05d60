package groundbass.catalog.series;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.form.FieldProblem;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Days are those of the Gregorian calendar (ISO 8601): 1 May 2030 is a Wednesday. */
class ReleaseRhythmTest {
    private static ReleaseRhythm read(String first, String time, String weeks, String breaks) {
        return new RhythmForm(first, time, weeks, breaks)
                .read()
                .result()
                .orElseThrow()
                .orElseThrow();
    }

    private static List<String> hours(ReleaseRhythm rhythm, String from) {
        return rhythm.from(LocalDate.parse(from)).limit(3).map(Object::toString).toList();
    }

    @Test
    void everyWeekOnTheWeekdayOfTheFirst() {
        var rhythm = read("2030-05-01", "17:00", "1", "");
        assertThat(hours(rhythm, "2030-01-01"))
                .containsExactly("2030-05-01T17:00", "2030-05-08T17:00", "2030-05-15T17:00");
        assertThat(hours(rhythm, "2030-05-08")).startsWith("2030-05-08T17:00");
        assertThat(hours(rhythm, "2030-05-09")).startsWith("2030-05-15T17:00");
    }

    @Test
    void everySecondWeekCountsFromTheFirst() {
        var rhythm = read("2030-05-01", "17:00", "2", "");
        assertThat(hours(rhythm, "2030-05-02"))
                .containsExactly("2030-05-15T17:00", "2030-05-29T17:00", "2030-06-12T17:00");
    }

    @Test
    void breaksAreLeftOut() {
        var rhythm = read("2030-05-01", "17:00", "1", "2030-05-08\n2030-05-15, 2030-07-04");
        assertThat(hours(rhythm, "2030-05-01"))
                .containsExactly("2030-05-01T17:00", "2030-05-22T17:00", "2030-05-29T17:00");
    }

    @Test
    void aYearLaterTheHourIsStillOnTheClock() {
        assertThat(hours(read("2030-05-01", "17:00", "1", ""), "2031-01-01")).startsWith("2031-01-01T17:00");
    }

    @Test
    void noFirstDayIsNoRhythm() {
        assertThat(new RhythmForm(" ", "nonsense", "", "").read().result().orElseThrow())
                .isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "2030-02-30, 17:00, 1, '', first",
        "May 1,      17:00, 1, '', first",
        "2030-05-01, 25:00, 1, '', time",
        "2030-05-01, 17:00, 9, '', weeks",
        "2030-05-01, 17:00, 0, '', weeks",
        "2030-05-01, 17:00, 1, 'Christmas', breaks",
    })
    void whatIsWrongIsToldByItsField(String first, String time, String weeks, String breaks, String field) {
        assertThat(new RhythmForm(first, time, weeks, breaks).read().problems())
                .extracting(FieldProblem::field)
                .containsExactly(field);
    }

    @Test
    void aFormShowsWhatWasTyped() {
        var rhythm = new ReleaseRhythm(
                LocalDate.parse("2030-05-01"),
                LocalTime.of(17, 0),
                2,
                new TreeSet<>(List.of(LocalDate.parse("2030-12-25"))));
        assertThat(RhythmForm.of(Optional.of(rhythm)).read().result().orElseThrow())
                .contains(rhythm);
    }
}
