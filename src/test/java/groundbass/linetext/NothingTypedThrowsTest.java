package groundbass.linetext;

import static org.assertj.core.api.Assertions.assertThat;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import com.code_intelligence.jazzer.junit.FuzzTest;
import groundbass.score.RandomLines;
import org.junit.jupiter.api.Test;

class NothingTypedThrowsTest {
    private static final int SEEDS = 300;

    @Test
    void aSpoiledTextStillGivesALineThatPrints() {
        for (long seed = 0; seed < SEEDS; seed++) {
            var line = seed % 2 == 0 ? RandomLines.line(seed) : WildLines.line(seed);
            check("seed " + seed, new BadTexts(seed).spoil(LineText.print(line)));
        }
    }

    @Test
    void aSpoiledExampleStillGivesALineThatPrints() {
        for (long seed = 0; seed < SEEDS; seed++) {
            check("seed " + seed, new BadTexts(seed).spoil(LanternStreetTest.TEXT));
        }
    }

    @FuzzTest(maxDuration = "30s")
    void anyCharactersGiveALineThatPrints(FuzzedDataProvider data) {
        check("fuzzed", data.consumeRemainingAsString());
    }

    private static void check(String seed, String text) {
        var reading = readOrSay(seed, text);
        for (var problem : reading.problems()) {
            assertThat(Told.of(reading, problem)).as(seed).contains("^");
        }
        String printed = LineText.print(reading.line());
        var again = LineText.read(printed);
        assertThat(again.problems()).as("%s%n%s%n---%n%s", seed, text, printed).isEmpty();
        assertThat(again.line()).as("%s%n%s%n---%n%s", seed, text, printed).isEqualTo(reading.line());
    }

    private static Reading readOrSay(String seed, String text) {
        try {
            return LineText.read("spoiled.line", text);
        } catch (RuntimeException e) {
            throw new AssertionError(seed + " throws on:\n" + text, e);
        }
    }
}
