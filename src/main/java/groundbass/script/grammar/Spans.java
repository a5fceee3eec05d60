package groundbass.script.grammar;

import groundbass.score.Fraction;
import groundbass.script.lexicon.Category;
import groundbass.script.lexicon.SpokenWords;
import groundbass.script.lexicon.SpokenWords.Found;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Pattern;

/** Reads shares of bars and beats, how long things last, and how many beats a bar has. */
final class Spans {
    private static final Pattern ONE = Pattern.compile("(?i)a|one|eine?n?");

    private final SpokenWords tokens;

    Spans(SpokenWords tokens) {
        this.tokens = tokens;
    }

    /** "Half the bar", "the whole bar", "the second half". */
    Optional<Found<Constituent>> share(int i) {
        if (tokens.is(i, Category.HALF)) {
            int at = tokens.skip(i + 1, Category.OF, Category.THE);
            if (tokens.is(at, Category.BAR)) {
                return Optional.of(new Found<>(new Constituent.Lasting(Fraction.of(1, 2), true), at + 1));
            }
        }
        boolean halfABeat = tokens.is(i, Category.HALF)
                && ONE.matcher(tokens.at(i + 1).raw()).matches()
                && tokens.is(i + 2, Category.BEAT);
        if (halfABeat) { // "half a beat"
            return Optional.of(new Found<>(new Constituent.Lasting(Fraction.of(1, 2), false), i + 3));
        }
        boolean told =
                tokens.is(i - 1, Category.THE) && tokens.is(i - 2, Category.BE) && tokens.is(i - 3, Category.THAT);
        boolean subject = tokens.is(i - 1, Category.THE) && tokens.isAny(i + 2, Category.BE, Category.HAVE);
        boolean inside = tokens.is(tokens.is(i - 1, Category.THE) ? i - 2 : i - 1, Category.IN); // "im ganzen Takt"
        if ((told || subject || inside)
                && tokens.is(i, Category.WHOLE)
                && tokens.is(i + 1, Category.BAR)) { // "that's the whole bar"
            return Optional.of(new Found<>(new Constituent.BarAt(Constituent.BarAt.Way.THIS), i + 2));
        }
        if (tokens.is(i, Category.WHOLE) && tokens.is(i + 1, Category.BAR)) {
            return Optional.of(new Found<>(new Constituent.Lasting(Fraction.of(1, 1), true), i + 2));
        }
        var ordinal = tokens.ordinal(i).filter(found -> found.value() <= 2 && tokens.is(found.after(), Category.HALF));
        var ofBeat = ordinal.flatMap(found -> halfBeat(found.value(), found.after() + 1));
        if (ofBeat.isPresent()) {
            return ofBeat;
        }
        return ordinal.filter(found -> !tokens.isAny(found.after() + 1, Category.NOTE, Category.STEP))
                .map(found -> new Found<>(new Constituent.HalfBar(found.value()), found.after() + 1));
    }

    /** "The second half of beat three", "of that beat". */
    private Optional<Found<Constituent>> halfBeat(int nth, int i) {
        int at = tokens.skip(i, Category.OF, Category.THE, Category.THAT);
        if (at == i || !tokens.is(at, Category.BEAT)) {
            return Optional.empty();
        }
        var parts = List.of(nth == 1 ? 0 : 2);
        var number = tokens.number(at + 1).filter(found -> !tokens.isCounting(found.after()));
        return Optional.of(number.map(found -> new Found<Constituent>(
                        new Constituent.Parts(OptionalInt.of(found.value()), parts), found.after()))
                .orElseGet(() -> new Found<>(new Constituent.Parts(OptionalInt.empty(), parts), at + 1)));
    }

    /** "Four beats to the bar", "three beats in each measure", "count four to the bar". */
    Optional<Found<Constituent>> perBar(int i) {
        boolean counted = tokens.is(i - 1, Category.BEAT);
        return tokens.number(i)
                .map(found -> counted ? found : new Found<>(found.value(), found.after() + 1))
                .filter(found -> (counted || tokens.is(found.after() - 1, Category.BEAT))
                        && (tokens.isAny(found.after(), Category.TO, Category.PER)
                                || !counted && tokens.is(found.after(), Category.IN))
                        && tokens.isAny(found.after() + 1, Category.THE, Category.EACH, Category.BAR))
                .flatMap(found -> {
                    int at = tokens.skip(found.after() + 1, Category.THE, Category.EACH);
                    boolean bar =
                            tokens.is(at, Category.BAR) && tokens.number(at + 1).isEmpty();
                    return bar
                            ? Optional.of(new Found<>(new Constituent.BeatsInBar(found.value()), at + 1))
                            : Optional.empty();
                });
    }

    /** "For two beats", "a beat and a half" is not read. */
    Optional<Found<Constituent>> lasting(int i) {
        boolean some = tokens.isAny(i - 1, Category.ORDINAL, Category.LAST); // "the first two beats"
        boolean all = tokens.is(i, Category.ALL) && tokens.isAny(i - 1, Category.FOR, Category.WE, Category.HOLD);
        boolean one = tokens.is(i, Category.WHOLE)
                && tokens.is(i + 1, Category.BEAT)
                && ONE.matcher(tokens.at(i - 1).raw()).matches()
                && tokens.number(i + 2).isEmpty();
        if (one) { // "a full beat"
            return Optional.of(new Found<>(new Constituent.Lasting(Fraction.of(1, 1), false), i + 2));
        }
        return tokens.number(all ? i + 1 : i)
                .map(found -> new Found<>(found.value(), tokens.skip(found.after(), Category.WHOLE)))
                .filter(found -> !some
                        && tokens.is(found.after(), Category.BEAT)
                        && !tokens.isAny(found.after() + 1, Category.PER, Category.MINUTE)
                        && !tokens.is(found.after() + 2, Category.MINUTE))
                .map(found ->
                        new Found<>(new Constituent.Lasting(Fraction.of(found.value(), 1), false), found.after() + 1));
    }
}
