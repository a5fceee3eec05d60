package groundbass.sound.string;

import groundbass.signal.SampleRate;
import groundbass.theory.Pitch;
import java.util.Arrays;
import java.util.List;

/**
 * An open string that others shake: a loop of one period (Karplus and Strong 1983) that is fed by them all the time. It is
 * damped when it is played itself, or when nothing is played any more.
 */
final class IdleString {
    /** Of its own decay: a hand is never far. */
    private static final double SUSTAIN = 0.5;

    private static final double LOSS = 0.1;
    private static final double DAMPED_SECONDS = 0.12;
    private static final float INAUDIBLE = 1e-3f;

    private final List<IdleTimes.Span> spans;
    private final LoopFilter loss;
    private final float damping;
    private final int whole;
    private final double share;
    private final double[] line;
    private int at;
    private double lost;
    private int next;
    private boolean lies;
    private float gain;

    /** @param spans when it lies open, in samples of the fuller rate that {@code now} is told in */
    IdleString(SampleRate rate, StringParameters course, List<IdleTimes.Span> spans) {
        double hertz = Pitch.hertz((double) course.openMidi());
        this.spans = List.copyOf(spans);
        this.loss = LoopFilter.of(rate, hertz, course.t60(course.openMidi()) * SUSTAIN, LOSS);
        this.damping = (float) rate.decay(DAMPED_SECONDS);
        double delay = rate.hertz() / hertz - loss.delay(rate.radians(hertz));
        this.whole = (int) delay;
        this.share = delay - whole;
        this.line = new double[Integer.highestOneBit(whole + 2) * 2];
    }

    /** Adds what it gives while it is shaken so, sample by sample. */
    void render(double[] shaking, float[] out, int count, long now) {
        while (!lies && next < spans.size() && spans.get(next).until() <= now) {
            next++;
        }
        if (next == spans.size() || !lies && spans.get(next).from() > now) {
            return;
        }
        if (!lies) {
            lies = true;
            gain = 1;
            lost = 0;
            Arrays.fill(line, 0);
        }
        ring(shaking, out, count, spans.get(next).until() <= now ? damping : 1);
        if (gain < INAUDIBLE) {
            lies = false;
            next++;
        }
    }

    private void ring(double[] shaking, float[] out, int count, float fall) {
        int around = line.length - 1;
        for (int i = 0; i < count; i++) {
            double before = line[at - whole & around];
            double turned = before + share * (line[at - whole - 1 & around] - before);
            lost = loss.b() * turned + loss.a() * lost;
            double swing = lost + shaking[i];
            line[at & around] = swing;
            at++;
            gain *= fall;
            out[i] += (float) swing * gain;
        }
    }
}
