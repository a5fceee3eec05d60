package groundbass.performance;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.RandomLines;
import java.util.HashMap;
import java.util.Map;
import java.util.function.BiConsumer;
import org.junit.jupiter.api.Test;

/** What must hold for every line; properties by definition, no table. */
class RandomPerformanceTest {
    private static final int LINES = 400;

    private static void forEveryLine(BiConsumer<Line, Performance> check) {
        for (long seed = 0; seed < LINES; seed++) {
            try {
                var line = RandomLines.line(seed);
                check.accept(line, Performance.of(line, new Playing(50 + (int) (seed % 100), 1 + (int) (seed % 2))));
            } catch (AssertionError | RuntimeException failed) {
                throw new AssertionError("seed " + seed + ": " + failed.getMessage(), failed);
            }
        }
    }

    @Test
    void everyUnrolledNoteIsPlayedOnce() {
        forEveryLine((line, performance) -> {
            long written = performance.bars().stream()
                    .mapToLong(bar -> bar.bar().notes().size())
                    .sum();
            assertThat(performance.notes().stream().filter(note -> !note.grace()))
                    .hasSize((int) written);
            assertThat(performance.bars().size())
                    .isGreaterThanOrEqualTo(line.played().size());
        });
    }

    @Test
    void timeRunsForward() {
        forEveryLine((line, performance) -> {
            var before = Fraction.ZERO;
            for (var note : performance.notes()) {
                assertThat(note.when().at()).isGreaterThanOrEqualTo(before);
                assertThat(note.when().seconds()).isPositive();
                before = note.when().at();
            }
        });
    }

    @Test
    void barsFollowOneAnotherWithoutAGap() {
        forEveryLine((line, performance) -> {
            for (int i = 1; i < performance.bars().size(); i++) {
                assertThat(performance.bars().get(i).start())
                        .isEqualTo(performance.bars().get(i - 1).end());
            }
        });
    }

    @Test
    void noStringSoundsTwiceAtOnce() {
        forEveryLine((line, performance) -> {
            Map<Integer, Fraction> until = new HashMap<>();
            for (var note : performance.notes()) {
                assertThat(note.when().at()).isGreaterThanOrEqualTo(until.getOrDefault(note.string(), Fraction.ZERO));
                until.put(note.string(), note.when().until());
            }
        });
    }

    @Test
    void chordsCoverEachBarFromTheFirstOneOn() {
        forEveryLine((line, performance) -> {
            for (int i = 1; i < performance.chords().size(); i++) {
                var before = performance.chords().get(i - 1);
                assertThat(performance.chords().get(i).when().at())
                        .isGreaterThanOrEqualTo(before.when().until());
            }
        });
    }
}
