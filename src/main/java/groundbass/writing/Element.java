package groundbass.writing;

import groundbass.score.Fraction;
import java.util.List;

/** A chord (of one note or more) or a rest. */
public sealed interface Element {
    /** From the bar's first count. */
    Fraction onset();

    /** The shape that is drawn. */
    NoteValue value();

    /** How long it really lasts: the shape's length, less where a tuplet squeezes it. */
    Fraction length();

    /** Notes with one stem, lowest first. */
    record Chord(Fraction onset, NoteValue value, Fraction length, List<Head> heads) implements Element {
        public Chord {
            heads = List.copyOf(heads);
            if (heads.isEmpty()) {
                throw new IllegalArgumentException("a chord has a note");
            }
        }
    }

    /**
     * Silence.
     *
     * @param wholeBar whether it stands for the whole bar and is centred in it, whatever the meter
     * @param hidden whether it only fills a second voice and is not drawn
     */
    record Rest(Fraction onset, NoteValue value, Fraction length, boolean wholeBar, boolean hidden)
            implements Element {}
}
