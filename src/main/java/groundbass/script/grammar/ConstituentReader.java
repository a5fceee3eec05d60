package groundbass.script.grammar;

import groundbass.score.Fraction;
import groundbass.script.claims.Manner;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.grammar.SpokenWords.Found;
import groundbass.script.words.Word;
import groundbass.theory.Degree;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/** Cuts a sentence into units; every word belongs to one, is a mere filler, or is unknown. */
final class ConstituentReader {
    /** Words that are units by themselves, in the order in which they are tried. */
    private static final Map<Category, Tie> TIES = Map.ofEntries(
            Map.entry(Category.MAYBE, Tie.MAYBE),
            Map.entry(Category.LET, Tie.MAYBE),
            Map.entry(Category.SORRY, Tie.SORRY),
            Map.entry(Category.YES, Tie.YES),
            Map.entry(Category.BE, Tie.BE),
            Map.entry(Category.HAVE, Tie.HAVE),
            Map.entry(Category.START, Tie.START),
            Map.entry(Category.END, Tie.END),
            Map.entry(Category.HOLD, Tie.HOLD),
            Map.entry(Category.CLIMB, Tie.CLIMB),
            Map.entry(Category.UP, Tie.UP),
            Map.entry(Category.DOWN, Tie.DOWN),
            Map.entry(Category.CHANGE, Tie.CHANGE),
            Map.entry(Category.ALL, Tie.ALL),
            Map.entry(Category.BOTH, Tie.BOTH),
            Map.entry(Category.EACH, Tie.EACH),
            Map.entry(Category.ONLY, Tie.ONLY),
            Map.entry(Category.NOT, Tie.NOT),
            Map.entry(Category.NO, Tie.NO),
            Map.entry(Category.EXCEPT, Tie.EXCEPT),
            Map.entry(Category.ANY, Tie.ANY),
            Map.entry(Category.SAME, Tie.SAME),
            Map.entry(Category.DIFFERENT, Tie.DIFFERENT),
            Map.entry(Category.LIKE, Tie.LIKE),
            Map.entry(Category.APART, Tie.APART),
            Map.entry(Category.BETWEEN, Tie.BETWEEN),
            Map.entry(Category.WHICH, Tie.WHICH),
            Map.entry(Category.THEY, Tie.THEY),
            Map.entry(Category.WE, Tie.WE),
            Map.entry(Category.AFTER, Tie.AFTER),
            Map.entry(Category.BEFORE, Tie.BEFORE),
            Map.entry(Category.COMMA, Tie.COMMA),
            Map.entry(Category.VIA, Tie.COMMA),
            Map.entry(Category.SEMICOLON, Tie.SEMICOLON),
            Map.entry(Category.BRACKET, Tie.OTHER),
            Map.entry(Category.UNTIL, Tie.OTHER),
            Map.entry(Category.OR, Tie.OTHER),
            Map.entry(Category.COLON, Tie.COLON),
            Map.entry(Category.STOP, Tie.STOP),
            Map.entry(Category.ASK, Tie.ASK));

    /** Words that mean one thing in one place and another elsewhere, tried after all others, in this order. */
    private static final List<Map.Entry<Category, Tie>> LATE = List.of(
            Map.entry(Category.THEN, Tie.THEN),
            Map.entry(Category.AND, Tie.AND),
            Map.entry(Category.BUT, Tie.BUT),
            Map.entry(Category.FALL, Tie.FALL),
            Map.entry(Category.PLAY, Tie.PLAY),
            Map.entry(Category.IT, Tie.IT),
            Map.entry(Category.THAT, Tie.THAT),
            Map.entry(Category.THERE, Tie.THERE),
            Map.entry(Category.OF, Tie.OF),
            Map.entry(Category.FROM, Tie.FROM),
            Map.entry(Category.TO, Tie.TO),
            Map.entry(Category.ON, Tie.ON),
            Map.entry(Category.IN, Tie.IN),
            Map.entry(Category.AT, Tie.AT),
            Map.entry(Category.OVER, Tie.OVER),
            Map.entry(Category.WITH, Tie.WITH),
            Map.entry(Category.ABOVE, Tie.ABOVE),
            Map.entry(Category.BELOW, Tie.BELOW),
            Map.entry(Category.FOR, Tie.FOR),
            Map.entry(Category.THROUGH, Tie.IN),
            Map.entry(Category.NOTE, Tie.NOTE),
            Map.entry(Category.NEUTRAL, Tie.ONE),
            Map.entry(Category.BAR, Tie.BAR),
            Map.entry(Category.BEAT, Tie.BEAT),
            Map.entry(Category.STRING, Tie.STRING),
            Map.entry(Category.FRET, Tie.FRET),
            Map.entry(Category.CHORD, Tie.CHORD),
            Map.entry(Category.KEY, Tie.KEY),
            Map.entry(Category.BASS, Tie.BASS),
            Map.entry(Category.TEMPO, Tie.TEMPO),
            Map.entry(Category.METER, Tie.METER),
            Map.entry(Category.RHYTHM, Tie.RHYTHM),
            Map.entry(Category.FEEL, Tie.FEEL),
            Map.entry(Category.THUMB, Tie.THUMB),
            Map.entry(Category.FINGERS, Tie.FINGERS),
            Map.entry(Category.LONG, Tie.LONG),
            Map.entry(Category.SLOW, Tie.SLOW),
            Map.entry(Category.HIGH, Tie.HIGH),
            Map.entry(Category.LOW, Tie.LOW),
            Map.entry(Category.AGAIN, Tie.AGAIN),
            Map.entry(Category.SO, Tie.SO));

    private static final Pattern INDEFINITE = Pattern.compile("(?i)an|ein(e[nmrs]?)?");

    private final SpokenWords tokens;
    private final List<String> title;
    private final Names names;
    private final Moments moments;
    private final Places places;
    private final Heads heads;
    private final Strangers strangers;
    private final List<Read> units = new ArrayList<>();

    private ConstituentReader(SpokenWords tokens, List<String> title) {
        this.tokens = tokens;
        this.title = title;
        this.names = new Names(tokens);
        this.moments = new Moments(tokens);
        this.places = new Places(tokens, names);
        this.heads = new Heads(tokens, names);
        this.strangers = new Strangers(tokens);
    }

    static List<Read> units(List<Word> sentence, Hearing hearing) {
        var tokens = new SpokenWords(hearing.vocabulary().tokens(sentence), hearing.lowered());
        var scanner = new ConstituentReader(tokens, hearing.title());
        int i = 0;
        while (i < scanner.tokens.size()) {
            i = scanner.take(i);
        }
        return Reckoning.without(Corrections.made(scanner.units));
    }

    private int take(int i) {
        if (strangers.isIdle(i) || isOrdered(i)) {
            return i + 1;
        }
        var found = titled(i).or(() -> moments.read(i)).or(() -> heads.read(i)).or(() -> line(i));
        if (found.isPresent()) {
            return add(i, List.of(found.get().value()), found.get().after());
        }
        var degrees = degrees(i);
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
                        i - 1, Category.NOTE, Category.LENGTH, Category.LETTER, Category.REST, Category.STRING)
                && (tokens.isEnd(i + 1) || tokens.isAny(i + 1, Category.AND, Category.THEN));
        boolean ahead = tokens.is(i + 1, Category.LETTER) // "you have first D, then E"
                && tokens.isAny(i - 1, Category.COMMA, Category.HAVE, Category.PLAY, Category.BE, Category.WE);
        return first && (last || ahead);
    }

    private int add(int i, List<Constituent> found, int after) {
        for (var unit : found) {
            units.add(new Read(unit, tokens.at(i).from(), tokens.at(after - 1).to()));
        }
        return after;
    }

    /** A word alone: a tie, a filler, or unknown. */
    private int rest(int i) {
        var token = tokens.at(i);
        boolean article = token.is(Category.THE)
                && token.isAny(Category.THAT, Category.THEY)
                && !tokens.isAny(i + 1, Category.BE, Category.PLAY, Category.HAVE, Category.HOLD, Category.START);
        boolean other = token.is(Category.THE)
                && !token.isAny(Category.THAT, Category.THEY, Category.LETTER, Category.NUMBER)
                && !INDEFINITE.matcher(token.raw()).matches();
        if (isPronoun(i)) { // "der geht", "die ist"
            boolean many = tokens.at(i + 1).raw().matches("sind|.*en");
            return add(i, List.of(new Constituent.Small(many ? Tie.THEY : Tie.IT)), i + 1);
        }
        boolean definite = article || other;
        if (definite) {
            return add(i, List.of(new Constituent.Small(Tie.THE)), i + 1);
        }
        boolean tag = token.is(Category.NOT)
                && tokens.isAny(i + 1, Category.IT, Category.THEY, Category.WE, Category.THERE)
                && tokens.isEnd(i + 2);
        boolean aside = token.is(Category.LIKE) && tokens.is(i - 1, Category.COMMA) && tokens.is(i + 1, Category.COMMA);
        boolean asks = token.is(Category.DO)
                && tokens.isAny(i + 1, Category.WE, Category.IT, Category.THEY, Category.THE)
                && (i == 0 || !tokens.isAny(i - 1, Category.WE, Category.IT));
        if (asks) {
            return add(i, List.of(new Constituent.Small(Tie.DO)), i + 1);
        }
        boolean free = token.is(Category.NOT) && tokens.is(i + 1, Category.HAVE) && tokens.is(i + 2, Category.TO);
        if (free) { // "you don't have to"
            return add(i, List.of(new Constituent.Small(Tie.MAYBE)), i + 3);
        }
        boolean upTo = token.is(Category.UNTIL)
                && tokens.ordinal(tokens.skip(i + 1, Category.THE)).isPresent(); // "until the seventh fret"
        if (upTo) {
            return add(i, List.of(new Constituent.Small(Tie.TO)), i + 1);
        }
        boolean anytime = token.is(Category.NOT) && token.is(Category.ANY); // "never"
        if (anytime) {
            return add(i, List.of(new Constituent.Small(Tie.NOT), new Constituent.Small(Tie.ANY)), i + 1);
        }
        boolean besides = token.is(Category.OR) && tokens.is(i + 1, Category.THE) && tokens.is(i + 2, Category.WAY);
        if (besides) { // "by the way"
            return i + 3;
        }
        boolean by = token.is(Category.OR)
                && interval(tokens.skip(i + 1, Category.THE)).isPresent(); // "up by a whole tone"
        if (by) {
            return i + 1;
        }
        boolean followed = token.is(Category.FOLLOWED) && tokens.is(i + 1, Category.OR); // "followed by"
        if (followed) {
            return add(i, List.of(new Constituent.Small(Tie.THEN)), i + 2);
        }
        boolean alike = token.is(Category.NOTE) && tokens.is(i + 1, Category.FOR) && tokens.is(i + 2, Category.NOTE);
        boolean harmony = token.is(Category.OVER)
                && tokens.isAny(i + 1, Category.THE, Category.THAT)
                && tokens.is(i + 2, Category.CHORD)
                && tokens.isEnd(i + 3);
        if (alike || harmony) { // "note for note", "over this chord, ..."
            return i + 3;
        }
        boolean plural = tokens.at(i).raw().matches("['’]s")
                && isPlural(i - 1)
                && tokens.isAny(i - 2, Category.NUMBER, Category.THEY, Category.BOTH, Category.ALL);
        if (plural) {
            return i + 1;
        }
        boolean breath = tokens.isLowered() && token.is(Category.BREATH);
        if (breath) { // where nothing else tells that something begins
            return add(i, List.of(new Constituent.Small(Tie.SO)), i + 1);
        }
        boolean likened = token.is(Category.AS) && tokens.isAny(i + 1, Category.BAR, Category.BEAT);
        if (likened) { // "as bar one"
            return add(i, List.of(new Constituent.Small(Tie.LIKE)), i + 1);
        }
        boolean way = token.is(Category.TO) && tokens.isAny(i + 1, Category.UPWARD, Category.DOWNWARD);
        if (way) { // "nach oben"
            boolean up = tokens.is(i + 1, Category.UPWARD);
            return add(i, List.of(new Constituent.Small(up ? Tie.UP : Tie.DOWN)), i + 2);
        }
        boolean bidden = token.is(Category.LET)
                && tokens.isAny(i + 1, Category.IT, Category.THEY, Category.THAT, Category.THE, Category.LETTER);
        if (bidden) { // "let it ring"
            return i + 1;
        }
        boolean us = token.is(Category.LET) && tokens.is(i + 1, Category.BE); // "let's"
        if (us) {
            return i + 2;
        }
        boolean limit = token.isAny(Category.NO, Category.NOT) && tokens.is(i + 1, Category.MORE); // "no more"
        boolean purpose = token.is(Category.TO) // "to worry about"
                && (strangers.isStrange(i + 1) || tokens.is(i + 1, Category.FILLER) && tokens.isEnd(i + 2));
        boolean among = token.is(Category.BETWEEN) && tokens.is(i + 1, Category.THEY); // "between them"
        if (limit || purpose || among) {
            return i + 2;
        }
        boolean sum = token.is(Category.OF)
                        && tokens.is(i + 1, Category.ALL)
                        && (tokens.isEnd(i + 2) || tokens.is(i + 2, Category.BE)); // "the last beat of all"
        if (sum) {
            return i + 2;
        }
        if (token.is(Category.SUM) || token.is(Category.ALL) && tokens.is(i + 1, Category.SUM)) { // "all told"
            return add(i, List.of(new Constituent.Small(Tie.SUM)), token.is(Category.SUM) ? i + 1 : i + 2);
        }
        boolean opening = token.is(Category.TO) && tokens.is(i + 1, Category.START);
        boolean opened = token.is(Category.WITH) && tokens.is(i - 1, Category.START) && tokens.isEnd(i + 1);
        if (opening || opened) { // "to start with"
            return i + 1;
        }
        boolean throughout = token.is(Category.FROM)
                && tokens.is(i + 1, Category.HIGHEST)
                && tokens.is(i + 2, Category.TO)
                && tokens.is(i + 3, Category.LOWEST);
        if (throughout) { // "from top to bottom"
            return i + 4;
        }
        if (tag || aside) { // "isn't it?", ", like,"
            return tag ? i + 2 : i + 1;
        }
        boolean pointed = token.is(Category.WHAT)
                && !token.is(Category.LIKE)
                && !tokens.is(i + 1, Category.MANY)
                && tokens.is(i - 1, Category.FILLER)
                && !tokens.is(i - 1, Category.SO)
                && !tokens.is(tokens.size() - 1, Category.ASK);
        if (pointed) { // "notice how"
            return i + 1;
        }
        if (token.is(Category.COUNTED)) {
            return add(i, List.of(new Constituent.Small(Tie.RECKON)), i + 1);
        }
        boolean many = tokens.is(i + 1, Category.MANY);
        if (token.is(Category.WHAT) && (many || !token.is(Category.LIKE))) {
            return add(i, List.of(new Constituent.Small(many ? Tie.HOW_MANY : Tie.WHAT)), many ? i + 2 : i + 1);
        }
        boolean soon = token.is(Category.SAME) && token.is(Category.FILLER) && !tokens.is(i - 1, Category.BE);
        if (soon) {
            return i + 1; // "gleich danach"
        }
        var early = TIES.entrySet().stream()
                .filter(entry -> token.is(entry.getKey()))
                .map(Map.Entry::getValue)
                .min(Enum::compareTo);
        var tie = early.or(() -> LATE.stream()
                .filter(entry -> token.is(entry.getKey()))
                .map(Map.Entry::getValue)
                .findFirst());
        if (tie.isPresent()) {
            return add(i, List.of(new Constituent.Small(tie.get())), i + 1);
        }
        boolean filler = token.isAny(
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
                Category.THING);
        if (filler) {
            return i + 1;
        }
        var unit = strangers.isVerb(i) ? new Constituent.Small(Tie.PLAY) : new Constituent.Unknown();
        return add(i, List.of(unit), i + 1);
    }

    /** A German article before a verb stands for a noun. */
    private boolean isPronoun(int i) {
        return tokens.at(i).raw().toLowerCase(Locale.ROOT).matches("der|die|den|dem")
                && tokens.isAny(
                        i + 1, Category.BE, Category.PLAY, Category.HAVE, Category.HOLD, Category.CLIMB, Category.FALL)
                && !tokens.at(i + 1).isCapital();
    }

    private Optional<Found<Constituent>> one(int i) {
        return length(i)
                .or(() -> interval(i))
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
                        .allMatch(at -> tokens.at(i + at).raw().toLowerCase(Locale.ROOT).equals(title.get(at)));
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

    /** "Root, third, fifth". */
    private Optional<Found<List<Constituent>>> degrees(int i) {
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
        return tokens.is(i, Category.LENGTH) && !ordinal && !tokens.is(i, Category.WHOLE)
                ? Optional.of(new Found<>(Fraction.of(1, tokens.at(i).number(Category.LENGTH)), i + 1))
                : Optional.empty();
    }

    private Optional<Found<Constituent>> interval(int i) {
        boolean half = tokens.is(i, Category.HALF);
        if ((half || tokens.is(i, Category.WHOLE)) && tokens.isAny(i + 1, Category.STEP, Category.NOTE)) {
            return unit(new Constituent.Interval(2, OptionalInt.of(half ? 1 : 2)), i + 2);
        }
        var steps = tokens.number(i).flatMap(found -> interval(found.after())
                .filter(one -> one.value() instanceof Constituent.Interval step
                        && step.number() == 2
                        && step.semitones().isPresent())
                .map(one -> new Found<Constituent>(steps(found.value(), (Constituent.Interval) one.value()), one.after())));
        if (steps.isPresent()) { // "three half steps"
            return steps;
        }
        boolean step = tokens.is(i, Category.STEP) && !tokens.is(i, Category.NOTE);
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

    private static Constituent steps(int many, Constituent.Interval step) {
        return new Constituent.Interval(many + 1, OptionalInt.of(many * step.semitones().getAsInt()));
    }

    private Optional<Found<Constituent>> move(int i) {
        return tokens.number(i)
                .filter(found -> tokens.isAny(found.after(), Category.FRET, Category.STRING)
                        && tokens.isAny(found.after() + 1, Category.UP, Category.DOWN))
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
                        || tokens.is(after, Category.OF)
                                && heads.read(tokens.skip(after, Category.OF, Category.THE, Category.CHORD))
                                        .isPresent();
        if (ofChord || isDegree(at)) {
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

    /** "Over this chord the E is the third", "F is the root, A the third". */
    private boolean isDegree(int i) {
        boolean harmony = IntStream.range(0, tokens.size())
                .anyMatch(at -> tokens.isAny(at, Category.CHORD, Category.ROOT));
        return harmony
                && tokens.is(i, Category.ORDINAL)
                && tokens.is(i - 1, Category.THE)
                && tokens.is(i - 2, Category.BE)
                && (tokens.isEnd(i + 1) || tokens.is(i + 1, Category.AND));
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

    private Optional<Found<Constituent>> manner(int i) {
        boolean idiom = tokens.is(i, Category.DEAD) && strangers.isStrange(i + 1); // "a dead ringer"
        if (tokens.is(i, Category.DEAD) && !idiom) {
            return unit(new Constituent.Dead(), tokens.is(i + 1, Category.NOTE) ? i + 2 : i + 1);
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
        boolean compared = tokens.is(i, Category.SILENT) && !tokens.isEnd(i + 1)
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
        return names.name(i).map(found -> new Found<>(new Constituent.Name(found.value()), found.after()));
    }

    /** "Four F's". */
    private boolean isPlural(int i) {
        return tokens.is(i, Category.LETTER) && tokens.at(i + 1).raw().matches("['’]s");
    }

    private Optional<Found<Constituent>> amount(int i) {
        if (tokens.is(i, Category.TIMES) && tokens.is(i - 1, Category.AGAIN)) {
            return unit(new Constituent.Small(Tie.AGAIN), i + 1); // "noch einmal"
        }
        if (tokens.is(i, Category.TIMES)) {
            return unit(new Constituent.Times(tokens.at(i).number(Category.TIMES)), i + 1);
        }
        var number = tokens.number(i);
        if (number.isEmpty()) {
            return Optional.empty();
        }
        int after = number.get().after();
        if (tokens.is(after, Category.TIME)) {
            return unit(new Constituent.Times(number.get().value()), after + 1);
        }
        int adjective = tokens.skip(after, Category.FILLER, Category.SHORT);
        boolean unknown = adjective < tokens.size() && !tokens.at(adjective).isKnown();
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
                || isPlural(noun)
                || tokens.is(after, Category.OF)
                || tokens.is(noun, Category.HALF);
        boolean pronoun = tokens.is(i, Category.NEUTRAL)
                && (tokens.isAny(i - 1, Category.ORDINAL, Category.LAST, Category.MIDDLE, Category.THAT, Category.EACH)
                        || tokens.isAny(i - 1, Category.THE, Category.OPEN, Category.DEAD, Category.MANNER));
        if (pronoun && !counts) {
            return unit(new Constituent.Small(Tie.ONE), after);
        }
        return unit(
                counts
                        ? new Constituent.Count(number.get().value())
                        : new Constituent.Number(number.get().value()),
                after);
    }
}
