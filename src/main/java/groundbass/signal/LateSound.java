package groundbass.signal;

import java.util.Arrays;

/** A sound after some silence. */
public final class LateSound implements Sound {
    private final Sound sound;
    private final long silent;
    private long begun;

    /** @param silent frames that come before it */
    public LateSound(Sound sound, long silent) {
        if (silent < 0) {
            throw new IllegalArgumentException("no such silence: " + silent);
        }
        this.sound = sound;
        this.silent = silent;
    }

    @Override
    public SampleRate rate() {
        return sound.rate();
    }

    @Override
    public int channels() {
        return sound.channels();
    }

    @Override
    public long frames() {
        return silent + sound.frames();
    }

    @Override
    public int read(float[][] channels) {
        int count = (int) Math.min(silent - begun, channels[0].length);
        if (count == 0) {
            return sound.read(channels);
        }
        for (float[] channel : channels) {
            Arrays.fill(channel, 0, count, 0);
        }
        begun += count;
        return count;
    }
}
