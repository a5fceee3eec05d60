package groundbass.sound;

/** A plain keyboard tone: a sine with two soft partials that fall quickly, and a gentle start and end. */
final class SoftTone implements Unit {
    private static final double ATTACK_SECONDS = 0.012;
    private static final double RELEASE_SECONDS = 0.25;
    private static final double BODY_SECONDS = 8;
    private static final double COLOUR_SECONDS = 1.2;
    private static final double SECOND = 0.35;
    private static final double THIRD = 0.12;
    private static final float INAUDIBLE = 1e-5f;

    private final long end;
    private final int attack;
    private final float body;
    private final float colour;
    private final float release;
    private final Sine first;
    private final Sine second;
    private final Sine third;
    private float gain;
    private float partials = 1;
    private long now;

    /** @param length samples until it is let go */
    SoftTone(SampleRate rate, double hertz, long length, double level) {
        this.end = length;
        this.attack = (int) rate.at(ATTACK_SECONDS);
        this.body = (float) rate.decay(BODY_SECONDS);
        this.colour = (float) rate.decay(COLOUR_SECONDS);
        this.release = (float) rate.decay(RELEASE_SECONDS);
        this.first = new Sine(rate.radians(hertz), hertz);
        this.second = new Sine(rate.radians(2 * hertz), 2 * hertz);
        this.third = new Sine(rate.radians(3 * hertz), 3 * hertz);
        this.gain = (float) level;
    }

    boolean isOver() {
        return gain < INAUDIBLE;
    }

    @Override
    public void render(float[] out, int from, int count) {
        for (int i = from; i < from + count; i++) {
            double wave = first.next();
            if (partials > INAUDIBLE) {
                wave += partials * (SECOND * second.next() + THIRD * third.next());
                partials *= colour;
            }
            float rise = now < attack ? (float) now / attack : 1;
            out[i] += (float) wave * gain * rise;
            gain *= now < end ? body : release;
            now++;
        }
    }

    /** A sine by its recurrence {@code s[n] = 2 cos(w) s[n-1] - s[n-2]}. */
    private static final class Sine {
        private final double turn;
        private double now;
        private double before;

        /** @param phase where it begins: any angle that differs from tone to tone, or a chord's tones would peak together */
        Sine(double radians, double phase) {
            this.turn = 2 * StrictMath.cos(radians);
            this.now = StrictMath.sin(phase);
            this.before = StrictMath.sin(phase - radians);
        }

        double next() {
            double value = now;
            now = turn * value - before;
            before = value;
            return value;
        }
    }
}
