package groundbass.linetext;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.RandomLines;
import java.util.Random;
import org.junit.jupiter.api.Test;

class NothingTypedThrowsTest {
    private static final int SEEDS = 300;
    private static final String WRITTEN = "bar key rest hold for as 0123456789EADGx,+-=&ea:()\"/#b \n\n\n";

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

    @Test
    void anyCharactersGiveALineThatPrints() {
        for (long seed = 0; seed < SEEDS; seed++) {
            check("seed " + seed, characters(new Random(seed)));
        }
    }

    /** Half of them are such that line text is written in; the others anything, also controls and halves of pairs. */
    private static String characters(Random random) {
        var text = new StringBuilder();
        for (int rest = random.nextInt(400); rest > 0; rest--) {
            text.append(
                    random.nextBoolean()
                            ? WRITTEN.charAt(random.nextInt(WRITTEN.length()))
                            : (char) random.nextInt(random.nextBoolean() ? 128 : 65_536));
        }
        return text.toString();
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
