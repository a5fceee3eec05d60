package groundbass.listening;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.groove.Band;
import groundbass.linetext.LineText;
import groundbass.performance.Performance;
import groundbass.performance.Playing;
import groundbass.score.Line;
import groundbass.sound.mix.Balance;
import groundbass.sound.mix.BandTrack;
import groundbass.sound.mix.BarSounds;
import groundbass.sound.mix.Mix;
import java.util.ArrayList;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Finds the bars of what our own synthesizer plays, so this shows that drift is followed, not how well a foreign recording
 * is heard. 30 ms are ours.
 */
class BarFinderTest {
    private static final int BARS = 8;

    /** The same music with a tempo for each bar: what a band plays that drifts. */
    private static Line line(int... tempos) {
        var text = new StringBuilder("tempo " + tempos[0] + "\n");
        for (int bar = 1; bar <= BARS; bar++) {
            text.append("\ntempo ")
                    .append(tempos[(bar - 1) % tempos.length])
                    .append("\nbar ")
                    .append(bar);
            text.append(" over Am7\n1 A0, A0\n2 E3, A0\n3 rest, A2\n4 ").append(bar % 2 == 0 ? "D2, D2\n" : "rest\n");
        }
        return LineText.read(text.toString()).line();
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void findsEachBarOfABandThatDrifts(long seed) {
        var random = new Random(seed);
        var tempos = random.ints(BARS, 93, 100).toArray();
        var played = Performance.of(line(tempos), Playing.ONCE);
        var recording = new BandTrack(played, BarSounds.of(played, Band.of(played)), Mix.FULL, Balance.EVEN);
        var asWritten = Performance.of(line(96), Playing.ONCE);
        var found = BarFinder.find(Hearing.of(recording), asWritten, Band.of(asWritten));
        var expected = new ArrayList<Double>();
        played.bars().forEach(bar -> expected.add(played.seconds(bar.start())));
        assertThat(found).as("seed %d", seed).hasSize(BARS + 1);
        for (int bar = 0; bar < BARS; bar++) {
            assertThat(Math.abs(found.get(bar) - expected.get(bar)))
                    .as("seed %d, bar %d: %s, found %s", seed, bar + 1, expected, found)
                    .isLessThan(0.03);
        }
    }
}
