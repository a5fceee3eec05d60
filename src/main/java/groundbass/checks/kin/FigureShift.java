package groundbass.checks.kin;

import groundbass.score.Note;
import groundbass.score.Place;
import groundbass.score.Place.Fretted;
import groundbass.score.Tuning;
import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** How far a figure is moved to become another one of its size: by pitch, and where it keeps its form by strings and frets. */
record FigureShift(Figure from, Figure to, int semitones) {
    /** So many strings lower and so many frets up. */
    private record Steps(int strings, int frets) {
        static Steps between(Fretted from, Fretted to) {
            return new Steps(to.string() - from.string(), to.fret() - from.fret());
        }
    }

    /** The way that most pitches go; nowhere where two ways are as common. */
    static Optional<FigureShift> most(Figure from, Figure to) {
        int[] rises = IntStream.range(0, from.size())
                .filter(i -> from.hasPitch(i) && to.hasPitch(i))
                .map(i -> to.pitch(i) - from.pitch(i))
                .toArray();
        if (rises.length == 0) {
            return Optional.of(new FigureShift(from, to, 0));
        }
        Arrays.sort(rises);
        int most = 0;
        int rise = 0;
        boolean alone = false;
        for (int first = 0; first < rises.length; ) {
            int next = first + 1;
            while (next < rises.length && rises[next] == rises[first]) {
                next++;
            }
            alone = next - first > most || (alone && next - first < most);
            rise = next - first > most ? rises[first] : rise;
            most = Math.max(most, next - first);
            first = next;
        }
        return alone ? Optional.of(new FigureShift(from, to, rise)) : Optional.empty();
    }

    /** Whether a note of the first figure, moved, is a note of the second. An open string may stay where the others move. */
    boolean leads(int note, int other) {
        if (!from.hasPitch(note) || !to.hasPitch(other)) {
            return from.hasPitch(note) == to.hasPitch(other);
        }
        return to.pitch(other) - from.pitch(note) == semitones || staysOpen(from.note(note), to.note(other));
    }

    private static boolean staysOpen(Note one, Note other) {
        return ((Fretted) other.place()).fret() == 0 && one.place().equals(other.place());
    }

    /**
     * Where a note would be that stands in the way of the shape: where its form asks for it, or else on the string on
     * which it is written. Empty where the neck does not reach so far.
     */
    Optional<Place> expected(int note) {
        var written = to.note(note).place();
        if (!from.hasPitch(note)) {
            return Optional.of(Place.dead(written.string()));
        }
        int pitch = from.pitch(note) + semitones;
        var place = (Fretted) from.note(note).place();
        return Stream.concat(steps().flatMap(step -> moved(place, step)).stream(), on(written.string(), pitch).stream())
                .filter(each -> tuning().midi(each) == pitch)
                .map(Place.class::cast)
                .findFirst();
    }

    /** How most places move; empty where they do not move alike. */
    private Optional<Steps> steps() {
        var counted = new HashMap<Steps, Integer>();
        IntStream.range(0, from.size())
                .filter(i -> from.hasPitch(i) && to.hasPitch(i) && to.pitch(i) - from.pitch(i) == semitones)
                .mapToObj(i -> Steps.between(
                        (Fretted) from.note(i).place(), (Fretted) to.note(i).place()))
                .forEach(steps -> counted.merge(steps, 1, Integer::sum));
        int most = counted.values().stream().mapToInt(Integer::intValue).max().orElse(0);
        var first = counted.entrySet().stream()
                .filter(vote -> vote.getValue() == most)
                .map(Map.Entry::getKey)
                .toList();
        return first.size() == 1 ? Optional.of(first.get(0)) : Optional.empty();
    }

    private Optional<Fretted> moved(Fretted place, Steps steps) {
        int string = place.string() + steps.strings();
        return string < 1 || string > tuning().size()
                ? Optional.empty()
                : fretted(string, place.fret() + steps.frets());
    }

    private Optional<Fretted> on(int string, int pitch) {
        return fretted(string, pitch - tuning().string(string).pitch().midi());
    }

    private static Optional<Fretted> fretted(int string, int fret) {
        return fret < 0 || fret > Fretted.MOST_FRETS ? Optional.empty() : Optional.of(new Fretted(string, fret));
    }

    private Tuning tuning() {
        return from.tuning();
    }
}
