package groundbass.linetext.assemble;

import groundbass.score.Fraction;
import groundbass.score.Note;

/** A note whose end may still move: what follows holds it on or cuts it short. Times run through the whole line. */
final class SoundingNote {
    private final Note note;
    private final Fraction start;
    private Fraction end;

    SoundingNote(Note note, Fraction start) {
        this.note = note;
        this.start = start;
        this.end = start.plus(note.length());
    }

    Note note() {
        return note.withLength(end.minus(start));
    }

    /** The part of it that sounds before {@code border}. */
    Note noteUntil(Fraction border) {
        return note.withLength(end.min(border).minus(start));
    }

    Fraction start() {
        return start;
    }

    Fraction end() {
        return end;
    }

    void endAt(Fraction newEnd) {
        end = newEnd;
    }
}
