package groundbass.sound.string;

import groundbass.groove.VoicedChord;
import groundbass.signal.SampleRate;
import groundbass.sound.unit.Unit;
import groundbass.theory.Pitch;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * Plays the chords of a band on a guitar through a soft amplifier: struck from the low strings to the high ones, each a
 * string of its own, and damped when the hand lets go. All of it is made at a quarter of the samples.
 */
public final class GuitarPart implements Unit {
    /** Between one string and the next (common practice, no source). */
    private static final double STRUM_SECONDS = 0.009;

    private static final int FEW = 32;
    private static final int MANY = FEW * FourFold.TIMES;

    private final List<GuitarTone> tones;
    private final List<GuitarTone> running = new ArrayList<>();
    private final FourFold stretching = new FourFold();
    private final float[] few = new float[FEW];
    private final float[] many = new float[MANY];
    private int used = MANY;
    private int next;
    private long now;

    private GuitarPart(List<GuitarTone> tones) {
        this.tones = List.copyOf(tones);
    }

    /** @param chords by moment */
    public static Unit of(SampleRate rate, List<VoicedChord> chords) {
        var slower = FourFold.slower(rate);
        return new GuitarPart(chords.stream()
                .flatMap(chord -> tones(slower, chord).stream())
                .sorted(Comparator.comparingLong(GuitarTone::from))
                .toList());
    }

    private static List<GuitarTone> tones(SampleRate rate, VoicedChord chord) {
        var tones = new ArrayList<GuitarTone>();
        var keys = chord.voicing().midi().stream().sorted().toList();
        for (int key : keys) {
            double start = chord.when().start() + STRUM_SECONDS * tones.size();
            long until = rate.at(Math.max(start, chord.when().end()));
            tones.add(new GuitarTone(rate, Pitch.hertz((double) key), chord.velocity(), rate.at(start), until));
        }
        return tones;
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
                out[from + done + i] += many[used + i];
            }
            used += step;
            done += step;
        }
    }

    private void make() {
        while (next < tones.size() && tones.get(next).from() < now + FEW) {
            running.add(tones.get(next++));
        }
        Arrays.fill(few, 0);
        running.forEach(tone -> tone.render(few, FEW, now));
        running.removeIf(GuitarTone::isOver);
        stretching.stretch(few, FEW, many);
        used = 0;
        now += FEW;
    }
}
