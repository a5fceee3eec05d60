package groundbass.score;

import groundbass.score.Place.Fretted;
import groundbass.theory.NoteName;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/**
 * How far a figure is moved on the neck with its shape kept.
 *
 * @param strings towards the highest string; below zero towards the lowest
 * @param frets up the neck; below zero towards the nut
 */
public record Shift(int strings, int frets) {
    public static final Shift NONE = new Shift(0, 0);

    public Shift {
        if (Math.abs(strings) >= Tuning.MOST_STRINGS || Math.abs(frets) > Fretted.MOST_FRETS) {
            throw new IllegalArgumentException("no neck is so large: " + strings + " strings, " + frets + " frets");
        }
    }

    public boolean isNone() {
        return strings == 0 && frets == 0;
    }

    /** Both, one after the other; empty where no neck is so large. */
    public Optional<Shift> then(Shift next) {
        return of(strings + next.strings, frets + next.frets);
    }

    /** So far, as somebody asks for it; empty where no neck is so large. */
    public static Optional<Shift> of(int strings, int frets) {
        return Math.abs(strings) < Tuning.MOST_STRINGS && Math.abs(frets) <= Fretted.MOST_FRETS
                ? Optional.of(new Shift(strings, frets))
                : Optional.empty();
    }

    /**
     * The note at its new place, fretted by the same finger. A name that was chosen for it goes with the pitch that it
     * named.
     *
     * @param highest the last fret of the neck
     * @return empty where the neck ends before, or before what the note trills to, or where the note would lose its pitch: a natural harmonic sounds at its
     *     own fret alone
     */
    public Optional<Note> of(Note note, Tuning tuning, int highest) {
        var place = place(note.place(), tuning, highest)
                .filter(moved -> note.ornaments().fit(moved, highest));
        var arrival = arrival(note, highest);
        var harmonic = harmonic(note.ornaments().harmonic());
        if (place.isEmpty() || arrival.isPresent() != note.arrival().isPresent()) {
            return Optional.empty();
        }
        if (harmonic.isPresent() != note.ornaments().harmonic().isPresent()) {
            return Optional.empty();
        }
        var named = new Note(
                note.onset(),
                note.length(),
                place.get(),
                note.pluck(),
                arrival,
                ornaments(note.ornaments(), harmonic, note.ornaments().spelling()));
        boolean samePitch = named.midi(tuning).equals(note.midi(tuning));
        return Optional.of(
                samePitch ? named : named.withOrnaments(ornaments(note.ornaments(), harmonic, Optional.empty())));
    }

    private static Ornaments ornaments(Ornaments before, Optional<Harmonic> harmonic, Optional<NoteName> spelling) {
        return new Ornaments(
                before.marks(),
                before.bend(),
                before.trill(),
                harmonic,
                before.slideIn(),
                before.slideOff(),
                before.spread(),
                before.finger(),
                spelling);
    }

    private Optional<Place> place(Place place, Tuning tuning, int highest) {
        int string = place.string() - strings;
        if (string < 1 || string > tuning.size()) {
            return Optional.empty();
        }
        if (!(place instanceof Fretted fretted)) {
            return Optional.of(Place.dead(string));
        }
        return fret(fretted.fret(), highest).map(fret -> Place.of(string, fret));
    }

    private Optional<Integer> fret(int fret, int highest) {
        return Optional.of(fret + frets).filter(moved -> moved >= 0 && moved <= highest);
    }

    private Optional<Arrival> arrival(Note note, int highest) {
        return note.arrival()
                .flatMap(arrival -> arrival.isGrace()
                        ? fret(arrival.graceFret().getAsInt(), highest).map(fret -> Arrival.from(arrival.kind(), fret))
                        : Optional.of(arrival));
    }

    private Optional<Harmonic> harmonic(Optional<Harmonic> harmonic) {
        if (harmonic.isEmpty() || frets == 0) {
            return harmonic;
        }
        var touched = harmonic.get().touchedFret();
        return touched.isEmpty()
                ? Optional.empty()
                : fret(touched.getAsInt(), Harmonic.HIGHEST_TOUCHED)
                        .filter(fret -> fret >= 1)
                        .map(Harmonic::touchedAt);
    }

    /** By how many semitones these notes sound higher; empty where they do not all move by one interval. */
    public OptionalInt semitones(List<Note> notes, Tuning tuning) {
        if (strings == 0) {
            return OptionalInt.of(frets);
        }
        var intervals = notes.stream()
                .filter(note -> !note.isDead())
                .map(note -> semitones(note.string(), tuning))
                .filter(OptionalInt::isPresent)
                .collect(Collectors.toSet());
        return intervals.size() == 1 ? intervals.iterator().next() : OptionalInt.empty();
    }

    private OptionalInt semitones(int string, Tuning tuning) {
        int there = string - strings;
        return there < 1 || there > tuning.size()
                ? OptionalInt.empty()
                : OptionalInt.of(tuning.string(there).pitch().midi()
                        - tuning.string(string).pitch().midi()
                        + frets);
    }
}
