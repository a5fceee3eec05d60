package groundbass.writing;

import groundbass.score.Note;
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
 * @param tiedFrom whether this head continues the one before it
 * @param tiedTo whether the sound goes on in another head
 */
public record Head(
        Note note,
        int noteBar,
        Pitch pitch,
        Optional<Accidental> accidental,
        Optional<Grace> grace,
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

    public Head {
        Objects.requireNonNull(note);
        Objects.requireNonNull(pitch);
        Objects.requireNonNull(accidental);
        Objects.requireNonNull(grace);
    }

    /** Where the bass part is written: an octave above what sounds. */
    public Pitch writtenPitch() {
        return pitch.octavesUp(1);
    }

    Head with(Optional<Accidental> newAccidental, Optional<Grace> newGrace) {
        return new Head(note, noteBar, pitch, newAccidental, newGrace, tiedFrom, tiedTo);
    }
}
