package groundbass.linetext;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.Line;
import groundbass.score.RandomLines;
import java.util.function.LongFunction;
import org.junit.jupiter.api.Test;

class RoundTripTest {
    private static final int SEEDS = 500;

    @Test
    void everyLinePrintsAndReadsBackTheSame() {
        check(RandomLines::line);
    }

    @Test
    void everyWildLinePrintsAndReadsBackTheSame() {
        check(WildLines::line);
    }

    @Test
    void printingIsCanonical() {
        String text = LineText.print(LineText.read(LanternStreetTest.TEXT).line());
        assertThat(LineText.print(LineText.read(text).line())).isEqualTo(text);
        assertThat(LineText.read(text).line())
                .isEqualTo(LineText.read(LanternStreetTest.TEXT).line());
    }

    private static void check(LongFunction<Line> lines) {
        for (long seed = 0; seed < SEEDS; seed++) {
            var line = lines.apply(seed);
            String text = LineText.print(line);
            var reading = LineText.read(text);
            assertThat(reading.problems()).as("seed %d%n%s", seed, text).isEmpty();
            assertThat(reading.line()).as("seed %d%n%s", seed, text).isEqualTo(line);
        }
    }
}
