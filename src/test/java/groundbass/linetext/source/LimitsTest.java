package groundbass.linetext.source;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.linetext.Reading;
import groundbass.linetext.problem.Mistake;
import java.util.EnumSet;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Each limit of the grammar, and a text far beyond it. The limits are ours, without a source. */
public class LimitsTest {
    /** What is made by texts too long to be examples; each is asked for below. */
    public static final Set<Mistake> MISTAKES = EnumSet.of(
            Mistake.TOO_MANY_PROBLEMS,
            Mistake.LINE_TOO_LONG,
            Mistake.TOO_MANY_BARS,
            Mistake.TOO_MANY_EVENTS,
            Mistake.TOO_MANY_NOTES,
            Mistake.TOO_MANY_DIRECTIONS,
            Mistake.TOO_MANY_SHARES);

    private static long count(Reading reading, String code) {
        return reading.problems().stream()
                .filter(problem -> problem.code().equals(code))
                .count();
    }

    @Test
    void aLineOfTextBeyondTheLongestIsLeftOut() {
        var reading = LineText.read("bar 1\n1-4 E5" + ", E5".repeat(200_000) + "\n");
        assertThat(count(reading, "line-too-long")).isOne();
        assertThat(reading.line().bars()).hasSize(1);
    }

    @Test
    void barsBeyondTheMostAreLeftOut() {
        var reading = LineText.read("bar\n1-4 E5\n".repeat(2_500));
        assertThat(count(reading, "too-many-bars")).isOne();
        assertThat(reading.problems()).hasSize(1);
        assertThat(reading.line().bars()).hasSize(2_000);
    }

    @Test
    void eventsBeyondTheMostAreLeftOut() {
        String full = "1 2 3 4 " + "rest, ".repeat(9_000) + "rest\n";
        var reading = LineText.read(("bar\n" + full).repeat(10));
        assertThat(count(reading, "too-many-events")).isOne();
        assertThat(reading.line().bars()).hasSize(7);
    }

    @Test
    void notesBeyondTheMostOfABarAreLeftOut() {
        var reading = LineText.read("bar\n1-4 E5" + ", E5".repeat(511) + "\n");
        assertThat(count(reading, "too-many-notes")).isOne();
        assertThat(reading.line().bar(1).notes()).hasSize(200);
    }

    @Test
    void notesBeyondTheMostOfALineAreLeftOut() {
        String first = "bar\n1-4 E5" + ", E5".repeat(191) + "\n";
        var reading = LineText.read(first + "bar = bar 1\n".repeat(400));
        int notes = reading.line().bars().stream()
                .mapToInt(bar -> bar.notes().size())
                .sum();
        assertThat(notes).isEqualTo(50_000);
        assertThat(count(reading, "too-many-notes")).isPositive();
    }

    @Test
    void directionsBeyondTheMostOfABarAreLeftOut() {
        var reading = LineText.read("bar\n1-4 " + "E5 p \"a\", ".repeat(128).replaceFirst(", $", "\n"));
        assertThat(count(reading, "too-many-directions")).isPositive();
        assertThat(reading.line().bar(1).directions()).hasSizeBetween(198, 200);
        assertThat(reading.line().bar(1).notes()).hasSize(128);
    }

    @Test
    void problemsBeyondTheMostAreCounted() {
        var reading = LineText.read("bar 1\n1-4 E5\n" + "nonsense\n".repeat(50_000));
        assertThat(reading.problems()).hasSize(101);
        var last = reading.problems().get(100);
        assertThat(last.code()).isEqualTo("too-many-problems");
        assertThat(last.message().args()).first().isEqualTo(49_900);
    }

    @Test
    void timesWithoutACommonGridAreLeftOut() {
        var reading = LineText.read("bar 1\n1 E5*11, E5*2\n2 E5*16, E5\n3 E5*18, E5\n4 E5\n");
        assertThat(count(reading, "too-finely-divided")).isPositive();
        assertThat(reading.line().bar(1).notes()).isNotEmpty();
    }

    @Test
    void sharesBeyondTheMostAreARest() {
        var reading = LineText.read("bar 1\n1-4 E5*999999, E5*999999\n");
        assertThat(count(reading, "too-many-shares")).isOne();
        assertThat(reading.line().bar(1).notes()).isEmpty();
    }

    @Test
    void pathologicalTextsEndInBoundedTime() {
        assertThat(LineText.read("bar 1\n" + "1 E5\n".repeat(100_000))
                        .line()
                        .bar(1)
                        .notes())
                .hasSize(1);
        assertThat(LineText.read("bar 1\n1 " + "+".repeat(50_000)).hasErrors()).isTrue();
        assertThat(LineText.read("bar 1\n1 " + "E5+".repeat(15_000) + "E5").hasErrors())
                .isTrue();
        assertThat(LineText.read("bar 1\n1 " + "\"".repeat(50_000)).hasErrors()).isTrue();
        assertThat(LineText.read("bar 1\n1 E5 " + "slap ".repeat(10_000)).hasErrors())
                .isTrue();
        assertThat(LineText.read("key " + "A".repeat(50_000)).hasErrors()).isTrue();
        assertThat(LineText.read("bar 1 over " + "C at 3, ".repeat(7_000)).hasErrors())
                .isTrue();
        assertThat(LineText.read("#".repeat(50_000) + "\n".repeat(1_000_000))
                        .line()
                        .bars())
                .hasSize(1);
        assertThat(LineText.read("repeat start\nbar\n1-4 rest\n".repeat(2000)).hasErrors())
                .isTrue();
        assertThat(LineText.read("ending 1\nbar\n1-4 rest\n".repeat(2000)).hasErrors())
                .isTrue();
    }
}
