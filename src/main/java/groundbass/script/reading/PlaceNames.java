package groundbass.script.reading;

import groundbass.score.Tuning;
import groundbass.script.claims.Chunk;
import groundbass.script.claims.NamedPlace;
import groundbass.script.words.Found;
import groundbass.script.words.Sense;
import groundbass.script.words.Terms;
import groundbass.theory.NoteName;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/** Reads strings and frets: "the third fret of the A string", "open D", "frets seven, five and three", "G string, two". */
final class PlaceNames {
    private final Terms terms;
    private final NoteNames notes;
    private final Tuning tuning;

    PlaceNames(Terms terms, NoteNames notes, Tuning tuning) {
        this.terms = terms;
        this.notes = notes;
        this.tuning = tuning;
    }

    /** Places in a row. A string that is said once after several frets is meant for all of them. */
    Optional<Found<Chunk>> row(int i) {
        return row(i, false);
    }

    private Optional<Found<Chunk>> row(int i, boolean bare) {
        var spots = new ArrayList<NamedPlace>();
        int after = i;
        var next = places(i, bare);
        while (next.isPresent()) {
            spots.addAll(next.get().value());
            after = next.get().after();
            var separator = terms.separator(after);
            if (separator.isEmpty() || isAmong(next.get().value()) || isThen(after, separator.get())) {
                break;
            }
            boolean fretted = spots.get(spots.size() - 1).fret().isPresent();
            next = places(terms.skipArticles(separator.get().after()), fretted)
                    .filter(found -> fretted == found.value().get(0).fret().isPresent());
        }
        return spots.isEmpty()
                ? Optional.empty()
                : Optional.of(new Found<>(new Chunk.Places(backfilled(spots), leads(i, after)), after));
    }

    /** "Then" without "to" begins another thought. */
    private boolean isThen(int from, Found<Boolean> separator) {
        return !separator.value() && IntStream.range(from, separator.after()).anyMatch(i -> terms.is(i, Sense.THEN));
    }

    private static boolean isAmong(List<NamedPlace> read) {
        return read.size() > 1 && read.get(0).fret().isEmpty();
    }

    private static List<NamedPlace> backfilled(List<NamedPlace> spots) {
        var filled = new ArrayList<NamedPlace>();
        var string = OptionalInt.empty();
        for (int i = spots.size() - 1; i >= 0; i--) {
            var spot = spots.get(i);
            if (spot.fret().isPresent() && spot.string().isEmpty() && string.isPresent()) {
                spot = NamedPlace.of(string.getAsInt(), spot.fret().getAsInt());
            }
            string = spot.string();
            filled.add(0, spot);
        }
        return filled;
    }

    /** @param bare whether "the seventh" alone may be a fret, since one was just named */
    private Optional<Found<List<NamedPlace>>> places(int i, boolean bare) {
        return open(i).map(PlaceNames::one)
                .or(() -> strings(i).map(this::withFrets))
                .or(() -> frets(i, bare).map(this::withString));
    }

    private static Found<List<NamedPlace>> one(Found<NamedPlace> found) {
        return new Found<>(List.of(found.value()), found.after());
    }

    /** "Open A", "open low B string", "open string". */
    private Optional<Found<NamedPlace>> open(int i) {
        if (!terms.is(i, Sense.OPEN)) {
            return Optional.empty();
        }
        int at = i + 1;
        while (terms.is(at, Sense.REGISTER)) {
            at++;
        }
        var name = notes.name(at);
        var string = name.flatMap(found -> tuning.numberOf(found.value()));
        if (string.isPresent()) {
            int after = name.get().after();
            return Optional.of(
                    new Found<>(NamedPlace.of(string.get(), 0), terms.is(after, Sense.STRING) ? after + 1 : after));
        }
        return terms.is(at, Sense.STRING) && name.isEmpty()
                ? Optional.of(new Found<>(NamedPlace.atFret(0), at + 1))
                : Optional.empty();
    }

    /** "The A string", "D and G strings", "the fourth string", "string two". */
    private Optional<Found<List<Integer>>> strings(int i) {
        var numbered = numbered(i);
        if (numbered.isPresent()) {
            return numbered;
        }
        var strings = new ArrayList<Integer>();
        int at = i;
        while (true) {
            var name = notes.name(terms.skipArticles(at));
            var string = name.flatMap(found -> tuning.numberOf(found.value()));
            if (string.isEmpty()) {
                return Optional.empty();
            }
            strings.add(string.get());
            int after = name.get().after();
            boolean several = strings.size() > 1;
            if (terms.is(after, Sense.STRING)
                    && several == terms.at(after).raw().endsWith("s")) {
                return Optional.of(new Found<>(strings, after + 1));
            }
            if (!terms.isAny(after, Sense.AND, Sense.COMMA) || strings.size() > tuning.size()) {
                return Optional.empty();
            }
            at = after + 1;
        }
    }

    private Optional<Found<List<Integer>>> numbered(int i) {
        var number = terms.ordinal(i)
                .filter(found -> terms.is(found.after(), Sense.STRING))
                .map(found -> new Found<>(found.value(), found.after() + 1))
                .or(() -> terms.is(i, Sense.STRING) ? terms.number(i + 1) : Optional.empty());
        return number.filter(found -> found.value() >= 1 && found.value() <= tuning.size())
                .map(found -> new Found<>(List.of(found.value()), found.after()));
    }

    /** What may follow a string: "A string, seven", "E string fifth fret", "B string open". */
    private Found<List<NamedPlace>> withFrets(Found<List<Integer>> strings) {
        var alone = strings.value().stream().map(NamedPlace::onString).toList();
        if (alone.size() > 1) {
            return new Found<>(alone, strings.after());
        }
        int at = strings.after();
        boolean comma = terms.is(at, Sense.COMMA);
        at = comma ? at + 1 : at;
        at = terms.is(at, Sense.ON) ? at + 1 : at;
        at = terms.skipArticles(at);
        if (terms.is(at, Sense.OPEN) && terms.isBreak(at + 1)) {
            return new Found<>(List.of(NamedPlace.of(alone.get(0).string().getAsInt(), 0)), at + 1);
        }
        int from = at;
        return frets(from, false)
                .or(() -> figures(from))
                .map(found -> new Found<>(
                        found.value().stream()
                                .map(spot -> spot.or(alone.get(0)))
                                .toList(),
                        found.after()))
                .orElse(new Found<>(alone, strings.after()));
    }

    /** Bare numbers after a string, where nothing is counted by them. */
    private Optional<Found<List<NamedPlace>>> figures(int i) {
        return numbers(i)
                .filter(found -> terms.isBreak(found.after())
                        && found.value().stream().allMatch(spot -> spot.fret().orElse(0) <= 24));
    }

    private Optional<Found<List<NamedPlace>>> numbersAsSpots(Optional<Found<List<Integer>>> numbers) {
        return numbers.map(found ->
                new Found<>(found.value().stream().map(NamedPlace::atFret).toList(), found.after()));
    }

    private Optional<Found<List<Integer>>> plainNumbers(int i) {
        var first = terms.number(i);
        if (first.isEmpty()) {
            return Optional.empty();
        }
        var numbers = new ArrayList<>(List.of(first.get().value()));
        int after = first.get().after();
        while (true) {
            var separator = terms.separator(after);
            var next = separator.flatMap(found -> terms.number(terms.skipArticles(found.after())));
            if (next.isEmpty()
                    || terms.isAny(next.get().after(), Sense.LENGTH, Sense.MANNER, Sense.NOTE, Sense.DOTTED)) {
                return Optional.of(new Found<>(numbers, after));
            }
            numbers.add(next.get().value());
            after = next.get().after();
        }
    }

    private Optional<Found<List<NamedPlace>>> numbers(int i) {
        return numbersAsSpots(plainNumbers(i));
    }

    /** "Fret five", "frets 3, 5 and 7", "the fifth and second fret", "third to the fifth fret". */
    private Optional<Found<List<NamedPlace>>> frets(int i, boolean bare) {
        if (terms.is(i, Sense.FRET)) {
            return numbers(i + 1);
        }
        var ordinals = ordinals(i);
        if (ordinals.isEmpty()) {
            return numberedFret(i).or(() -> bare ? bareNumber(i) : Optional.empty());
        }
        int after = ordinals.get().after();
        if (terms.is(after, Sense.FRET)) {
            return numbersAsSpots(Optional.of(new Found<>(ordinals.get().value(), after + 1)));
        }
        boolean alone = ordinals.get().value().size() == 1 && endsFret(after);
        return bare && alone ? numbersAsSpots(ordinals) : Optional.empty();
    }

    /** "Fret" may come after the figure: "5 fret". */
    private Optional<Found<List<NamedPlace>>> numberedFret(int i) {
        return terms.number(i)
                .filter(found -> terms.is(found.after(), Sense.FRET)
                        && terms.number(found.after() + 1).isEmpty())
                .filter(found -> !terms.at(found.after()).raw().endsWith("s"))
                .map(found -> new Found<>(List.of(NamedPlace.atFret(found.value())), found.after() + 1));
    }

    private Optional<Found<List<NamedPlace>>> bareNumber(int i) {
        return terms.number(i)
                .filter(found -> endsFret(found.after()))
                .map(found -> new Found<>(List.of(NamedPlace.atFret(found.value())), found.after()));
    }

    private boolean endsFret(int i) {
        return terms.isBreak(i)
                || terms.isAny(i, Sense.ON, Sense.OF, Sense.IN, Sense.TO, Sense.EXACTLY, Sense.AGAIN, Sense.GLUE);
    }

    /** A bare fret after a technique: "hammer to the seventh". */
    Optional<Found<Chunk>> target(int i) {
        return row(terms.skipArticles(i), true);
    }

    private boolean leads(int from, int to) {
        return IntStream.range(from, to).anyMatch(i -> terms.is(i, Sense.TO));
    }

    private Optional<Found<List<Integer>>> ordinals(int i) {
        var numbers = new ArrayList<Integer>();
        var next = terms.ordinal(i);
        int after = i;
        while (next.isPresent()) {
            numbers.add(next.get().value());
            after = next.get().after();
            var separator = terms.separator(after);
            next = separator
                    .flatMap(found -> terms.ordinal(terms.skipArticles(found.after())))
                    .filter(found -> isOfFrets(found.after(), 0));
        }
        return numbers.isEmpty() ? Optional.empty() : Optional.of(new Found<>(numbers, after));
    }

    /** Whether the ordinals that go on here come to a fret in the end. */
    private boolean isOfFrets(int i, int depth) {
        if (terms.is(i, Sense.FRET)) {
            return true;
        }
        return depth < 6
                && terms.separator(i)
                        .flatMap(found -> terms.ordinal(terms.skipArticles(found.after())))
                        .filter(found -> isOfFrets(found.after(), depth + 1))
                        .isPresent();
    }

    /** What may follow a fret: "of the A string", "on the D", ", E string". */
    private Found<List<NamedPlace>> withString(Found<List<NamedPlace>> frets) {
        int at = frets.after();
        boolean tied = terms.isAny(at, Sense.OF, Sense.ON);
        boolean comma = terms.is(at, Sense.COMMA);
        int from = terms.skipArticles(tied || comma ? at + 1 : at);
        var string = numbered(from)
                .map(found -> new Found<>(found.value().get(0), found.after()))
                .or(() -> named(from, tied))
                .filter(found -> !(comma && startsPlace(found.after())));
        return string.map(found -> new Found<>(
                        frets.value().stream()
                                .map(spot -> spot.or(NamedPlace.onString(found.value())))
                                .toList(),
                        found.after()))
                .orElse(frets);
    }

    /** Whether a string that was just named has a fret of its own. */
    private boolean startsPlace(int i) {
        int at = terms.is(i, Sense.COMMA) ? i + 1 : i;
        return frets(terms.skipArticles(at), false).isPresent();
    }

    private Optional<Found<Integer>> named(int i, boolean tied) {
        return notes.name(i)
                .filter(found -> terms.is(found.after(), Sense.STRING)
                        || (tied && !terms.isAny(found.after(), Sense.MODE, Sense.NO_KEY)))
                .flatMap(found -> stringNamed(found.value(), found.after()));
    }

    private Optional<Found<Integer>> stringNamed(NoteName name, int after) {
        return tuning.numberOf(name)
                .map(number -> new Found<>(number, terms.is(after, Sense.STRING) ? after + 1 : after));
    }

    /** "On the third", where frets were spoken of before. */
    Optional<Found<Chunk>> bare(int i) {
        boolean frets = IntStream.range(0, i).anyMatch(at -> terms.is(at, Sense.FRET));
        boolean placed = terms.isAny(i - 1, Sense.ON) && terms.is(i, Sense.THE) && terms.is(i + 1, Sense.ORDINAL);
        return frets && placed && terms.isBreak(i + 2) ? row(i + 1, true) : Optional.empty();
    }

    /** "On the D" after a dead note or another thing that lies on a string. */
    Optional<Found<Chunk>> loose(int i) {
        if (!terms.isAny(i, Sense.ON, Sense.OF)) {
            return Optional.empty();
        }
        return named(terms.skipArticles(i + 1), true)
                .map(found -> new Found<>(
                        new Chunk.Places(List.of(NamedPlace.onString(found.value())), false), found.after()));
    }
}
