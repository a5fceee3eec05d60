package groundbass.sound.mix;

import groundbass.listening.TruePeak;
import groundbass.signal.SampleRate;
import groundbass.signal.Sound;
import java.util.Arrays;

/**
 * A whole mix under a ceiling, between its samples too: the gain falls within a millisecond and a half before a top, for
 * all channels alike, and comes back within a tenth of a second, so that the wave keeps its shape. It looks ahead, and
 * what it gives comes no later for that.
 */
final class TruePeakLimiter implements Sound {
    private static final double REACH_SECONDS = 0.0015;

    /** In which the gain comes back by two thirds (by trial, no source). */
    private static final double RETURN_SECONDS = 0.06;

    /** Between samples under this part of the ceiling no music rises to it (by trial, no source). */
    private static final float HARMLESS = 0.6f;

    private static final int BLOCK = 1_024;

    private final Sound mix;
    private final float ceiling;

    /** How far what is given lies behind what was read. */
    private final int late;

    private final float[][] samples;
    private final float[][] incoming;
    private int taken;
    private int came;

    private final SlidingLeast least;
    private final double back;
    private final float[] gains;
    private double sum;
    private float gain = 1;
    private int turn;

    private long given;
    private int next;

    /** @param ceiling the highest point that is let through, 1 for full scale */
    TruePeakLimiter(Sound mix, double ceiling) {
        int reach = (int) mix.rate().at(REACH_SECONDS);
        this.mix = mix;
        this.ceiling = (float) ceiling;
        this.late = TruePeak.AFTER + 2 * reach;
        this.samples = new float[mix.channels()][late + BLOCK];
        this.incoming = new float[mix.channels()][BLOCK];
        this.least = new SlidingLeast(2 * reach + 1);
        this.gains = new float[2 * reach + 1];
        this.back = 1 - StrictMath.exp(-1 / (RETURN_SECONDS * mix.rate().hertz()));
        Arrays.fill(gains, 1);
        this.sum = gains.length;
        advance();
        this.next = late;
    }

    @Override
    public SampleRate rate() {
        return mix.rate();
    }

    @Override
    public int channels() {
        return mix.channels();
    }

    @Override
    public long frames() {
        return mix.frames();
    }

    @Override
    public int read(float[][] channels) {
        if (next == BLOCK) {
            advance();
            next = 0;
        }
        int count = (int) Math.min(Math.min(channels[0].length, BLOCK - next), frames() - given);
        for (int channel = 0; channel < samples.length; channel++) {
            System.arraycopy(samples[channel], next, channels[channel], 0, count);
        }
        next += count;
        given += count;
        return count;
    }

    /** Reads a block, and brings as many frames that lie further back under the ceiling. */
    private void advance() {
        for (float[] channel : samples) {
            System.arraycopy(channel, BLOCK, channel, 0, late);
        }
        read();
        for (int i = 0; i < BLOCK; i++) {
            float factor = factor(late + i - TruePeak.AFTER);
            for (float[] channel : samples) {
                channel[i] *= factor;
            }
        }
    }

    /** Behind the end there is silence. */
    private void read() {
        int done = 0;
        while (done < BLOCK && hasMore()) {
            int count = Math.min(BLOCK - done, came - taken);
            for (int channel = 0; channel < samples.length; channel++) {
                System.arraycopy(incoming[channel], taken, samples[channel], late + done, count);
            }
            taken += count;
            done += count;
        }
        for (float[] channel : samples) {
            Arrays.fill(channel, late + done, channel.length, 0);
        }
    }

    private boolean hasMore() {
        if (taken == came) {
            came = mix.read(incoming);
            taken = 0;
        }
        return came > 0;
    }

    /**
     * The factor for the frame that lies twice the reach before {@code at}: the mean of gains that are all low enough for
     * it, and therefore low enough and smooth.
     */
    private float factor(int at) {
        float lowest = least.next(needed(at));
        gain = Math.min(lowest, gain + (float) ((1 - gain) * back));
        sum += gain - gains[turn];
        gains[turn] = gain;
        turn = turn + 1 == gains.length ? 0 : turn + 1;
        return (float) (sum / gains.length);
    }

    /** What brings the wave from this sample to the next under the ceiling. */
    private float needed(int at) {
        float peak = 0;
        for (float[] channel : samples) {
            if (Math.max(Math.abs(channel[at]), Math.abs(channel[at + 1])) > HARMLESS * ceiling) {
                peak = Math.max(peak, TruePeak.between(channel, at));
            }
        }
        return peak > ceiling ? ceiling / peak : 1;
    }
}
