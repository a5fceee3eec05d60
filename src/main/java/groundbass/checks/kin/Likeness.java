package groundbass.checks.kin;

import groundbass.score.Fraction;
import groundbass.score.Place;
import groundbass.score.Technique;
import java.util.Objects;

/** How a figure is like another one; figures that differ in more than one thing have none. */
public sealed interface Likeness {
    /** Alike in every place and time, at the same frets or moved; strokes may differ in more than one note. */
    record Same() implements Likeness {}

    /** The one thing in which a figure differs. */
    sealed interface Deviation extends Likeness {
        /** Which note of the figure it is, from 0; for a missing one, the note before it. */
        int note();

        /** How many notes are not alike for it. */
        int apart();
    }

    /** A note stands at another place than the shape would have it. */
    record OtherPlace(int note, Place expected) implements Deviation {
        public OtherPlace {
            Objects.requireNonNull(expected);
        }

        @Override
        public int apart() {
            return 1;
        }
    }

    /** A note begins earlier or later. @param expected from the beginning of the figure */
    record OtherTime(int note, Fraction expected) implements Deviation {
        public OtherTime {
            Objects.requireNonNull(expected);
        }

        @Override
        public int apart() {
            return 1;
        }
    }

    /** A note and the next have changed places, and so may have the two after them. */
    record Exchanged(int note, int apart) implements Deviation {}

    /** A dead note is not there. @param at from the beginning of the figure */
    record NoDeadNote(int note, Fraction at) implements Deviation {
        public NoDeadNote {
            Objects.requireNonNull(at);
        }

        @Override
        public int apart() {
            return 0;
        }
    }

    /** A note is struck in another way. */
    record OtherStroke(int note, Technique expected) implements Deviation {
        public OtherStroke {
            Objects.requireNonNull(expected);
        }

        @Override
        public int apart() {
            return 0;
        }
    }
}
