package groundbass.walkthrough;

import groundbass.score.Arrival;
import groundbass.score.Note;
import groundbass.score.Place.Dead;
import groundbass.score.Place.Fretted;
import groundbass.score.Tuning;
import java.util.Optional;

/**
 * The way of the fretting hand from one place on the neck to another.
 *
 * @param strings by how many strings higher; negative where lower
 * @param frets   by how many frets further up; negative where down
 */
record HandMove(int strings, int frets) {
    static final HandMove NONE = new HandMove(0, 0);

    /** The way from one note to another; along the neck only where both are stopped. */
    static HandMove between(Note from, Note to) {
        int strings = from.string() - to.string();
        int frets = fret(from) > 0 && fret(to) > 0 ? fret(to) - fret(from) : 0;
        return new HandMove(strings, frets);
    }

    /** How far, in strings and frets together. */
    int far() {
        return Math.abs(strings) + Math.abs(frets);
    }

    /** The note where the hand takes it; empty where it cannot take it, as an open string along the neck. */
    Optional<Note> of(Note note, Tuning tuning) {
        if (equals(NONE)) {
            return Optional.of(note);
        }
        int string = note.string() - strings;
        if (string < 1 || string > tuning.size() || isTiedToItsPlace(note)) {
            return Optional.empty();
        }
        if (!(note.place() instanceof Fretted place)) {
            return Optional.of(note.at(new Dead(string)));
        }
        int fret = place.fret() + frets;
        boolean opens = place.fret() == 0 ? frets != 0 : fret < 1;
        return opens || fret > Fretted.MOST_FRETS ? Optional.empty() : Optional.of(note.at(new Fretted(string, fret)));
    }

    /** Whether a note means one place of the neck, by its harmonic, its spelling, or a fret beside its own. */
    static boolean isTiedToItsPlace(Note note) {
        return note.ornaments().harmonic().isPresent()
                || note.ornaments().spelling().isPresent()
                || note.ornaments().trill().isPresent()
                || note.arrival().filter(Arrival::isGrace).isPresent();
    }

    private static int fret(Note note) {
        return note.place() instanceof Fretted place ? place.fret() : 0;
    }
}
