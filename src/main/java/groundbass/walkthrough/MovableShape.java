package groundbass.walkthrough;

import groundbass.score.Bar;
import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.score.Note;
import groundbass.score.Place;
import groundbass.score.Place.Fretted;
import groundbass.score.Tuning;
import java.util.List;
import java.util.Optional;

/**
 * What stays of a bar when the hand takes it elsewhere on the neck: its rhythm, its strokes, and how its places lie to
 * one another. A shape with an open string cannot move along the neck, only across it.
 *
 * @param notes at places counted from the first note's string and lowest fret
 */
record MovableShape(Meter meter, Fraction from, Fraction to, List<Relative> notes) {
    /** Fewer notes than this are told as fast as a reference to them. */
    private static final int FEWEST = 3;

    /** A note whose place is counted from {@link #origin}. */
    private record Relative(Note likeness, int string, int fret) {}

    /** @param fret 0 where the shape cannot move along the neck */
    private record Origin(int string, int fret) {}

    static Optional<MovableShape> of(Meter meter, Bar bar) {
        var notes = bar.notes();
        if (notes.size() < FEWEST || notes.stream().anyMatch(HandMove::isTiedToItsPlace)) {
            return Optional.empty();
        }
        var origin = origin(notes);
        return Optional.of(new MovableShape(
                meter,
                bar.from(),
                bar.to(),
                notes.stream().map(note -> relative(note, origin)).toList()));
    }

    /** How another bar of the same shape lies to an earlier one, where all its notes are moved by one interval. */
    static Optional<Earlier> between(int number, Bar earlier, Bar later, Tuning tuning) {
        var from = origin(earlier.notes());
        var to = origin(later.notes());
        return SoundingInterval.between(earlier.notes(), later.notes(), tuning)
                .map(interval -> new Earlier.Moved(
                        number, from.string() - to.string(), to.fret() - from.fret(), interval.octaves()));
    }

    private static Origin origin(List<Note> notes) {
        int lowest = notes.stream()
                .map(Note::place)
                .filter(Fretted.class::isInstance)
                .mapToInt(place -> ((Fretted) place).fret())
                .min()
                .orElse(0); // an open string: the shape stays at its frets
        return new Origin(notes.get(0).string(), lowest);
    }

    private static Relative relative(Note note, Origin origin) {
        var nowhere = note.at(new Place.Dead(1));
        int fret = note.place() instanceof Fretted fretted ? fretted.fret() - origin.fret() : -1;
        return new Relative(nowhere, note.string() - origin.string(), fret);
    }
}
