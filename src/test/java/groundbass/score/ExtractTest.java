package groundbass.score;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class ExtractTest {
    @Test
    void anyBarsOfAnyLineMakeALine() {
        for (long seed = 0; seed < 200; seed++) {
            var line = RandomLines.line(seed);
            int first = line.firstNumber();
            int last = first + line.bars().size() - 1;
            for (int from = first; from <= last; from++) {
                var part = Extract.bars(line, from, from + 1).orElseThrow();
                assertThat(part.bars()).as("seed %d from %d", seed, from).hasSize(Math.min(2, last - from + 1));
                assertThat(part.bars().get(0).length()).isEqualTo(line.bar(from).length());
                assertThat(part.inForce().get(0).tempo())
                        .isEqualTo(line.inForce().get(from - first).tempo());
                assertThat(part.bars().get(0).notes().stream().map(Note::place).toList())
                        .isEqualTo(
                                line.bar(from).notes().stream().map(Note::place).toList());
            }
        }
    }

    @Test
    void whatALineDoesNotHaveGivesNothing() {
        var line = RandomLines.line(1);
        assertThat(Extract.bars(line, 900, 901)).isEmpty();
        assertThat(Extract.bars(line, 4, 2)).isEmpty();
    }
}
