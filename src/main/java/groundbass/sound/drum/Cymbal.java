package groundbass.sound.drum;

import groundbass.signal.SampleRate;
import groundbass.sound.unit.Noise;
import groundbass.sound.unit.Unit;

/**
 * A plate of bronze: many partials that share no fundamental, spread evenly over the octaves between two frequencies,
 * each falling in its own time, high ones sooner. What is struck hard opens: high partials rise a moment after the stroke.
 */
final class Cymbal implements Unit {
    /** How much the partials' levels and times differ from their law. */
    private static final double SPREAD = 0.35;

    private final double[] turns;
    private final double[] now;
    private final double[] before;
    private final double[] squares;
    private final double[] levels;
    private final double opening;
    private double open;

    /**
     * @param partials how many
     * @param low, high between which frequencies, in hertz
     * @param tilt decibels an octave by which high partials are louder
     * @param t60 seconds to -60 dB of the lowest partial; the others by the square root of how much higher they are
     * @param bloom seconds in which it opens
     */
    Cymbal(
            SampleRate rate,
            int seed,
            int partials,
            double low,
            double high,
            double tilt,
            double t60,
            double bloom,
            double level) {
        var noise = new Noise(seed);
        this.turns = new double[partials];
        this.now = new double[partials];
        this.before = new double[partials];
        this.squares = new double[partials];
        this.levels = new double[partials];
        this.opening = bloom > 0 ? 1 - rate.decay(bloom) : 1;
        double octaves = StrictMath.log(high / low) / StrictMath.log(2);
        for (int i = 0; i < partials; i++) {
            double up = octaves * (i + 0.5 + 0.5 * noise.next()) / partials;
            double hertz = low * StrictMath.pow(2, up);
            double seconds = t60 * StrictMath.pow(2, -up / 2) * (1 + SPREAD * noise.next());
            double fall = rate.decay(seconds);
            double phase = Math.PI * noise.next();
            double w = rate.radians(hertz);
            turns[i] = 2 * fall * StrictMath.cos(w);
            squares[i] = fall * fall;
            now[i] = StrictMath.sin(phase);
            before[i] = StrictMath.sin(phase - w) / fall;
            levels[i] = level
                    * StrictMath.pow(10, tilt * up / 20)
                    * (1 + SPREAD * noise.next())
                    / StrictMath.sqrt(partials);
        }
    }

    @Override
    public void render(float[] out, int from, int count) {
        for (int i = from; i < from + count; i++) {
            open += (1 - open) * opening;
            double sum = 0;
            for (int k = 0; k < turns.length; k++) {
                double value = now[k];
                now[k] = turns[k] * value - squares[k] * before[k];
                before[k] = value;
                sum += levels[k] * value;
            }
            out[i] += (float) (sum * open);
        }
    }
}
