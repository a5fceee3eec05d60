package groundbass.script.checking;

import groundbass.score.Place.Fretted;
import groundbass.score.Tuning;
import groundbass.script.claims.Described;
import groundbass.script.claims.Manner;
import groundbass.script.claims.NamedPlace;
import groundbass.theory.NoteName;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** The fretboard of a line, asked what a place is called. Twelve frets are an octave. */
public final class Neck {
    private final Timeline timeline;
    private final Tuning tuning;
    private final int frets;

    public Neck(Timeline timeline) {
        this.timeline = timeline;
        this.tuning = timeline.line().header().tuning();
        this.frets = timeline.line().header().frets();
    }

    /** Agrees or contradicts where string, fret and name were all said; empty where they were not. */
    Optional<Verdict> check(Described note) {
        if (note.name().isEmpty() || note.isDead() || note.manners().contains(Manner.HARMONIC)) {
            return Optional.empty();
        }
        var name = note.name().get();
        if (note.spot().isWhole()) {
            return Optional.of(
                    place(note.spot()).map(place -> check(place, name)).orElse(Verdict.CANNOT_TELL));
        }
        return note.spot().string().isEmpty() && note.spot().fret().isPresent()
                ? anyString(note.spot().fret().getAsInt(), name)
                : Optional.empty();
    }

    /** Agrees where a place is called so. */
    Verdict check(Fretted place, NoteName name) {
        return isCalled(place, name) ? Verdict.AGREES : new Verdict.Contradicts(right(place, name));
    }

    /** Without a string, the fret is wrong only where no string has the note there. */
    private Optional<Verdict> anyString(int fret, NoteName name) {
        if (fret > Fretted.MOST_FRETS) {
            return Optional.of(Verdict.CANNOT_TELL);
        }
        boolean somewhere =
                IntStream.rangeClosed(1, tuning.size()).anyMatch(string -> isCalled(new Fretted(string, fret), name));
        return somewhere
                ? Optional.empty()
                : Optional.of(new Verdict.Contradicts(right(new Fretted(tuning.size(), fret), name)));
    }

    /** Empty for a fret that no neck has. */
    static Optional<Fretted> place(NamedPlace spot) {
        int fret = spot.fret().orElseThrow();
        return fret > Fretted.MOST_FRETS
                ? Optional.empty()
                : Optional.of(new Fretted(spot.string().orElseThrow(), fret));
    }

    /** By what sounds there, or by what is typed there where a line is typed for another tuning than it sounds in. */
    public boolean isCalled(Fretted place, NoteName name) {
        int typed = tuning.string(place.string()).name().pitchClass() + place.fret();
        return Math.floorMod(tuning.midi(place), 12) == name.pitchClass()
                || Math.floorMod(typed, 12) == name.pitchClass();
    }

    public Right right(Fretted place, NoteName said) {
        var there = IntStream.rangeClosed(0, frets)
                .filter(fret -> isCalled(new Fretted(place.string(), fret), said))
                .boxed()
                .toList();
        return new Right.NameOfPlace(place, timeline.nameAt(place), said, List.copyOf(there));
    }
}
