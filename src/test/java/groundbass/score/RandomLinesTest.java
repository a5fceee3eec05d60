package groundbass.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import org.junit.jupiter.api.Test;

class RandomLinesTest {
    @Test
    void everySeedIsAValidLine() {
        for (long seed = 0; seed < 2000; seed++) {
            long thisSeed = seed;
            assertThatCode(() -> RandomLines.line(thisSeed)).as("seed %d", seed).doesNotThrowAnyException();
        }
    }

    @Test
    void sameSeedSameLine() {
        assertThat(RandomLines.line(7)).isEqualTo(RandomLines.line(7));
    }
}
