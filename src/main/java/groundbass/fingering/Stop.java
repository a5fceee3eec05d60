package groundbass.fingering;

import groundbass.score.NoteAt;
import java.util.Objects;

/**
 * How the fretting hand plays one written note.
 *
 * @param position the fret at which the index finger stands
 */
public record Stop(NoteAt note, Fingered fingered, int position) {
    public Stop {
        Objects.requireNonNull(note);
        Objects.requireNonNull(fingered);
    }
}
