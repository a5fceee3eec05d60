package groundbass.listening;

import groundbass.signal.Sound;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Measures integrated loudness by ITU-R BS.1770-4, Annex 1: the mean square of each weighted channel over blocks of
 * 400 ms that overlap by three quarters; blocks under -70 LUFS are left out, then those more than 10 LU under the mean
 * of the rest. One or two channels, both of weight 1. Mutable; takes any length in bounded memory (8 bytes for each
 * 100 ms).
 */
public final class LoudnessMeter {
    private static final double OFFSET = -0.691;
    private static final double ABSOLUTE_GATE = -70;
    private static final double RELATIVE_GATE = -10;

    /** A block is four steps long. */
    private static final int STEPS = 4;

    private static final int STEPS_A_SECOND = 10;
    private static final int READ = 4_096;

    private final List<KWeighting> weightings;
    private final TruePeak truePeak;
    private final int step;
    private final List<Double> steps = new ArrayList<>();
    private double energy;
    private int filled;

    public LoudnessMeter(int rate, int channels) {
        this.weightings = IntStream.range(0, channels)
                .mapToObj(each -> new KWeighting(rate))
                .toList();
        this.truePeak = new TruePeak(channels);
        this.step = Math.round((float) rate / STEPS_A_SECOND);
    }

    /** One that has read a sound to its end. */
    public static LoudnessMeter of(Sound sound) {
        var meter = new LoudnessMeter(sound.rate().hertz(), sound.channels());
        var block = new float[sound.channels()][READ];
        for (int count = sound.read(block); count > 0; count = sound.read(block)) {
            meter.add(block, count);
        }
        return meter;
    }

    /** The next {@code count} samples of each channel, from -1 to 1. */
    public void add(float[][] block, int count) {
        truePeak.add(block, count);
        for (int from = 0; from < count; ) {
            int taken = Math.min(count - from, step - filled);
            for (int channel = 0; channel < weightings.size(); channel++) {
                energy += energy(weightings.get(channel), block[channel], from, taken);
            }
            filled += taken;
            from += taken;
            if (filled == step) {
                steps.add(energy);
                energy = 0;
                filled = 0;
            }
        }
    }

    private static double energy(KWeighting weighting, float[] samples, int from, int count) {
        double energy = 0;
        for (int i = from; i < from + count; i++) {
            double weighted = weighting.next(samples[i]);
            energy += weighted * weighted;
        }
        return energy;
    }

    /** Of all that was added so far. */
    public Loudness reading() {
        return new Loudness(integrated(), truePeak.decibels());
    }

    private double integrated() {
        var blocks = IntStream.rangeClosed(0, steps.size() - STEPS)
                .mapToDouble(this::meanSquare)
                .filter(power -> loudness(power) > ABSOLUTE_GATE)
                .toArray();
        double gate = loudness(mean(blocks, Double.NEGATIVE_INFINITY)) + RELATIVE_GATE;
        return loudness(mean(blocks, gate));
    }

    /**
     * The loudness of the loudest 0.4 s so far, without any gate (EBU Tech 3341, from memory: its momentary loudness) in
     * LUFS; negative infinity for silence.
     */
    public double momentary() {
        return loudness(IntStream.rangeClosed(0, steps.size() - STEPS)
                .mapToDouble(this::meanSquare)
                .max()
                .orElse(0));
    }

    private double meanSquare(int firstStep) {
        double sum = 0;
        for (int i = 0; i < STEPS; i++) {
            sum += steps.get(firstStep + i);
        }
        return sum / (STEPS * step);
    }

    private static double mean(double[] blocks, double gate) {
        return java.util.Arrays.stream(blocks)
                .filter(power -> loudness(power) > gate)
                .average()
                .orElse(0);
    }

    private static double loudness(double power) {
        return OFFSET + 10 * StrictMath.log10(power);
    }
}
