package groundbass.analysis;

import groundbass.score.NoteAt;
import groundbass.score.Passage;
import groundbass.theory.Fragment;
import java.util.List;
import java.util.Objects;

/**
 * Notes one after the other that have a name together: a stretch of a scale, a broken chord, semitones.
 *
 * @param passage from the first note's beginning to the last one's end or its bar's
 */
public record Run(Passage passage, List<NoteAt> notes, Fragment fragment) {
    public Run {
        Objects.requireNonNull(passage);
        Objects.requireNonNull(fragment);
        notes = List.copyOf(notes);
    }
}
