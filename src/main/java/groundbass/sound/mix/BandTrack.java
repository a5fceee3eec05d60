package groundbass.sound.mix;

import groundbass.performance.Performance;
import groundbass.signal.SampleRate;
import groundbass.signal.Sound;
import groundbass.sound.unit.Unit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/**
 * Something to play along to: a performance and its band in stereo at 44.1 kHz, at the performance's own tempo (slow ones
 * are played slowly, never stretched), count-in first, with a tail in which the last notes fade. Nothing is held down
 * yet; {@link Mastering} does that.
 */
public final class BandTrack implements Sound {
    private static final int BLOCK = 256;
    private static final double TAIL_SECONDS = 1.5;
    private static final int CHANNELS = 2;

    private final SampleRate rate = SampleRate.CD;
    private final List<Placed> placed = new ArrayList<>();
    private final float[] mono = new float[BLOCK];
    private final float[] sent = new float[BLOCK];
    private final Room room = new Room(rate);
    private final float[][] current = new float[CHANNELS][BLOCK];
    private final long frames;
    private final long fadeFrom;
    private long rendered;
    private int used = BLOCK;
    private long delivered;

    /** A stem with its gain to either side and into the room. */
    private record Placed(Unit unit, float left, float right, float room) {}

    /** @param sounds one for each bar of {@code performance} */
    public BandTrack(Performance performance, StemBars sounds, Mix mix, Balance balance) {
        this.fadeFrom = rate.at(performance.seconds());
        this.frames = fadeFrom + rate.at(TAIL_SECONDS);
        // in their own order: a sum of floats depends on it, and a set's order changes from run to run
        Stream.of(Stem.values())
                .filter(mix::has)
                .forEach(stem -> place(stem, balance.of(stem), BarsInARow.of(performance, sounds, stem)));
        if (mix.countIn()) {
            var clicks = new BarsInARow(
                    List.of(new BarsInARow.Laid(0, () -> sounds.countIn().samples())));
            place(Stem.CLICK, balance.countIn(), clicks);
        }
        if (mix.has(Stem.DRUMS)) {
            float gain = (float) (Stem.DRUMS.left() * balance.of(Stem.DRUMS));
            placed.add(new Placed(BarsInARow.of(performance, sounds, Stem.DRUMS, BarSound::side), gain, -gain, 0));
        }
    }

    private void place(Stem stem, double gain, Unit unit) {
        placed.add(new Placed(
                unit, (float) (stem.left() * gain), (float) (stem.right() * gain), (float) (stem.room() * gain)));
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
                render();
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

    private void render() {
        for (float[] channel : current) {
            Arrays.fill(channel, 0);
        }
        Arrays.fill(sent, 0);
        for (var each : placed) {
            Arrays.fill(mono, 0);
            each.unit().render(mono, 0, BLOCK);
            add(mono, current[0], each.left());
            add(mono, current[1], each.right());
            add(mono, sent, each.room());
        }
        room.add(sent, current[0], current[1], BLOCK);
        fade();
        rendered += BLOCK;
        used = 0;
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
            current[0][i] *= gain;
            current[1][i] *= gain;
        }
    }
}
