package groundbass.fingering;

import groundbass.score.NoteAt;
import java.util.List;
import java.util.Objects;

/**
 * A grip and the written notes that it plays: those that begin, then those that are held.
 *
 * @param notes in the order of the grip's notes
 * @param start in seconds from the start of the count-in
 * @param cost what it costs with the way to it
 */
public record Gripped(Grip grip, List<NoteAt> notes, double start, Cost cost) {
    public Gripped {
        Objects.requireNonNull(grip);
        Objects.requireNonNull(cost);
        notes = List.copyOf(notes);
    }
}
