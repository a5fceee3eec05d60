package groundbass.script.claims;

import groundbass.score.Arrival;
import groundbass.score.Note;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Technique;
import java.util.Set;
import java.util.function.Predicate;

/**
 * How a speaker says that a note is played, and which notes that is true of. Words that teachers use loosely are true of
 * more than one technique (common practice, no source).
 */
public enum Manner {
    HAMMER(arrives(Arrival.Kind.HAMMER)),
    PULL(arrives(Arrival.Kind.PULL)),
    SLIDE(arrives(Arrival.Kind.SLIDE)
            .or(note -> note.ornaments().slideIn().isPresent()
                    || note.ornaments().slideOff().isPresent())),
    POP(struck(Technique.POP)),
    SLAP(struck(Technique.SLAP, Technique.THUMB, Technique.THUMB_DOWN)),
    THUMB(struck(Technique.SLAP, Technique.THUMB, Technique.THUMB_DOWN, Technique.THUMB_UP)),
    THUMB_DOWN(struck(Technique.THUMB_DOWN, Technique.SLAP, Technique.THUMB)),
    THUMB_UP(struck(Technique.THUMB_UP)),
    /** With thumb or pick; a pick of which nobody wrote the way may go either. */
    DOWNSTROKE(struck(Technique.THUMB_DOWN, Technique.PICK, Technique.SLAP, Technique.THUMB)),
    UPSTROKE(struck(Technique.THUMB_UP, Technique.PICK)),
    PLUCK(struck(
            Technique.PLUCK,
            Technique.FINGER,
            Technique.INDEX,
            Technique.MIDDLE,
            Technique.THUMB,
            Technique.PICK,
            Technique.MUTE,
            Technique.RAKE)),
    TAP(struck(Technique.TAP)),
    MUTE(struck(Technique.MUTE).or(Note::isDead)),
    PICK(struck(Technique.PICK)),
    RAKE(struck(Technique.RAKE)),
    DEAD(Note::isDead),
    /** A ghost note is a dead note to some and a soft one to others. */
    GHOST(((Predicate<Note>) Note::isDead).or(note -> note.has(Mark.GHOST))),
    ACCENT(marked(Mark.ACCENT).or(marked(Mark.MARCATO))),
    VIBRATO(marked(Mark.VIBRATO)),
    BEND(note -> note.ornaments().bend().isPresent()),
    HARMONIC(note -> note.ornaments().harmonic().isPresent());

    private final Predicate<Note> test;

    Manner(Predicate<Note> test) {
        this.test = test;
    }

    public boolean fits(Note note) {
        return test.test(note);
    }

    /** Whether it is a stroke or an arrival, of which a note has one. */
    boolean isStroke() {
        return switch (this) {
            case HAMMER, PULL, SLIDE, POP, SLAP, THUMB_DOWN, THUMB_UP, DOWNSTROKE, UPSTROKE, PLUCK, TAP, PICK -> true;
            case THUMB, MUTE, RAKE, DEAD, GHOST, ACCENT, VIBRATO, BEND, HARMONIC -> false;
        };
    }

    /** Whether it says that the note has no pitch of its own. */
    public boolean isPitchless() {
        return this == DEAD;
    }

    private static Predicate<Note> struck(Technique... techniques) {
        var set = Set.of(techniques);
        return note -> note.pluck().filter(set::contains).isPresent();
    }

    private static Predicate<Note> arrives(Arrival.Kind kind) {
        return note -> note.arrival().filter(arrival -> arrival.kind() == kind).isPresent();
    }

    private static Predicate<Note> marked(Mark mark) {
        return note -> note.has(mark);
    }
}
