package groundbass.script.grammar;

import groundbass.script.lexicon.Category;
import groundbass.script.lexicon.SpokenWords;
import groundbass.script.lexicon.SpokenWords.Found;
import groundbass.theory.Degree;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/** Reads how far it is from one note to another: steps, intervals, octaves, moves on the neck, and the notes of a chord. */
final class Intervals {
    private static final Pattern ONE = Pattern.compile("(?i)a|eine?n?");

    private final SpokenWords tokens;
    private final Heads heads;

    Intervals(SpokenWords tokens, Heads heads) {
        this.tokens = tokens;
        this.heads = heads;
    }

    /** "Root, third, fifth". */
    Optional<Found<List<Constituent>>> degrees(int i) {
        if (!tokens.is(i, Category.ROOT)) {
            return Optional.empty();
        }
        var all = new ArrayList<Constituent>();
        all.add(new Constituent.ChordTone(1, Optional.of(Degree.parse("1"))));
        int after = i + 1;
        int at = tokens.skip(after, Category.COMMA, Category.AND, Category.THE, Category.THEN);
        while (tokens.isAny(at, Category.ORDINAL, Category.INTERVAL)) {
            all.add(new Constituent.ChordTone(
                    tokens.is(at, Category.INTERVAL)
                            ? tokens.at(at).number(Category.INTERVAL)
                            : tokens.at(at).number(Category.ORDINAL),
                    Optional.empty()));
            after = at + 1;
            at = tokens.skip(after, Category.COMMA, Category.AND, Category.THE, Category.THEN);
        }
        boolean ofChord = tokens.is(after, Category.OF)
                && tokens.is(tokens.skip(after + 1, Category.THE, Category.THAT), Category.CHORD);
        int end = ofChord ? tokens.skip(after + 1, Category.THE, Category.THAT) + 1 : after;
        return all.size() > 1 ? Optional.of(new Found<>(List.copyOf(all), end)) : Optional.empty();
    }

    Optional<Found<Constituent>> read(int i) {
        boolean half = tokens.is(i, Category.HALF);
        if ((half || tokens.is(i, Category.WHOLE)) && tokens.isAny(i + 1, Category.STEP, Category.NOTE)) {
            return unit(new Constituent.Interval(2, OptionalInt.of(half ? 1 : 2)), i + 2);
        }
        var steps = tokens.number(i).flatMap(found -> read(found.after())
                .filter(one -> one.value() instanceof Constituent.Interval step
                        && step.number() == 2
                        && step.semitones().isPresent())
                .map(one ->
                        new Found<Constituent>(steps(found.value(), (Constituent.Interval) one.value()), one.after())));
        if (steps.isPresent()) { // "three half steps"
            return steps;
        }
        boolean noun = tokens.is(i - 1, Category.THE)
                && tokens.isAny(
                        i + 1, Category.FROM, Category.OF, Category.TO, Category.BETWEEN, Category.UP, Category.DOWN);
        noun &= !(tokens.is(i + 1, Category.SEPARABLE) && tokens.isEnd(i + 2)); // "macht einen Ganzton aus"
        boolean step = tokens.is(i, Category.STEP) && !tokens.is(i, Category.NOTE);
        if (step && noun && !tokens.is(i - 1, Category.LETTER)) { // "the step from G to C"
            return unit(new Constituent.Small(Constituent.Tie.PLAY), i + 1);
        }
        if (step || tokens.is(i, Category.SEMITONE)) {
            return unit(new Constituent.Interval(2, OptionalInt.of(tokens.is(i, Category.STEP) ? 2 : 1)), i + 1);
        }
        if (tokens.is(i, Category.TRITONE)) {
            return unit(new Constituent.Interval(5, OptionalInt.of(6)), i + 1);
        }
        if (tokens.is(i, Category.ROOT)) {
            return unit(new Constituent.ChordTone(1, Optional.of(Degree.parse("1"))), i + 1);
        }
        var octaves = tokens.number(i).filter(found -> tokens.is(found.after(), Category.OCTAVE));
        if (octaves.isPresent()) {
            return unit(
                    new Constituent.Octaves(octaves.get().value()),
                    octaves.get().after() + 1);
        }
        return tokens.is(i, Category.OCTAVE) ? unit(new Constituent.Octaves(1), i + 1) : sized(i).or(() -> move(i));
    }

    /** "Up", "nach oben". */
    private boolean isWay(int i) {
        return tokens.isAny(i, Category.UP, Category.DOWN)
                || tokens.is(i, Category.TO) && tokens.isAny(i + 1, Category.UPWARD, Category.DOWNWARD);
    }

    private static Constituent steps(int many, Constituent.Interval step) {
        return new Constituent.Interval(
                many + 1, OptionalInt.of(many * step.semitones().getAsInt()));
    }

    private Optional<Found<Constituent>> move(int i) {
        boolean one = tokens.isAny(i, Category.FRET, Category.STRING)
                && ONE.matcher(tokens.at(i - 1).raw()).matches()
                && tokens.isAny(i + 1, Category.UP, Category.DOWN);
        if (one) { // "a string higher"
            return unit(new Constituent.Move(1, tokens.is(i, Category.STRING)), i + 1);
        }
        return tokens.number(i)
                .filter(found ->
                        tokens.isAny(found.after(), Category.FRET, Category.STRING) && isWay(found.after() + 1))
                .map(found -> new Found<>(
                        new Constituent.Move(found.value(), tokens.is(found.after(), Category.STRING)),
                        found.after() + 1));
    }

    /** "A fourth", "the third of the chord", "minor third"; "the third fret" was read before. */
    private Optional<Found<Constituent>> sized(int i) {
        boolean major = tokens.isAny(i, Category.MAJOR_SIZE)
                || tokens.is(i, Category.MODE)
                        && tokens.at(i).value(Category.MODE).equals("MAJOR");
        boolean minor = tokens.isAny(i, Category.MINOR_SIZE)
                || tokens.is(i, Category.MODE)
                        && tokens.at(i).value(Category.MODE).equals("MINOR");
        boolean perfect = tokens.is(i, Category.PERFECT);
        int at = major || minor || perfect ? i + 1 : i;
        var number = tokens.is(at, Category.INTERVAL)
                ? Optional.of(tokens.at(at).number(Category.INTERVAL))
                : tokens.ordinal(at).map(Found::value);
        if (number.isEmpty() || number.get() < 2 || number.get() > 7) {
            return Optional.empty();
        }
        var semitones = semitones(number.get(), major, minor);
        int after = at + 1;
        boolean ofChord =
                tokens.is(tokens.skip(after, Category.OF, Category.FROM, Category.THE, Category.THAT), Category.CHORD)
                        || tokens.is(after, Category.OF) && isChord(after + 1);
        if (ofChord || isDegree(at) || !(major || minor || perfect) && isDefinite(at)) {
            int degree = number.get();
            boolean exact = major || minor;
            return unit(
                    new Constituent.ChordTone(
                            degree, exact ? Optional.of(Degree.parse((minor ? "b" : "") + degree)) : Optional.empty()),
                    after);
        }
        boolean article = List.of("a", "an").contains(tokens.at(at - 1).raw());
        boolean sure = major || minor || perfect || tokens.is(at, Category.INTERVAL) || article;
        boolean noun = tokens.isAny(
                after,
                Category.FRET,
                Category.NOTE,
                Category.NEUTRAL,
                Category.MANNER,
                Category.LENGTH,
                Category.FINGERS);
        return sure && !noun ? unit(new Constituent.Interval(number.get(), semitones), after) : Optional.empty();
    }

    /** "Of the A seven": its A is no article. */
    private boolean isChord(int i) {
        int at = i;
        while (tokens.isAny(at, Category.THE, Category.CHORD) && heads.read(at).isEmpty()) {
            at++;
        }
        return heads.read(at).isPresent();
    }

    /** "Over this chord the E is the third", "F is the root, A the third". */
    private boolean isDegree(int i) {
        boolean harmony =
                IntStream.range(0, tokens.size()).anyMatch(at -> tokens.isAny(at, Category.CHORD, Category.ROOT));
        return harmony
                && tokens.is(i, Category.ORDINAL)
                && tokens.is(i - 1, Category.THE)
                && tokens.is(i - 2, Category.BE)
                && (tokens.isEnd(i + 1) || tokens.is(i + 1, Category.AND));
    }

    /** "Das ist die Quinte", "die Quinte" as an answer: of the chord; a step between notes would be "eine". */
    private boolean isDefinite(int i) {
        boolean definite = tokens.is(i, Category.INTERVAL)
                && tokens.at(i - 1).raw().toLowerCase(Locale.ROOT).matches("d(ie|er)");
        boolean whole = tokens.isEnd(i + 1) && (i == 1 || tokens.is(i - 2, Category.BE));
        return definite && whole;
    }

    private static OptionalInt semitones(int number, boolean major, boolean minor) {
        return switch (number) {
            case 4 -> OptionalInt.of(5);
            case 5 -> OptionalInt.of(7);
            default ->
                major || minor
                        ? OptionalInt.of(
                                Degree.parse((minor ? "b" : "") + number).semitones())
                        : OptionalInt.empty();
        };
    }

    private static Optional<Found<Constituent>> unit(Constituent unit, int after) {
        return Optional.of(new Found<>(unit, after));
    }
}
