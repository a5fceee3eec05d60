package groundbass.writing;

import groundbass.score.Note;
import groundbass.score.Ornaments;
import groundbass.theory.NoteName;
import groundbass.theory.Pitch;
import java.util.Objects;
import java.util.Optional;

/**
 * One notehead.
 *
 * @param note the note of the score that this head is a part of
 * @param noteBar the number of the bar that the note begins in
 * @param pitch spelled, as it sounds; bass parts are printed an octave higher. Of a dead note, the pitch of its open
 *     string, for its place on the staff
 * @param accidental the sign to print, if any
 * @param grace the grace note before it, on its first head only
 * @param bent where a bend by semitones leads; what is bent before it is struck is printed there, and {@code pitch} with
 *     its sign as a small head before it
 * @param tiedFrom whether this head continues the one before it
 * @param tiedTo whether the sound goes on in another head
 */
public record Head(
        Note note,
        int noteBar,
        Pitch pitch,
        Optional<Accidental> accidental,
        Optional<Grace> grace,
        Optional<Bent> bent,
        boolean tiedFrom,
        boolean tiedTo) {
    /** A sign before a head. */
    public enum Sign {
        DOUBLE_FLAT,
        FLAT,
        NATURAL,
        SHARP,
        DOUBLE_SHARP;

        /** @param alteration in semitones, -2 to 2 */
        public static Sign of(int alteration) {
            return values()[alteration + NoteName.MOST_ALTERED];
        }
    }

    /** A sign that must stand, or one that only reminds. */
    public record Accidental(Sign sign, boolean courtesy) {}

    /** A grace note, with its own sign. */
    public record Grace(Pitch pitch, Optional<Accidental> accidental) {
        public Grace {
            Objects.requireNonNull(pitch);
            Objects.requireNonNull(accidental);
        }
    }

    /** What a bent string sounds, with its own sign. */
    public record Bent(Pitch pitch, Optional<Accidental> accidental) {
        public Bent {
            Objects.requireNonNull(pitch);
            Objects.requireNonNull(accidental);
        }
    }

    public Head {
        Objects.requireNonNull(note);
        Objects.requireNonNull(pitch);
        Objects.requireNonNull(accidental);
        Objects.requireNonNull(grace);
        Objects.requireNonNull(bent);
    }

    /** Where the bass part is written: an octave above what sounds. */
    public Pitch writtenPitch() {
        return pitch.octavesUp(1);
    }

    /** Where it is bent to already when it is struck. */
    public Optional<Bent> bentBefore() {
        return bent.filter(
                to -> note.ornaments().bend().filter(Ornaments.Bend::before).isPresent());
    }

    Head with(Optional<Accidental> newAccidental, Optional<Grace> newGrace, Optional<Bent> newBent) {
        return new Head(note, noteBar, pitch, newAccidental, newGrace, newBent, tiedFrom, tiedTo);
    }
}
