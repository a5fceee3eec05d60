package groundbass.fingering;

import groundbass.score.Tuning;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;

/** Necks and notes for tests. */
final class Necks {
    static final Fretboard FOUR = new Fretboard(Tuning.STANDARD, 24, Fretboard.LONG);

    private Necks() {}

    /** Pitches one after the other, each so many seconds long. */
    static List<SoundingMoment> melody(Fretboard neck, double seconds, int... midi) {
        var moments = new ArrayList<SoundingMoment>();
        for (int i = 0; i < midi.length; i++) {
            moments.add(SoundingMoment.of(i * seconds, (i + 1) * seconds, NoteConstraint.pitch(neck, midi[i])));
        }
        return moments;
    }

    /** The same with its first note on one string. */
    static List<SoundingMoment> from(Fretboard neck, int string, List<SoundingMoment> melody) {
        var all = new ArrayList<>(melody);
        var first = melody.get(0);
        all.set(
                0,
                SoundingMoment.of(
                        first.start(), first.end(), first.notes().get(0).onString(string)));
        return all;
    }

    /** Notes near one another, as lines go. */
    static List<SoundingMoment> random(Fretboard neck, Random random, int count, double seconds) {
        var midi = new int[count];
        int lowest = neck.tuning().string(neck.tuning().size()).pitch().midi();
        int highest = neck.tuning().string(1).pitch().midi() + neck.frets();
        int now = lowest + random.nextInt(24);
        for (int i = 0; i < count; i++) {
            now = Math.min(highest, Math.max(lowest, now + random.nextInt(15) - 7));
            midi[i] = now;
        }
        return melody(neck, seconds, midi);
    }

    /** {@code E3/2 A2/1}: places with their fingers, as line text types them. */
    static String text(Fretboard neck, Way way) {
        return way.grips().stream()
                .flatMap(grip -> grip.notes().stream())
                .map(note -> neck.tuning().typed(note.place()) + "/" + note.finger())
                .collect(Collectors.joining(" "));
    }

    static String places(Fretboard neck, Way way) {
        return text(neck, way).replaceAll("/\\d", "");
    }
}
