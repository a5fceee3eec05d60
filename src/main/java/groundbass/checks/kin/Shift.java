package groundbass.checks.kin;

import groundbass.score.Note;
import groundbass.score.Place;
import groundbass.score.Place.Fretted;
import groundbass.score.Tuning;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * How far a shape is moved: by pitch, and where it keeps its form by strings and frets.
 *
 * @param steps how most places move; empty where they do not move alike
 */
record Shift(Tuning tuning, int semitones, Optional<Steps> steps) {
    /** So many strings lower and so many frets up. */
    record Steps(int strings, int frets) {
        private static final Steps NONE = new Steps(0, 0);

        private static Steps between(Fretted from, Fretted to) {
            return new Steps(to.string() - from.string(), to.fret() - from.fret());
        }
    }

    private record Pair(Note from, Note to) {}

    /** The way that most pitches of two figures of the same size go; nowhere where two ways are as common. */
    static Optional<Shift> most(Figure from, Figure to) {
        var tuning = from.tuning();
        var pairs = IntStream.range(0, from.size())
                .mapToObj(i -> new Pair(from.note(i), to.note(i)))
                .filter(pair ->
                        pair.from().place() instanceof Fretted && pair.to().place() instanceof Fretted)
                .toList();
        if (pairs.isEmpty()) {
            return Optional.of(new Shift(tuning, 0, Optional.of(Steps.NONE)));
        }
        Function<Pair, Integer> rise = pair ->
                pair.to().midi(tuning).orElseThrow() - pair.from().midi(tuning).orElseThrow();
        return mostCommon(pairs.stream().map(rise))
                .map(semitones -> new Shift(
                        tuning,
                        semitones,
                        mostCommon(pairs.stream()
                                .filter(pair -> rise.apply(pair).equals(semitones))
                                .map(pair -> Steps.between((Fretted) pair.from().place(), (Fretted)
                                        pair.to().place())))));
    }

    private static <T> Optional<T> mostCommon(Stream<T> votes) {
        var counted = new HashMap<T, Integer>();
        votes.forEach(vote -> counted.merge(vote, 1, Integer::sum));
        int most = counted.values().stream().mapToInt(Integer::intValue).max().orElse(0);
        var first = counted.entrySet().stream()
                .filter(vote -> vote.getValue() == most)
                .map(Map.Entry::getKey)
                .toList();
        return first.size() == 1 ? Optional.of(first.get(0)) : Optional.empty();
    }

    /** Whether a note is another one moved. An open string may stay where the others move. */
    boolean leads(Note from, Note to) {
        if (from.isDead() || to.isDead()) {
            return from.isDead() && to.isDead();
        }
        boolean stays = from.place().equals(to.place()) && ((Fretted) to.place()).fret() == 0;
        return stays || to.midi(tuning).equals(moved(from));
    }

    private OptionalInt moved(Note note) {
        var midi = note.midi(tuning);
        return midi.isPresent() ? OptionalInt.of(midi.getAsInt() + semitones) : midi;
    }

    /**
     * Where a note would be that stands in the way of the shape: where its form asks for it, or else on the string on
     * which it is written. Empty where the neck does not reach so far.
     */
    Optional<Place> expected(Note from, Note written) {
        if (from.isDead()) {
            return Optional.of(Place.dead(written.string()));
        }
        var pitch = moved(from);
        return Stream.concat(steps.flatMap(step -> step(from.place(), step)).stream(), places(written.string(), pitch))
                .filter(place -> pitch.equals(OptionalInt.of(tuning.midi(place))))
                .map(Place.class::cast)
                .findFirst();
    }

    private Optional<Fretted> step(Place place, Steps steps) {
        int string = place.string() + steps.strings();
        return string < 1 || string > tuning.size()
                ? Optional.empty()
                : fretted(string, ((Fretted) place).fret() + steps.frets());
    }

    private Stream<Fretted> places(int string, OptionalInt pitch) {
        int open = tuning.string(string).pitch().midi();
        return pitch.isPresent() ? fretted(string, pitch.getAsInt() - open).stream() : Stream.empty();
    }

    private static Optional<Fretted> fretted(int string, int fret) {
        return fret < 0 || fret > Fretted.MOST_FRETS ? Optional.empty() : Optional.of(new Fretted(string, fret));
    }
}
