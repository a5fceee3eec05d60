package groundbass.analysis;

import groundbass.score.NoteAt;
import groundbass.theory.NamedVoicing;
import java.util.List;
import java.util.Objects;

/** Notes that begin together and what they make. */
record Simultaneity(List<NoteAt> notes, NamedVoicing voicing) {
    public Simultaneity {
        Objects.requireNonNull(voicing);
        notes = List.copyOf(notes);
    }
}
