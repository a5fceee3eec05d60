package groundbass.score;

import java.util.Comparator;
import java.util.Objects;

/** Which note of a written line is meant: where it begins, and on which string. */
public record NoteAt(Position position, int string) implements Comparable<NoteAt> {
    private static final Comparator<NoteAt> ORDER =
            Comparator.comparing(NoteAt::position).thenComparing(NoteAt::string, Comparator.reverseOrder());

    public NoteAt {
        Objects.requireNonNull(position);
    }

    public static NoteAt of(int bar, Note note) {
        return new NoteAt(new Position(bar, note.onset()), note.string());
    }

    @Override
    public int compareTo(NoteAt that) {
        return ORDER.compare(this, that);
    }
}
