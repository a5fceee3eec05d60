package groundbass.sound.drum;

import groundbass.signal.SampleRate;
import groundbass.sound.unit.Unit;
import java.util.ArrayList;
import java.util.List;

/**
 * What is heard of a struck plate where its partials lie too close to be told apart: noise in bands of about an octave,
 * each as strong as a law says and falling in its own time, high ones sooner. What opens does so from below. However it is
 * tilted, it has the same power.
 */
final class Wash implements Unit {
    private static final int NEXT_BAND = 131;

    private final List<Hiss> bands = new ArrayList<>();

    /**
     * @param low, high between which frequencies, in hertz
     * @param tilt decibels an octave by which high bands are louder
     * @param t60 seconds to -60 dB of the lowest band; the others by the cube root of how much higher they are
     * @param bloom seconds in which the highest band rises
     */
    Wash(SampleRate rate, int seed, double low, double high, double tilt, double t60, double bloom, double level) {
        double octaves = StrictMath.log(high / low) / StrictMath.log(2);
        int count = (int) Math.ceil(octaves);
        double step = octaves / count;
        double all = 0;
        for (int i = 0; i < count; i++) {
            all += power(tilt, step * i);
        }
        for (int i = 0; i < count; i++) {
            double up = step * i;
            double from = low * StrictMath.pow(2, up);
            double to = from * StrictMath.pow(2, step);
            double share = power(tilt, up) / all * rate.hertz() / 2 / (to - from);
            bands.add(new Hiss(
                    rate,
                    seed + NEXT_BAND * i,
                    from,
                    to,
                    bloom * (i + 1) / count,
                    t60 * StrictMath.pow(2, -up / 3),
                    level * StrictMath.sqrt(share)));
        }
    }

    private static double power(double tilt, double octaves) {
        return StrictMath.pow(10, tilt * octaves / 10);
    }

    @Override
    public void render(float[] out, int from, int count) {
        bands.forEach(band -> band.render(out, from, count));
    }
}
