package groundbass.sound.string;

import groundbass.performance.Performance;
import groundbass.score.Line;
import groundbass.signal.SampleRate;
import groundbass.sound.mix.Stems;
import java.util.Arrays;

/** Lines as the bass plays them, alone and without their count-in. */
final class Played {
    static final int RATE = 44_100;

    private Played() {}

    /** From the first bar on, with a second after the last. */
    static float[] from(Line line) {
        return from(line, 1_024);
    }

    static float[] from(Line line, int block) {
        var performance = Performance.of(line);
        var unit = Stems.bass(SampleRate.CD, performance);
        var out = new float[(int) (performance.seconds() * RATE) + RATE];
        for (int from = 0; from < out.length; from += block) {
            unit.render(out, from, Math.min(block, out.length - from));
        }
        return Arrays.copyOfRange(out, (int) Math.round(performance.seconds(performance.start()) * RATE), out.length);
    }
}
