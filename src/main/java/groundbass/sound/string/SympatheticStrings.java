package groundbass.sound.string;

import groundbass.performance.TimedNote;
import groundbass.score.Tuning;
import groundbass.signal.SampleRate;
import groundbass.sound.unit.Unit;
import groundbass.theory.Pitch;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * What is played, and the open strings that lie idle and ring along with whatever shares a partial with them, softly, as
 * under a player who mutes (rule: sympathetic-strings). They are made at a quarter of the samples.
 */
final class SympatheticStrings implements Unit {
    private static final int FEW = 32;
    private static final int MANY = FEW * FourFold.TIMES;

    /** How much of what sounds goes through the bridge (by trial, no source). */
    private static final double BRIDGE = 8e-5;

    private final Unit played;
    private final List<IdleString> idle;
    private final FourFold stretching = new FourFold();
    private final double[] shaking = new double[FEW];
    private final float[] few = new float[FEW];
    private final float[] along = new float[MANY];
    private final float[] ready = new float[MANY];
    private int used = MANY;
    private long now;

    /** @param notes that {@code played} plays, by moment */
    SympatheticStrings(SampleRate rate, Tuning tuning, List<TimedNote> notes, Unit played) {
        this.played = played;
        var slower = FourFold.slower(rate);
        this.idle = IntStream.rangeClosed(1, tuning.size())
                .filter(string -> FourFold.carries(
                        Pitch.hertz((double) tuning.string(string).pitch().midi())))
                .mapToObj(string -> new IdleString(
                        slower,
                        new StringParameters(tuning.string(string).pitch().midi()),
                        IdleTimes.of(rate, string, notes)))
                .toList();
    }

    @Override
    public void render(float[] out, int from, int count) {
        int done = 0;
        while (done < count) {
            if (used == MANY) {
                make();
            }
            int step = Math.min(count - done, MANY - used);
            for (int i = 0; i < step; i++) {
                out[from + done + i] += ready[used + i];
            }
            used += step;
            done += step;
        }
    }

    private void make() {
        Arrays.fill(ready, 0);
        played.render(ready, 0, MANY);
        for (int i = 0; i < FEW; i++) {
            int at = FourFold.TIMES * i;
            shaking[i] = BRIDGE * (ready[at] + ready[at + 1] + ready[at + 2] + ready[at + 3]);
        }
        Arrays.fill(few, 0);
        idle.forEach(string -> string.render(shaking, few, FEW, now));
        stretching.stretch(few, FEW, along);
        for (int i = 0; i < MANY; i++) {
            ready[i] += along[i];
        }
        used = 0;
        now += MANY;
    }
}
