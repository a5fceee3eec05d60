package groundbass.performance;

import groundbass.score.Note;
import groundbass.score.Passage;
import groundbass.score.Position;
import java.util.Objects;

/**
 * One note as it sounds.
 *
 * @param note as written
 * @param pitch the MIDI number that sounds before any movement; a dead note has its open string's
 * @param force how hard it is played: a finger's normal stroke is 96, and hard ones go beyond what MIDI can say
 * @param grace whether this is the short note before {@code note} rather than the note itself
 */
public record TimedNote(
        Note note, Origin origin, When when, Attack attack, int pitch, int force, PitchCurve curve, boolean grace) {
    public TimedNote {
        Objects.requireNonNull(note);
        Objects.requireNonNull(origin);
        Objects.requireNonNull(when);
        Objects.requireNonNull(attack);
        Objects.requireNonNull(curve);
        if (force < 1) {
            throw new IllegalArgumentException("nothing is played with no force: " + force);
        }
    }

    /** Loudness as MIDI counts it, 1 to 127. */
    public int velocity() {
        return Velocity.midi(force);
    }

    /** The stretch of the written line that the note takes up, past the end of its bar where it is held. */
    public Passage passage() {
        return new Passage(origin.written(), new Position(origin.written().bar(), note.end()));
    }

    TimedNote with(PitchCurve newCurve) {
        return new TimedNote(note, origin, when, attack, pitch, force, newCurve, grace);
    }

    public int string() {
        return note.string();
    }

    public boolean isDead() {
        return note.isDead();
    }

    /** Whether the string sounds on from the note before without a new stroke. */
    public boolean isContinued() {
        return attack instanceof Attack.Continued;
    }
}
