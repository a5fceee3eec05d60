package groundbass.script.grammar;

import groundbass.score.Fraction;
import groundbass.script.claims.Manner;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.lexicon.Category;
import groundbass.script.lexicon.SpokenWords;
import groundbass.script.lexicon.SpokenWords.Found;
import groundbass.script.words.Word;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/** Cuts a sentence into units; every word belongs to one, is a mere filler, or is unknown. */
final class ConstituentReader {
    /** Words that say nothing of what the check is about. */
    private static final Category[] IDLE = {
        Category.FILLER,
        Category.DO,
        Category.MORE,
        Category.THE,
        Category.OF_PLAYING,
        Category.PER,
        Category.WHOLE,
        Category.TIME,
        Category.RUN,
        Category.WAY,
        Category.LINE,
        Category.THING
    };

    private static final Pattern INDEFINITE = Pattern.compile("(?i)an|ein(e[nmrs]?)?");

    private static final Pattern INDEFINITE_ARTICLE = Pattern.compile("(?i)a|an|one|ein(e[nmrs]?)?");

    private final SpokenWords tokens;
    private final List<String> title;
    private final Names names;
    private final Moments moments;
    private final Places places;
    private final Heads heads;
    private final Intervals intervals;
    private final Strangers strangers;
    private final Idioms idioms;
    private final List<Read> units = new ArrayList<>();

    private ConstituentReader(SpokenWords tokens, List<String> title) {
        this.tokens = tokens;
        this.title = title;
        this.names = new Names(tokens);
        this.moments = new Moments(tokens);
        this.places = new Places(tokens, names);
        this.heads = new Heads(tokens, names);
        this.intervals = new Intervals(tokens, heads);
        this.strangers = new Strangers(tokens);
        this.idioms = new Idioms(tokens, strangers, at -> intervals.read(at).isPresent());
    }

    static List<Read> units(List<Word> sentence, TalkHearing hearing) {
        var tokens = new SpokenWords(hearing.vocabulary().tokens(sentence), hearing.lowered());
        var scanner = new ConstituentReader(tokens, hearing.title());
        int i = 0;
        while (i < scanner.tokens.size()) {
            i = scanner.take(i);
        }
        return Topics.plain(Phrases.plain(Asides.without(Reckoning.without(Corrections.made(scanner.units)))));
    }

    private int take(int i) {
        if (strangers.isIdle(i) || isOrdered(i) || isOfKind(i) || isPossessive(i)) {
            return i + 1;
        }
        int aloud = idioms.aloud(i);
        if (aloud > i) {
            return aloud;
        }
        boolean again =
                tokens.is(i, Category.NUMBER) && tokens.is(i + 1, Category.MORE) && tokens.is(i + 2, Category.TIME);
        if (again) { // "one more time"
            return i + 1;
        }
        var found = titled(i).or(() -> moments.read(i)).or(() -> heads.read(i)).or(() -> line(i));
        if (found.isPresent()) {
            return add(i, List.of(found.get().value()), found.get().after());
        }
        var degrees = intervals.degrees(i);
        if (degrees.isPresent()) {
            return add(i, degrees.get().value(), degrees.get().after());
        }
        var place = places.read(i);
        if (place.isPresent()) {
            return add(i, place.get().value(), place.get().after());
        }
        return one(i).map(unit -> add(i, List.of(unit.value()), unit.after())).orElseGet(() -> rest(i));
    }

    /** "A minim first, and then": that something comes first was not said of one of several. */
    private boolean isOrdered(int i) {
        boolean first = tokens.is(i, Category.ORDINAL) && tokens.at(i).number(Category.ORDINAL) == 1;
        boolean last = tokens.isAny(
                        i - 1,
                        Category.NOTE,
                        Category.LENGTH,
                        Category.LETTER,
                        Category.SIGN,
                        Category.MANNER,
                        Category.DEAD,
                        Category.REST,
                        Category.STRING)
                && (tokens.isEnd(i + 1) || tokens.isAny(i + 1, Category.AND, Category.THEN));
        boolean ahead = tokens.is(i + 1, Category.LETTER) // "you have first D, then E"
                && tokens.isAny(i - 1, Category.COMMA, Category.HAVE, Category.PLAY, Category.BE, Category.WE);
        int thing = tokens.skip(i + 1, Category.THE, Category.LOW, Category.HIGH);
        boolean row = tokens.is(i + 1, Category.THE) // "first the G, and then the A"
                && tokens.isAny(thing, Category.LETTER, Category.OPEN, Category.DEAD)
                && tokens.isAny(i - 1, Category.COMMA, Category.COLON, Category.HAVE, Category.PLAY, Category.BE)
                && IntStream.range(thing, tokens.size()).anyMatch(at -> tokens.is(at, Category.THEN));
        return first && (last || ahead || row);
    }

    /** "Bar three's last note is ...": of it, and nothing that it is. */
    private boolean isPossessive(int i) {
        boolean mark = tokens.at(i).raw().matches("['’]s");
        boolean owner = tokens.is(i - 1, Category.NUMBER) && tokens.isAny(i - 2, Category.BAR, Category.BEAT)
                || tokens.isAny(i - 1, Category.BAR, Category.LINE, Category.STRING);
        int verb = i + 1;
        while (verb < tokens.size() && !tokens.isEnd(verb) && !isFinite(verb)) {
            verb++;
        }
        boolean owned = tokens.isAny(
                        i + 1,
                        Category.ORDINAL,
                        Category.LAST,
                        Category.HIGHEST,
                        Category.LOWEST,
                        Category.START,
                        Category.END,
                        Category.NOTE,
                        Category.CHORD,
                        Category.REST,
                        Category.DEAD,
                        Category.OPEN)
                || tokens.is(i + 1, Category.LETTER) && tokens.at(i + 1).isCapital();
        return mark && owner && owned && verb > i + 1 && isFinite(verb);
    }

    private boolean isFinite(int i) {
        return tokens.isAny(i, Category.BE, Category.PLAY, Category.HAVE, Category.HOLD);
    }

    /** "Such dead notes": those that were spoken of, and no others. */
    private boolean isOfKind(int i) {
        boolean listed = tokens.is(i, Category.GROUP)
                && tokens.isAny(i + 1, Category.COMMA, Category.COLON); // "a pair, B and D"
        return listed
                || tokens.is(i, Category.SUCH)
                        && tokens.isAny(
                                i + 1,
                                Category.DEAD,
                                Category.MANNER,
                                Category.REST,
                                Category.LENGTH,
                                Category.DOTTED,
                                Category.TUPLET);
    }

    private int add(int i, List<Constituent> found, int after) {
        for (var unit : found) {
            units.add(new Read(unit, tokens.at(i).from(), tokens.at(after - 1).to()));
        }
        return after;
    }

    /** A word alone: a tie, a filler, or unknown. */
    private int rest(int i) {
        var idiom = idioms.read(i);
        if (idiom.isPresent()) {
            return add(i, idiom.get().value(), idiom.get().after());
        }
        var tie = isDefinite(i) ? Optional.of(Tie.THE) : Ties.of(tokens.at(i));
        if (tie.isPresent()) {
            return add(i, List.of(new Constituent.Small(tie.get())), i + 1);
        }
        if (tokens.isAny(i, IDLE)) {
            return i + 1;
        }
        var unit = strangers.isVerb(i) ? new Constituent.Small(Tie.PLAY) : unknown(i);
        return add(i, List.of(unit), i + 1);
    }

    private Constituent unknown(int i) {
        return new Constituent.Unknown(tokens.at(i).raw().equals(":"));
    }

    private boolean isDefinite(int i) {
        var token = tokens.at(i);
        boolean article = token.isAny(Category.THAT, Category.THEY)
                && !tokens.isAny(i + 1, Category.BE, Category.PLAY, Category.HAVE, Category.HOLD, Category.START);
        boolean other = !token.isAny(Category.THAT, Category.THEY, Category.LETTER, Category.NUMBER)
                && !INDEFINITE.matcher(token.raw()).matches();
        return token.is(Category.THE) && (article || other);
    }

    private Optional<Found<Constituent>> one(int i) {
        return length(i)
                .or(() -> intervals.read(i))
                .or(() -> manner(i))
                .or(() -> rank(i))
                .or(() -> quiet(i))
                .or(() -> name(i))
                .or(() -> amount(i));
    }

    /** By its name the line is meant. */
    private Optional<Found<Constituent>> titled(int i) {
        boolean here = !title.isEmpty()
                && IntStream.range(0, title.size())
                        .allMatch(at ->
                                tokens.at(i + at).raw().toLowerCase(Locale.ROOT).equals(title.get(at)));
        return here ? unit(new Constituent.Whole(), i + title.size()) : Optional.empty();
    }

    private Optional<Found<Constituent>> line(int i) {
        boolean whole = tokens.is(i, Category.WHOLE) && tokens.isAny(i + 1, Category.LINE, Category.THING);
        if (whole) {
            return unit(new Constituent.Whole(), i + 2);
        }
        boolean through =
                tokens.is(i, Category.START) && tokens.is(i + 1, Category.TO) && tokens.is(i + 2, Category.END);
        if (through) { // "from start to finish"
            return unit(new Constituent.Whole(), i + 3);
        }
        boolean noun = tokens.at(i).isCapital() || tokens.isLowered() && !tokens.is(i + 1, Category.NOTE);
        boolean german = tokens.is(i, Category.THING)
                && noun
                && tokens.is(i - 1, Category.THE)
                && !INDEFINITE.matcher(tokens.at(i - 1).raw()).matches();
        boolean piece = tokens.is(i, Category.LINE) && tokens.is(i - 1, Category.NUMBER); // "vier Stück"
        if (piece) {
            return Optional.empty();
        }
        return tokens.is(i, Category.LINE) || german ? unit(new Constituent.Whole(), i + 1) : Optional.empty();
    }

    private static Optional<Found<Constituent>> unit(Constituent unit, int after) {
        return Optional.of(new Found<>(unit, after));
    }

    private Optional<Found<Constituent>> length(int i) {
        boolean dotted = tokens.is(i, Category.DOTTED);
        int at = dotted ? i + 1 : i;
        var value = value(at);
        if (value.isEmpty()) {
            return tokens.is(i, Category.TUPLET) ? unit(new Constituent.Triplet(), i + 1) : Optional.empty();
        }
        int after = value.get().after();
        if (tokens.is(after, Category.TUPLET)) {
            return unit(new Constituent.Triplet(), after + 1);
        }
        var length = dotted
                ? value.get().value().times(Fraction.of(3, 2))
                : value.get().value();
        return tokens.is(after, Category.REST)
                ? unit(new Constituent.Silence(Optional.of(length)), after + 1)
                : unit(new Constituent.Value(length), tokens.is(after, Category.NOTE) ? after + 1 : after);
    }

    private Optional<Found<Fraction>> value(int i) {
        boolean half = tokens.isAny(i + 1, Category.NOTE, Category.REST) && !tokens.is(i + 1, Category.STEP)
                || tokens.is(i - 1, Category.DOTTED);
        if (tokens.is(i, Category.HALF) && half) {
            return Optional.of(new Found<>(Fraction.of(1, 2), i + 1));
        }
        boolean whole = tokens.is(i, Category.WHOLE)
                && tokens.is(i + 1, Category.NOTE)
                && !tokens.is(i + 1, Category.STEP); // "a whole tone"
        if (whole) {
            return Optional.of(new Found<>(Fraction.of(1, 1), i + 1));
        }
        boolean ordinal = tokens.is(i, Category.ORDINAL)
                && (tokens.is(i - 1, Category.ON) || tokens.is(i - 1, Category.TO))
                && !tokens.is(i - 1, Category.AND);
        boolean figure = tokens.at(i).raw().matches("\\d+th")
                && !tokens.isAny(i + 1, Category.NOTE, Category.REST, Category.TUPLET); // "the 4th"
        return tokens.is(i, Category.LENGTH) && !ordinal && !figure && !tokens.is(i, Category.WHOLE)
                ? Optional.of(new Found<>(Fraction.of(1, tokens.at(i).number(Category.LENGTH)), i + 1))
                : Optional.empty();
    }

    private Optional<Found<Constituent>> manner(int i) {
        boolean idiom = tokens.is(i, Category.DEAD) && strangers.isStrange(i + 1); // "a dead ringer"
        if (tokens.is(i, Category.DEAD) && !idiom) {
            return unit(new Constituent.Dead(), tokens.is(i + 1, Category.NOTE) ? i + 2 : i + 1);
        }
        boolean way = tokens.isAny(i, Category.UP, Category.DOWN) && tokens.is(i + 1, Category.STROKE);
        if (way) { // "with an up stroke"
            return unit(new Constituent.Played(tokens.is(i, Category.UP) ? Manner.UPSTROKE : Manner.DOWNSTROKE), i + 2);
        }
        if (tokens.is(i, Category.PLECTRUM)) {
            boolean noun = tokens.isAny(i - 1, Category.WITH, Category.THE, Category.NO);
            return noun ? unit(new Constituent.Played(Manner.PICK), i + 1) : Optional.empty();
        }
        if (!tokens.is(i, Category.MANNER)) {
            return Optional.empty();
        }
        var manner = Manner.valueOf(tokens.at(i).value(Category.MANNER));
        int after = i + 1;
        boolean particle = tokens.is(after, Category.OF_PLAYING)
                && (manner == Manner.HAMMER || manner == Manner.PULL || manner == Manner.SLIDE);
        return unit(new Constituent.Played(manner), particle ? after + 1 : after);
    }

    /** "The first note", "the last two", "the highest", "the middle one". */
    private Optional<Found<Constituent>> rank(int i) {
        if (tokens.is(i, Category.FINAL_NOTE)) {
            return unit(new Constituent.Rank(Constituent.Rank.Which.LAST, 1), i + 1);
        }
        if (tokens.is(i, Category.HIGHEST)) {
            return unit(new Constituent.Rank(Constituent.Rank.Which.HIGHEST, 1), i + 1);
        }
        if (tokens.is(i, Category.LOWEST) && tokens.is(i + 1, Category.STRING)) {
            return unit(unknown(i), i + 2); // which one that is, depends on the bass
        }
        if (tokens.is(i, Category.LOWEST)) {
            return unit(new Constituent.Rank(Constituent.Rank.Which.LOWEST, 1), i + 1);
        }
        if (tokens.is(i, Category.MIDDLE)) {
            return unit(new Constituent.Rank(Constituent.Rank.Which.MIDDLE, 1), i + 1);
        }
        if (tokens.is(i, Category.LAST)) {
            return unit(new Constituent.Rank(Constituent.Rank.Which.LAST, 1), i + 1);
        }
        if (tokens.is(i, Category.NEXT)) {
            return unit(new Constituent.Rank(Constituent.Rank.Which.NEXT, 1), i + 1);
        }
        return tokens.ordinal(i)
                .map(found ->
                        new Found<>(new Constituent.Rank(Constituent.Rank.Which.NTH, found.value()), found.after()));
    }

    private Optional<Found<Constituent>> quiet(int i) {
        boolean denial = tokens.is(i, Category.SILENT) && tokens.isAny(i + 1, Category.SHORT, Category.DEAD);
        if (denial) { // "nothing short about it"
            return unit(new Constituent.Small(Tie.NOT), i + 1);
        }
        boolean limit = tokens.is(i, Category.SILENT) && tokens.is(i + 1, Category.MORE);
        if (limit) {
            return Optional.empty();
        }
        boolean compared = tokens.is(i, Category.SILENT)
                && !tokens.isEnd(i + 1)
                && (!tokens.at(i + 1).isKnown() || tokens.is(i + 1, Category.UNREAD));
        if (tokens.isAny(i, Category.REST, Category.SILENT) && !tokens.is(i, Category.OPEN) && !compared) {
            return unit(new Constituent.Silence(Optional.empty()), i + 1);
        }
        boolean empty = tokens.is(i, Category.SILENT) && tokens.isEnd(i + 1);
        if (empty) {
            return unit(new Constituent.Silence(Optional.empty()), i + 1);
        }
        if (tokens.is(i, Category.SHORT)) {
            return unit(new Constituent.Short(), i + 1);
        }
        return tokens.isAny(i, Category.SWUNG) ? unit(new Constituent.FeelNamed(true), i + 1) : Optional.empty();
    }

    private Optional<Found<Constituent>> name(int i) {
        boolean part = tokens.is(i, Category.LETTER)
                && strangers.isStrange(i + 1)
                && tokens.at(i + 1).isCapital();
        if (part) { // "A-Bluestonleiter"
            return unit(unknown(i), i + 1);
        }
        return names.name(i).map(found -> new Found<>(new Constituent.Name(found.value()), found.after()));
    }

    private Optional<Found<Constituent>> amount(int i) {
        if (tokens.is(i, Category.TIMES) && tokens.is(i - 1, Category.AGAIN)) {
            return unit(new Constituent.Small(Tie.AGAIN), i + 1); // "noch einmal"
        }
        boolean once = tokens.is(i, Category.TIMES) && tokens.is(i - 1, Category.WE) && !tokens.isEnd(i + 1);
        if (once && tokens.at(i).raw().equals("once")) { // "I once heard"
            return unit(new Constituent.Small(Tie.MAYBE), i + 1);
        }
        if (tokens.is(i, Category.TIMES)) {
            return unit(new Constituent.Times(tokens.at(i).number(Category.TIMES)), i + 1);
        }
        var number = tokens.number(i);
        var times =
                number.filter(found -> tokens.at(found.after()).raw().equals("mal") && found.value() > 1); // "3 mal"
        if (times.isPresent()) {
            return unit(new Constituent.Times(times.get().value()), times.get().after() + 1);
        }
        boolean single = tokens.is(i, Category.SINGLE)
                && tokens.isAny(i + 1, Category.NOTE, Category.REST)
                && INDEFINITE_ARTICLE.matcher(tokens.at(i - 1).raw()).matches();
        if (single) { // "einen einzigen Ton"
            return unit(new Constituent.Count(1), i + 1);
        }
        if (number.isEmpty()) {
            return Optional.empty();
        }
        int after = number.get().after();
        if (tokens.is(after, Category.TIME)) {
            return unit(new Constituent.Times(number.get().value()), after + 1);
        }
        int adjective = tokens.skip(after, Category.FILLER, Category.SHORT);
        boolean unknown =
                adjective < tokens.size() && !tokens.at(adjective).isKnown() && !tokens.isPluralName(adjective);
        int noun = unknown ? adjective + 1 : adjective;
        boolean counts = tokens.isAny(
                        noun,
                        Category.NOTE,
                        Category.LENGTH,
                        Category.MANNER,
                        Category.REST,
                        Category.DEAD,
                        Category.TUPLET,
                        Category.DOTTED,
                        Category.OPEN)
                || tokens.isPluralName(noun)
                || tokens.is(after, Category.OF)
                || tokens.is(noun, Category.HALF);
        boolean pronoun = tokens.is(i, Category.NEUTRAL)
                && (tokens.isAny(i - 1, Category.ORDINAL, Category.LAST, Category.MIDDLE, Category.THAT, Category.EACH)
                        || tokens.isAny(
                                i - 1,
                                Category.THE,
                                Category.OPEN,
                                Category.DEAD,
                                Category.MANNER,
                                Category.SHORT,
                                Category.LONG,
                                Category.OTHERS));
        boolean ranked = tokens.is(i, Category.NEUTRAL)
                && tokens.isAny(i - 1, Category.ORDINAL, Category.LAST, Category.MIDDLE, Category.NEXT);
        if (ranked || pronoun && !counts) {
            return unit(new Constituent.Small(Tie.ONE), after);
        }
        return unit(
                counts
                        ? new Constituent.Count(number.get().value())
                        : new Constituent.Number(number.get().value()),
                after);
    }
}
