package groundbass.sound.drum;

import groundbass.signal.SampleRate;
import groundbass.sound.unit.Unit;

/** A skin or a struck bar: a sine whose pitch falls to rest and whose loudness falls by 60 dB in its time. */
public final class Membrane implements Unit {
    private final SampleRate rate;
    private final double rest;
    private final float gainFactor;
    private final double fallFactor;
    private double above;
    private float gain;
    private double phase;

    /**
     * @param from, to hertz at the stroke and at rest
     * @param fall seconds in which the distance falls by 60 dB
     */
    public Membrane(SampleRate rate, double from, double to, double fall, double t60, double level) {
        this.rate = rate;
        this.rest = to;
        this.above = from - to;
        this.fallFactor = rate.decay(fall);
        this.gainFactor = (float) rate.decay(t60);
        this.gain = (float) level;
    }

    @Override
    public void render(float[] out, int from, int count) {
        for (int i = from; i < from + count; i++) {
            out[i] += gain * (float) StrictMath.sin(phase);
            phase += rate.radians(rest + above);
            above *= fallFactor;
            gain *= gainFactor;
        }
    }
}
