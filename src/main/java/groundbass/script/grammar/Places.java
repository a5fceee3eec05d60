package groundbass.script.grammar;

import groundbass.script.lexicon.Category;
import groundbass.script.lexicon.SpokenWords;
import groundbass.script.lexicon.SpokenWords.Found;
import groundbass.theory.NoteName;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/** Reads strings and frets; several frets in a row share the string that is said with them. */
final class Places {
    private static final int MOST_FRETS = 36;

    private static final Pattern SINGULAR = Pattern.compile("(?i)fret|bund");

    private final SpokenWords tokens;
    private final Names names;

    Places(SpokenWords tokens, Names names) {
        this.tokens = tokens;
        this.names = names;
    }

    private record Strung(Optional<NoteName> name, OptionalInt number) {}

    Optional<Found<List<Constituent>>> read(int i) {
        return open(i).or(() -> fretted(i)).or(() -> strings(i)).or(() -> stringFirst(i));
    }

    private Optional<Found<List<Constituent>>> open(int i) {
        if (!tokens.is(i, Category.OPEN)) {
            return Optional.empty();
        }
        int at = tokens.skip(i + 1, Category.LOW, Category.HIGH);
        var name = names.name(at);
        if (name.isPresent()) {
            int after = name.get().after();
            Constituent place =
                    new Constituent.Place(Optional.of(name.get().value()), OptionalInt.empty(), OptionalInt.of(0));
            return Optional.of(new Found<>(List.of(place), tokens.is(after, Category.STRING) ? after + 1 : after));
        }
        int after = tokens.is(at, Category.STRING) ? at + 1 : i + 1;
        return Optional.of(new Found<>(List.of(new Constituent.Open()), after));
    }

    /** "The D and G strings". */
    private Optional<Found<List<Constituent>>> strings(int i) {
        var all = new ArrayList<Constituent>();
        int after = i;
        var name = names.name(i);
        while (name.isPresent()) {
            all.add(new Constituent.Place(Optional.of(name.get().value()), OptionalInt.empty(), OptionalInt.empty()));
            after = name.get().after();
            int at = tokens.skip(after, Category.COMMA, Category.AND);
            name = at > after ? names.name(at) : Optional.empty();
        }
        boolean several = all.size() > 1
                && tokens.is(after, Category.STRING)
                && tokens.at(after).raw().matches(".*(s|en)");
        return several ? Optional.of(new Found<>(all, after + 1)) : Optional.empty();
    }

    private Optional<Found<List<Constituent>>> stringFirst(int i) {
        var string = string(i);
        if (string.isEmpty()) {
            return Optional.empty();
        }
        int after = string.get().after();
        int at = tokens.skip(after, Category.COMMA, Category.AT, Category.THE, Category.ON, Category.IN);
        boolean told = tokens.is(at, Category.FRET) && tokens.isAny(at + 1, Category.FILLER, Category.BE);
        var frets = (told ? Optional.<Found<List<Integer>>>empty() : frets(at)).filter(found -> string(
                        tokens.skip(found.after(), Category.OF, Category.ON, Category.THE, Category.LOW, Category.HIGH))
                .isEmpty());
        return Optional.of(
                frets.map(found -> new Found<>(units(found.value(), string.get().value()), found.after()))
                        .orElseGet(() -> new Found<>(
                                List.of(new Constituent.Place(
                                        string.get().value().name(),
                                        string.get().value().number(),
                                        OptionalInt.empty())),
                                after)));
    }

    private Optional<Found<List<Constituent>>> fretted(int i) {
        return frets(i).map(found -> {
            int at = tokens.skip(
                    found.after(),
                    Category.COMMA,
                    Category.OF,
                    Category.FROM,
                    Category.ON,
                    Category.IN,
                    Category.AT,
                    Category.THE,
                    Category.LOW,
                    Category.HIGH);
            var string = stringOf(at, found.after());
            return string.map(there -> new Found<>(units(found.value(), there.value()), there.after()))
                    .orElseGet(() -> new Found<>(
                            units(found.value(), new Strung(Optional.empty(), OptionalInt.empty())), found.after()));
        });
    }

    private static List<Constituent> units(List<Integer> frets, Strung string) {
        return frets.stream()
                .<Constituent>map(fret -> new Constituent.Place(string.name(), string.number(), OptionalInt.of(fret)))
                .toList();
    }

    /** "The third fret of the A": what a fret is of, is a string. */
    private Optional<Found<Strung>> stringOf(int i, int fretsEnd) {
        boolean of = IntStream.range(fretsEnd, i).anyMatch(at -> tokens.isAny(at, Category.OF, Category.ON));
        var said = string(i);
        boolean article = tokens.is(i - 1, Category.THE) && tokens.is(i - 1, Category.LETTER) && i - 1 > fretsEnd;
        return said.isPresent() || !of
                ? said
                : names.letter(i)
                        .or(() -> article ? names.letter(i - 1) : Optional.empty())
                        .map(found -> new Found<>(
                                new Strung(Optional.of(found.value()), OptionalInt.empty()), found.after()));
    }

    private Optional<Found<Strung>> string(int i) {
        int at = tokens.skip(i, Category.LOW, Category.HIGH);
        if (tokens.is(at, Category.HIGHEST) && tokens.is(at + 1, Category.STRING)) {
            return Optional.of(new Found<>(new Strung(Optional.empty(), OptionalInt.of(1)), at + 2));
        }
        var name = names.name(at).filter(found -> tokens.is(found.after(), Category.STRING));
        if (name.isPresent()) {
            return name.map(found ->
                    new Found<>(new Strung(Optional.of(found.value()), OptionalInt.empty()), found.after() + 1));
        }
        return tokens.ordinal(at)
                .filter(found -> tokens.is(found.after(), Category.STRING))
                .map(found ->
                        new Found<>(new Strung(Optional.empty(), OptionalInt.of(found.value())), found.after() + 1));
    }

    /** "The third fret", "fret three", "frets two, four and five", "fifth and seventh on the A string". */
    private Optional<Found<List<Integer>>> frets(int i) {
        if (tokens.is(i, Category.FRET)) {
            int on = tokens.skip(i + 1, Category.ON, Category.OF, Category.THE);
            var string = on > i + 1 ? string(on) : Optional.<Found<Strung>>empty();
            int verb = tokens.skip(string.map(Found::after).orElse(i + 1), Category.FILLER);
            int at = tokens.is(verb, Category.BE)
                    ? verb + 1
                    : string.map(Found::after).orElse(i + 1);
            return row(at).filter(found -> isFrets(found.value()));
        }
        boolean figure = tokens.at(i).raw().matches("\\d{1,2}")
                && tokens.is(i + 1, Category.FRET)
                && !tokens.isAny(i + 2, Category.UP, Category.DOWN)
                && SINGULAR.matcher(tokens.at(i + 1).raw()).matches();
        if (figure && tokens.at(i).number(Category.NUMBER) <= MOST_FRETS) { // "im 7. Bund", as it is typed
            return Optional.of(new Found<>(List.of(tokens.at(i).number(Category.NUMBER)), i + 2));
        }
        var ordinals = ordinals(i);
        if (ordinals.isEmpty() || !isFrets(ordinals.get().value())) {
            return Optional.empty();
        }
        int after = ordinals.get().after();
        if (tokens.is(after, Category.FRET)) {
            return Optional.of(new Found<>(ordinals.get().value(), after + 1));
        }
        int at = tokens.skip(after, Category.ON, Category.OF, Category.THE, Category.LOW, Category.HIGH);
        return at > after && string(at).isPresent() ? ordinals : Optional.empty();
    }

    private static boolean isFrets(List<Integer> numbers) {
        return numbers.stream().allMatch(number -> number <= MOST_FRETS);
    }

    private Optional<Found<List<Integer>>> row(int i) {
        return list(i, true);
    }

    private Optional<Found<List<Integer>>> ordinals(int i) {
        return list(i, false);
    }

    private Optional<Found<List<Integer>>> list(int i, boolean numbers) {
        var all = new ArrayList<Integer>();
        int after = i;
        var next = one(i, numbers);
        while (next.isPresent()) {
            all.add(next.get().value());
            after = next.get().after();
            int at = tokens.skip(
                    after, Category.COMMA, Category.AND, Category.TO, Category.THE, Category.UP, Category.DOWN);
            at = tokens.is(after, Category.IN) && tokens.is(after + 1, Category.THE) ? after + 2 : at;
            next = at > after || numbers && tokens.isLowered() ? one(at, numbers) : Optional.empty();
        }
        return all.isEmpty() ? Optional.empty() : Optional.of(new Found<>(all, after));
    }

    private Optional<Found<Integer>> one(int i, boolean numbers) {
        return numbers ? tokens.number(i) : tokens.ordinal(i);
    }
}
