package groundbass.sound.drum;

import groundbass.signal.SampleRate;
import groundbass.sound.unit.Noise;
import groundbass.sound.unit.OnePole;
import groundbass.sound.unit.Unit;

/** A burst of noise between two frequencies, rising for a moment and then falling by 60 dB in its time. */
final class Hiss implements Unit {
    private final Noise noise;
    private final OnePole below;
    private final OnePole belowAgain;
    private final OnePole above;
    private final OnePole aboveAgain;
    private final int rise;
    private final float factor;
    private float gain;
    private int now;

    /** @param low, high the band in hertz; two poles at each end */
    Hiss(SampleRate rate, int seed, double low, double high, double riseSeconds, double t60, double level) {
        this.noise = new Noise(seed);
        this.below = new OnePole(rate, low);
        this.belowAgain = new OnePole(rate, low);
        this.above = new OnePole(rate, high);
        this.aboveAgain = new OnePole(rate, high);
        this.rise = (int) rate.at(riseSeconds);
        this.factor = (float) rate.decay(t60);
        this.gain = (float) level;
    }

    @Override
    public void render(float[] out, int from, int count) {
        for (int i = from; i < from + count; i++) {
            float x = (float) aboveAgain.low(above.low(belowAgain.high(below.high(noise.next()))));
            out[i] += x * gain * (now < rise ? (float) now / rise : 1);
            now++;
            gain *= factor;
        }
    }
}
