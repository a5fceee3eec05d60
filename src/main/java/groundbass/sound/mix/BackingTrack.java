package groundbass.sound.mix;

import groundbass.groove.Band;
import groundbass.groove.Groove;
import groundbass.performance.Performance;
import groundbass.performance.Playing;
import groundbass.score.Line;
import groundbass.signal.SampleRate;
import groundbass.signal.Sound;
import groundbass.sound.unit.Unit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * Something to play along to: a performance and its band in stereo at 44.1 kHz, at the performance's own tempo (slow ones
 * are played slowly, never stretched), count-in first, with a tail in which the last notes fade.
 */
public final class BackingTrack implements Sound {
    private static final int BLOCK = 256;
    private static final double TAIL_SECONDS = 1.5;
    private static final int CHANNELS = 2;

    private final SampleRate rate = SampleRate.CD;
    private final List<Placed> placed = new ArrayList<>();
    private final Optional<Limiter> limiter;
    private final float gain;
    private final float[] mono = new float[BLOCK];
    private final long frames;
    private final long fadeFrom;
    private float[][] ahead = new float[CHANNELS][BLOCK];
    private float[][] current = new float[CHANNELS][BLOCK];
    private float aheadPeak;
    private long rendered;
    private int used = BLOCK;
    private long delivered;

    /** A stem with its gain to either side. */
    private record Placed(Unit unit, float left, float right) {}

    private BackingTrack(Performance performance, StemBars sounds, Mix mix, double gain, Optional<Limiter> limiter) {
        this.gain = (float) gain;
        this.limiter = limiter;
        this.fadeFrom = rate.at(performance.seconds());
        this.frames = fadeFrom + rate.at(TAIL_SECONDS);
        for (var stem : Stem.values()) {
            var laid = laid(performance, sounds, stem, mix);
            placed.add(new Placed(new BarsInARow(laid), stem.left(), stem.right()));
        }
        renderAhead();
    }

    private List<BarsInARow.Laid> laid(Performance performance, StemBars sounds, Stem stem, Mix mix) {
        var laid = new ArrayList<BarsInARow.Laid>();
        if (stem == Stem.CLICK && mix.countIn()) {
            laid.add(new BarsInARow.Laid(0, sounds::countIn));
        }
        for (int i = 0; mix.has(stem) && i < performance.bars().size(); i++) {
            int bar = i;
            long at = rate.at(performance.seconds(performance.bars().get(bar).start()));
            laid.add(new BarsInARow.Laid(at - sounds.lead(bar), () -> sounds.bar(stem, bar)));
        }
        return laid;
    }

    /** As loud as {@link Mastering} says. */
    public static BackingTrack of(Performance performance, Band band, Mix mix) {
        double gain = Mastering.gain(performance.line(), band.groove());
        return new BackingTrack(performance, BarSounds.of(performance, band), mix, gain, Optional.of(new Limiter()));
    }

    public static BackingTrack of(Line line, Groove groove, Playing playing, Mix mix) {
        var performance = Performance.of(line, playing);
        return of(performance, Band.of(performance, groove), mix);
    }

    /** Of sounds that are as loud as they shall be. @param sounds one for each bar of {@code performance} */
    public static BackingTrack of(Performance performance, StemBars sounds, Mix mix) {
        return new BackingTrack(performance, sounds, mix, 1, Optional.of(new Limiter()));
    }

    /** As loud as the instruments are, and nothing held down. */
    public static BackingTrack raw(Performance performance, Band band, Mix mix) {
        return new BackingTrack(performance, BarSounds.of(performance, band), mix, 1, Optional.empty());
    }

    @Override
    public SampleRate rate() {
        return rate;
    }

    @Override
    public int channels() {
        return CHANNELS;
    }

    @Override
    public long frames() {
        return frames;
    }

    @Override
    public int read(float[][] channels) {
        int wanted = (int) Math.min(channels[0].length, frames - delivered);
        int done = 0;
        while (done < wanted) {
            if (used == BLOCK) {
                advance();
            }
            int count = Math.min(wanted - done, BLOCK - used);
            for (int channel = 0; channel < CHANNELS; channel++) {
                System.arraycopy(current[channel], used, channels[channel], done, count);
            }
            used += count;
            done += count;
        }
        delivered += done;
        return done;
    }

    private void advance() {
        var old = current;
        float peak = aheadPeak;
        current = ahead;
        ahead = old;
        renderAhead();
        limiter.ifPresent(holding -> holding.limit(current, BLOCK, peak, aheadPeak));
        used = 0;
    }

    private void renderAhead() {
        for (float[] channel : ahead) {
            Arrays.fill(channel, 0);
        }
        for (var each : placed) {
            Arrays.fill(mono, 0);
            each.unit().render(mono, 0, BLOCK);
            add(mono, ahead[0], each.left() * gain);
            add(mono, ahead[1], each.right() * gain);
        }
        fade();
        rendered += BLOCK;
        aheadPeak = Math.max(peak(ahead[0]), peak(ahead[1]));
    }

    private static void add(float[] samples, float[] to, float gain) {
        for (int i = 0; i < BLOCK; i++) {
            to[i] += samples[i] * gain;
        }
    }

    /** The tail falls to nothing along a quarter of a cosine. */
    private void fade() {
        if (rendered + BLOCK <= fadeFrom) {
            return;
        }
        for (int i = 0; i < BLOCK; i++) {
            double share = Math.min(1, Math.max(0, (double) (rendered + i - fadeFrom) / (frames - fadeFrom)));
            float gain = (float) StrictMath.cos(share * Math.PI / 2);
            ahead[0][i] *= gain;
            ahead[1][i] *= gain;
        }
    }

    private static float peak(float[] samples) {
        float peak = 0;
        for (float sample : samples) {
            peak = Math.max(peak, Math.abs(sample));
        }
        return peak;
    }
}
