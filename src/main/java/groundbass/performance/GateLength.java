package groundbass.performance;

import groundbass.score.Fraction;
import groundbass.score.Note;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Technique;

/**
 * How much of its written length a note sounds. rule: gate-length; what it leaves out is common practice, no source.
 */
final class GateLength {
    private static final Fraction NORMAL = Fraction.of(9, 10);
    private static final Fraction SLAP = Fraction.of(17, 20);
    private static final Fraction SHORT = Fraction.of(1, 2);
    private static final Fraction PORTATO = Fraction.of(3, 4);
    private static final Fraction GHOST = Fraction.of(3, 5);

    private GateLength() {}

    static Fraction of(Note note) {
        if (note.has(Mark.TENUTO)) {
            return note.has(Mark.SHORT) ? PORTATO : Fraction.ONE;
        }
        if (note.has(Mark.SHORT)) {
            return SHORT;
        }
        return note.has(Mark.GHOST) ? GHOST : note.pluck().map(GateLength::of).orElse(NORMAL);
    }

    private static Fraction of(Technique hand) {
        return switch (hand) {
            case SLAP, POP, THUMB_DOWN, THUMB_UP -> SLAP;
            case MUTE -> GHOST;
            case THUMB, FINGER, INDEX, MIDDLE, PICK, PLUCK, TAP, RAKE, LEFT_HAND -> NORMAL;
        };
    }
}
