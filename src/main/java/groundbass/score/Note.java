package groundbass.score;

import groundbass.score.Ornaments.Mark;
import groundbass.score.Place.Dead;
import groundbass.score.Place.Fretted;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * One note: when it starts (from the start of its bar), how long it lasts (past the bar's end where it is held), where
 * it is played, and by which hand how.
 *
 * @param pluck what strikes the string; empty where the note is hammered, pulled or slid to without a new stroke
 */
public record Note(
        Fraction onset,
        Fraction length,
        Place place,
        Optional<Technique> pluck,
        Optional<Arrival> arrival,
        Ornaments ornaments) {
    public Note {
        Objects.requireNonNull(place);
        Objects.requireNonNull(ornaments);
        if (onset.isNegative() || !length.isPositive()) {
            throw new IllegalArgumentException("a note starts in its bar and lasts: " + onset + ", " + length);
        }
        if (pluck.isEmpty() && (arrival.isEmpty() || arrival.get().isGrace())) {
            throw new IllegalArgumentException("a note is struck, or reached from the note before it: " + place);
        }
        if (place instanceof Dead
                && (ornaments.harmonic().isPresent()
                        || ornaments.trill().isPresent()
                        || ornaments.spelling().isPresent()
                        || arrival.filter(Arrival::isGrace).isPresent())) {
            throw new IllegalArgumentException("a dead note has no harmonic, trill, spelling or grace note: " + place);
        }
    }

    public static Note plucked(Fraction onset, Fraction length, Place place, Technique technique) {
        return new Note(onset, length, place, Optional.of(technique), Optional.empty(), Ornaments.NONE);
    }

    public int string() {
        return place.string();
    }

    public Fraction end() {
        return onset.plus(length);
    }

    public boolean isDead() {
        return place instanceof Dead;
    }

    public boolean has(Mark mark) {
        return ornaments.has(mark);
    }

    /** The sounding MIDI number before any bend: fret or harmonic; empty for a dead note. */
    public OptionalInt midi(Tuning tuning) {
        if (!(place instanceof Fretted fretted)) {
            return OptionalInt.empty();
        }
        int open = tuning.string(fretted.string()).pitch().midi();
        int above = ornaments
                .harmonic()
                .map(harmonic -> harmonic.semitonesAboveOpen(fretted.fret()).orElse(fretted.fret()))
                .orElse(fretted.fret());
        return OptionalInt.of(open + above);
    }

    /** Played with a stroke of its own, by the technique that it names or else by this one. */
    public Note struck(Technique usual) {
        return new Note(onset, length, place, pluck.or(() -> Optional.of(usual)), Optional.empty(), ornaments);
    }

    public Note at(Place newPlace) {
        return new Note(onset, length, newPlace, pluck, arrival, ornaments);
    }

    public Note with(Technique newPluck) {
        return new Note(onset, length, place, Optional.of(newPluck), arrival, ornaments);
    }

    public Note with(Arrival newArrival) {
        return new Note(onset, length, place, pluck, Optional.of(newArrival), ornaments);
    }

    public Note withLength(Fraction newLength) {
        return new Note(onset, newLength, place, pluck, arrival, ornaments);
    }

    public Note withOrnaments(Ornaments newOrnaments) {
        return new Note(onset, length, place, pluck, arrival, newOrnaments);
    }
}
