package groundbass.fingering;

import groundbass.score.NoteAt;
import java.util.List;
import java.util.Objects;

/**
 * A grip and the written notes that it plays: those that begin, then those that are held.
 *
 * @param notes in the order of the grip's notes
 * @param start in seconds from the start of the count-in
 */
public record Gripped(Grip grip, List<NoteAt> notes, double start) {
    public Gripped {
        Objects.requireNonNull(grip);
        notes = List.copyOf(notes);
    }
}
