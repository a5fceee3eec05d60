package groundbass.sound.mix;

import groundbass.groove.Band;
import groundbass.groove.Instruments;
import groundbass.performance.Performance;
import groundbass.signal.SampleRate;
import groundbass.sound.drum.DrumPart;
import groundbass.sound.unit.Unit;
import java.util.Arrays;
import java.util.List;

/**
 * The stems of a performance bar by bar. A stem is the sum of its bars, each laid down at its bar's start, so any loop
 * of bars lets its tails ring; equal bars sound equal to the sample. Every bar can be rendered by itself, on any thread.
 */
public final class BarSounds implements StemBars {
    private static final SampleRate RATE = SampleRate.CD;
    private static final int BLOCK = 1_024;

    /** Below this nothing is heard: under half a step of 16 bits. */
    private static final float SILENCE = 1e-5f;

    /** A tail is over when it has been silent for this long, and at the latest after that long. */
    private static final double SILENT_SECONDS = 0.1;

    private static final double LONGEST_TAIL_SECONDS = 12;
    private static final double FADE_SECONDS = 0.5;

    private final List<Excerpt> bars;
    private final Excerpt countIn;
    private final Instruments instruments;

    private BarSounds(List<Excerpt> bars, Excerpt countIn, Instruments instruments) {
        this.bars = bars;
        this.countIn = countIn;
        this.instruments = instruments;
    }

    public static BarSounds of(Performance performance, Band band) {
        return new BarSounds(
                Excerpts.ofBars(performance, band),
                Excerpts.ofCountIn(performance, band),
                band.groove().instruments());
    }

    /** How many bars are played. */
    public int bars() {
        return bars.size();
    }

    @Override
    public int lead(int bar) {
        return bars.get(bar).lead();
    }

    @Override
    public BarSound bar(Stem stem, int bar) {
        return render(stem, bars.get(bar));
    }

    @Override
    public BarSound countIn() {
        return render(Stem.CLICK, countIn);
    }

    private BarSound render(Stem stem, Excerpt excerpt) {
        if (excerpt.isSilent(stem)) {
            return BarSound.NOTHING;
        }
        var unit = Stems.of(stem, RATE, excerpt, instruments);
        int over = (int) RATE.at(excerpt.end(stem));
        var samples = trimmed(rendered(unit, over));
        scale(samples, (float) stem.level());
        return stem == Stem.DRUMS ? drums(excerpt, samples) : new BarSound(samples);
    }

    /** Where the pieces stand, beside what they sound like. */
    private static BarSound drums(Excerpt excerpt, float[] samples) {
        var side = new float[samples.length];
        DrumPart.side(RATE, excerpt.hits(), excerpt.closes()).render(side, 0, side.length);
        scale(side, (float) Stem.DRUMS.level());
        DrumBus.press(RATE, samples, side);
        return new BarSound(samples, side);
    }

    private static float[] rendered(Unit unit, int over) {
        int most = over + (int) RATE.at(LONGEST_TAIL_SECONDS);
        int silent = 0;
        int done = 0;
        var samples = new float[over + (int) RATE.at(1)];
        while (done < most && !(done > over && silent >= RATE.at(SILENT_SECONDS))) {
            int count = Math.min(BLOCK, most - done);
            if (done + count > samples.length) {
                samples = Arrays.copyOf(samples, Math.min(most, samples.length * 2));
            }
            unit.render(samples, done, count);
            silent = isSilent(samples, done, count) ? silent + count : 0;
            done += count;
        }
        if (done >= most) {
            fade(samples, most);
        }
        return Arrays.copyOf(samples, done);
    }

    private static boolean isSilent(float[] samples, int from, int count) {
        for (int i = from; i < from + count; i++) {
            if (Math.abs(samples[i]) >= SILENCE) {
                return false;
            }
        }
        return true;
    }

    private static void fade(float[] samples, int end) {
        int length = (int) RATE.at(FADE_SECONDS);
        for (int i = 0; i < length; i++) {
            samples[end - 1 - i] *= (float) i / length;
        }
    }

    private static float[] trimmed(float[] samples) {
        int end = samples.length;
        while (end > 0 && Math.abs(samples[end - 1]) < SILENCE) {
            end--;
        }
        return Arrays.copyOf(samples, end);
    }

    private static void scale(float[] samples, float gain) {
        for (int i = 0; i < samples.length; i++) {
            samples[i] *= gain;
        }
    }
}
