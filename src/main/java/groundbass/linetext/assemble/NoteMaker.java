package groundbass.linetext.assemble;

import groundbass.linetext.problem.EventProblems;
import groundbass.linetext.problem.Problems;
import groundbass.linetext.typed.Event.Played;
import groundbass.score.Arrival;
import groundbass.score.Fraction;
import groundbass.score.Note;
import groundbass.score.Ornaments;
import groundbass.score.Ornaments.Trill;
import groundbass.score.Place;
import groundbass.score.Technique;
import groundbass.theory.Key;
import groundbass.theory.Letter;
import groundbass.theory.NoteName;
import groundbass.theory.Spelling;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Makes a note of a typed place whose time is known; words that do not fit it are left out. */
final class NoteMaker {
    private final PlaceResolver neck;
    private final Strings strings;
    private final Problems problems;

    NoteMaker(PlaceResolver neck, Strings strings, Problems problems) {
        this.neck = neck;
        this.strings = strings;
        this.problems = problems;
    }

    Note make(Played typed, Place place, Fraction onset, Fraction length, BarExtent bar) {
        var words = typed.words();
        var arrival = words.arrival().filter(found -> fits(found, typed, place));
        boolean unplucked = arrival.filter(found -> !found.isGrace()).isPresent();
        Optional<Technique> pluck =
                unplucked ? words.pluck() : Optional.of(words.pluck().orElse(bar.style()));
        var note = new Note(onset, length, place, pluck, arrival, withoutPitch(words.ornaments(), typed, place));
        return spelled(trilled(note, typed, bar.key()), typed);
    }

    private Note trilled(Note note, Played typed, Key key) {
        var trill = typed.words().trill();
        if (trill.isEmpty()) {
            return note;
        }
        if (!(note.place() instanceof Place.Fretted fretted)) {
            problems.add(EventProblems.deadWithTrill(typed.span()));
            return note;
        }
        if (note.ornaments().harmonic().isPresent()) {
            problems.add(EventProblems.harmonicWithTrill(trill.get().span()));
            return note;
        }
        if (note.ornaments().bend().isPresent()) {
            problems.add(EventProblems.bendWithTrill(trill.get().span()));
            return note;
        }
        int midi = neck.tuning().midi(fretted);
        var fret = trill.get().fret();
        int frets = fret.isPresent()
                ? fret.getAsInt() - fretted.fret()
                : Trill.in(key, name(typed, key, midi)).frets();
        if (frets < 1 || frets > Trill.MOST_FRETS || fretted.fret() + frets > neck.frets()) {
            problems.add(EventProblems.badTrill(trill.get().span()));
            return note;
        }
        return note.withOrnaments(note.ornaments().with(new Trill(frets)));
    }

    /** The name that is asked for where it is one of this pitch, else the key's. */
    private static NoteName name(Played typed, Key key, int midi) {
        return typed.words()
                .ornaments()
                .spelling()
                .filter(asked -> asked.pitchClass() == Math.floorMod(midi, 12))
                .orElseGet(() -> Spelling.of(key, midi).name());
    }

    private boolean fits(Arrival arrival, Played typed, Place place) {
        if (arrival.isGrace() && place instanceof Place.Dead) {
            problems.add(EventProblems.deadWithGrace(typed.span()));
            return false;
        }
        if (!arrival.isGrace() && !strings.wasPlayed(place.string())) {
            problems.add(EventProblems.noSource(typed.span(), arrival.kind().word()));
            return false;
        }
        return true;
    }

    /** A dead string has neither harmonics nor names; a name waits until it is known what sounds. */
    private Ornaments withoutPitch(Ornaments ornaments, Played typed, Place place) {
        var harmonic = ornaments.harmonic();
        if (place instanceof Place.Dead) {
            harmonic.ifPresent(found -> problems.add(EventProblems.deadWithHarmonic(typed.span())));
            ornaments.spelling().ifPresent(found -> problems.add(EventProblems.deadWithSpelling(typed.span())));
            harmonic = Optional.empty();
        }
        return new Ornaments(
                ornaments.marks(),
                ornaments.bend(),
                ornaments.trill(),
                harmonic,
                ornaments.slideIn(),
                ornaments.slideOff(),
                ornaments.spread(),
                ornaments.finger(),
                Optional.empty());
    }

    private Note spelled(Note note, Played typed) {
        var name = typed.words().ornaments().spelling();
        var midi = note.midi(neck.tuning());
        if (name.isEmpty() || midi.isEmpty()) {
            return note;
        }
        if (name.get().pitchClass() != pitchClass(midi)) {
            problems.add(EventProblems.otherPitch(typed.span(), name.get().toString(), namesOf(pitchClass(midi))));
            return note;
        }
        return note.withOrnaments(note.ornaments().withSpelling(name.get()));
    }

    private static int pitchClass(OptionalInt midi) {
        return Math.floorMod(midi.getAsInt(), 12);
    }

    private static Stream<String> namesOf(int pitchClass) {
        return Arrays.stream(Letter.values())
                .flatMap(letter -> IntStream.rangeClosed(-1, 1).mapToObj(n -> new NoteName(letter, n)))
                .filter(name -> name.pitchClass() == pitchClass)
                .map(NoteName::toString);
    }
}
