package groundbass.intake.smf;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Tells grace notes from the others: a stroke of less than a tenth of a quarter that another one, of another pitch but
 * within an octave, takes over at once (common practice, no source). A written note of that length would be shorter than a
 * thirty-second.
 */
record Graces(List<Smf.Note> notes, Map<Smf.Note, Smf.Note> before) {
    private static final int SHARE = 10;
    private static final int OCTAVE = 12;

    /** @param played in the order in which they begin */
    static Graces of(List<Smf.Note> played, int perQuarter) {
        var notes = new ArrayList<Smf.Note>();
        var before = new HashMap<Smf.Note, Smf.Note>();
        for (int i = 0; i < played.size(); i++) {
            var note = played.get(i);
            var next = isShort(note, perQuarter) ? taking(note, played, i) : Optional.<Smf.Note>empty();
            next.ifPresentOrElse(each -> before.put(each, note), () -> notes.add(note));
        }
        return new Graces(notes, before);
    }

    private static boolean isShort(Smf.Note note, int perQuarter) {
        return (note.off() - note.on()) * SHARE < perQuarter;
    }

    private static Optional<Smf.Note> taking(Smf.Note note, List<Smf.Note> played, int index) {
        long slack = 2;
        return played.subList(index + 1, played.size()).stream()
                .takeWhile(next -> next.on() <= note.off() + slack)
                .filter(next -> next.on() >= note.off() - slack && next.key() != note.key())
                .filter(next -> Math.abs(next.key() - note.key()) < OCTAVE)
                .findFirst();
    }
}
