package groundbass.sound.keys;

import groundbass.signal.SampleRate;
import groundbass.sound.unit.Unit;

/**
 * A keyboard with struck tines: a sine that bends its own phase, strongly at the stroke and less and less after it, and a
 * high partial that is gone at once ({@code sin(p + d sin p)}, frequency modulation after Chowning 1973).
 */
public final class SoftTone implements Unit {
    private static final double ATTACK_SECONDS = 0.004;
    private static final double RELEASE_SECONDS = 0.25;

    /** To -60 dB at A3; lower tones ring longer. */
    private static final double BODY_SECONDS = 7;

    private static final double BODY_HERTZ = 220;
    private static final double COLOUR_SECONDS = 2.2;
    private static final double TINE_SECONDS = 0.35;
    private static final float COLOUR = 1.1f;
    private static final float REST = 0.25f;
    private static final float TINE = 0.14f;
    private static final double TINE_PARTIAL = 7;

    /** A tine above this would be a whistle. */
    private static final double HIGHEST_TINE = 5_000;

    private static final float RADIAN = (float) (SineTable.CIRCLE / (2 * Math.PI));
    private static final float INAUDIBLE = 1e-5f;

    private final long end;
    private final int attack;
    private final float body;
    private final float colourFactor;
    private final float tineFactor;
    private final float release;
    private final int step;
    private final int tineStep;
    private int phase;
    private int tinePhase;
    private float gain;
    private float colour = COLOUR;
    private float tine;
    private long now;

    /** @param length samples until it is let go */
    public SoftTone(SampleRate rate, double hertz, long length, double level) {
        this.end = length;
        this.attack = (int) rate.at(ATTACK_SECONDS);
        this.body = (float) rate.decay(BODY_SECONDS * StrictMath.sqrt(BODY_HERTZ / hertz));
        this.colourFactor = (float) rate.decay(COLOUR_SECONDS);
        this.tineFactor = (float) rate.decay(TINE_SECONDS);
        this.release = (float) rate.decay(RELEASE_SECONDS);
        this.step = (int) Math.round(hertz / rate.hertz() * SineTable.CIRCLE);
        double high = Math.min(hertz * TINE_PARTIAL, HIGHEST_TINE);
        this.tineStep = (int) Math.round(high / rate.hertz() * SineTable.CIRCLE);
        // any phase that differs from tone to tone, or a chord's tones would peak together
        this.phase = (int) (long) (hertz * SineTable.CIRCLE);
        this.gain = (float) level;
        this.tine = TINE;
    }

    boolean isOver() {
        return gain < INAUDIBLE;
    }

    @Override
    public void render(float[] out, int from, int count) {
        int done = 0;
        while (done < count) {
            int step = count - done;
            step = now < attack ? (int) Math.min(step, attack - now) : step;
            step = now < end ? (int) Math.min(step, end - now) : step;
            sound(out, from + done, step, now < end ? body : release);
            done += step;
        }
    }

    /** As many samples as all begin alike: in the attack or behind it, held or let go. */
    private void sound(float[] out, int from, int count, float fall) {
        boolean rising = now < attack;
        int turn = phase;
        int tineTurn = tinePhase;
        float loud = gain;
        float bends = colour;
        float struck = tine;
        for (int i = 0; i < count; i++) {
            int bent = (int) ((REST + bends) * SineTable.at(turn) * RADIAN);
            float wave = SineTable.at(turn + bent);
            if (struck > INAUDIBLE) {
                wave += struck * SineTable.at(tineTurn);
                tineTurn += tineStep;
                struck *= tineFactor;
            }
            out[from + i] += wave * loud * (rising ? (float) (now + i) / attack : 1);
            bends *= colourFactor;
            loud *= fall;
            turn += step;
        }
        phase = turn;
        tinePhase = tineTurn;
        gain = loud;
        colour = bends;
        tine = struck;
        now += count;
    }
}
