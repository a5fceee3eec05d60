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
        this(rate, channels, new TruePeak(channels));
    }

    /** One that looks for no peak: its reading has none. */
    public static LoudnessMeter withoutPeak(int rate, int channels) {
        return new LoudnessMeter(rate, channels, new TruePeak(0));
    }

    private LoudnessMeter(int rate, int channels, TruePeak truePeak) {
        this.weightings = IntStream.range(0, channels)
                .mapToObj(each -> new KWeighting(rate))
                .toList();
        this.truePeak = truePeak;
        this.step = Math.round((float) rate / STEPS_A_SECOND);
    }

    /** One that has read a sound to its end. */
    public static LoudnessMeter of(Sound sound) {
        return new LoudnessMeter(sound.rate().hertz(), sound.channels()).hear(sound);
    }

    /** Reads a sound to its end. */
    public LoudnessMeter hear(Sound sound) {
        var block = new float[sound.channels()][READ];
        for (int count = sound.read(block); count > 0; count = sound.read(block)) {
            add(block, count);
        }
        return this;
    }

    /** The next {@code count} samples of each channel, from -1 to 1. */
    public void add(float[][] block, int count) {
        truePeak.add(block, count);
        for (int from = 0; from < count; ) {
            int taken = Math.min(count - from, step - filled);
            for (int channel = 0; channel < weightings.size(); channel++) {
                energy += weightings.get(channel).energy(block[channel], from, taken);
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

    /** Of all that was added so far. */
    public Loudness reading() {
        return new Loudness(integrated(), truePeak.decibels());
    }

    /** The integrated loudness alone, in LUFS; negative infinity for silence. */
    public double integrated() {
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
