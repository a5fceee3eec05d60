package groundbass.sound;

/** A cymbal's ring: square waves at partials that share no fundamental, without their low end. */
final class Metal implements Unit {
    /** Ratios of our own, none a simple fraction of another. */
    private static final double[] RATIOS = {1, 1.342, 1.723, 2.151, 2.637, 3.259};

    private final OnePole first;
    private final OnePole second;
    private final double[] phases = new double[RATIOS.length];
    private final double[] steps = new double[RATIOS.length];
    private final float factor;
    private float gain;

    /** @param base hertz of the lowest partial; {@code low} where the high-pass begins */
    Metal(SampleRate rate, double base, double low, double t60, double level) {
        this.first = new OnePole(rate, low);
        this.second = new OnePole(rate, low);
        this.factor = (float) rate.decay(t60);
        this.gain = (float) level / RATIOS.length;
        for (int i = 0; i < RATIOS.length; i++) {
            steps[i] = base * RATIOS[i] / rate.hertz();
        }
    }

    @Override
    public void render(float[] out, int from, int count) {
        for (int i = from; i < from + count; i++) {
            out[i] += gain * (float) second.high(first.high(squares()));
            gain *= factor;
        }
    }

    private double squares() {
        double sum = 0;
        for (int i = 0; i < phases.length; i++) {
            phases[i] += steps[i];
            phases[i] -= Math.floor(phases[i]);
            sum += phases[i] < 0.5 ? 1 : -1;
        }
        return sum;
    }
}
