package groundbass.linetext.read;

import groundbass.linetext.problem.EventProblems;
import groundbass.linetext.problem.Problems;
import groundbass.linetext.source.Moment;
import groundbass.linetext.source.Token;
import groundbass.linetext.source.Tokens;
import groundbass.linetext.source.TypedNumbers;
import groundbass.linetext.typed.Event.Until;
import groundbass.linetext.typed.PlaceWords;
import groundbass.linetext.typed.TypedTrill;
import groundbass.score.Arrival;
import groundbass.score.Harmonic;
import groundbass.score.Ornaments;
import groundbass.score.Ornaments.Bend;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Ornaments.SlideIn;
import groundbass.score.Ornaments.SlideOff;
import groundbass.score.Place;
import groundbass.score.Technique;
import groundbass.theory.NoteName;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeMap;
import java.util.function.Consumer;

/** Reads the words of one place, one after the other; what cannot be read is left out. */
public final class PlaceWordReader {
    private final Tokens tokens;
    private final Problems problems;
    private final Map<Kind, String> said = new HashMap<>();
    private PlaceWords words = PlaceWords.NONE;

    /** Of each of these, a place has one at most. */
    private enum Kind {
        PLUCK,
        ARRIVAL,
        SLIDE_IN,
        SLIDE_OFF,
        BEND,
        TRILL,
        HARMONIC,
        FINGER,
        SPELLING,
        UNTIL
    }

    private static final Map<String, Technique> PLUCKS = new TreeMap<>();
    private static final Map<String, Arrival.Kind> ARRIVALS = new TreeMap<>();
    private static final Map<String, Mark> MARKS = new TreeMap<>();
    private static final List<String> OTHERS = List.of(
            "bend",
            "prebend",
            "release",
            "trill",
            "roll",
            "bracket",
            "harmonic",
            "with",
            "as",
            "for",
            "until",
            "rest",
            "hold",
            "pp",
            "p",
            "mp",
            "mf",
            "f",
            "ff");
    private static final List<String> KNOWN = new ArrayList<>();

    static {
        for (var technique : Technique.values()) {
            PLUCKS.put(technique.word(), technique);
        }
        for (var kind : Arrival.Kind.values()) {
            ARRIVALS.put(kind.word(), kind);
        }
        for (var mark : Mark.values()) {
            MARKS.put(mark.word(), mark);
        }
        KNOWN.addAll(PLUCKS.keySet());
        KNOWN.addAll(ARRIVALS.keySet());
        KNOWN.addAll(MARKS.keySet());
        KNOWN.addAll(OTHERS);
    }

    PlaceWordReader(Tokens tokens, Problems problems) {
        this.tokens = tokens;
        this.problems = problems;
    }

    PlaceWords words() {
        return words;
    }

    /** Every word that can stand behind a place. */
    public static List<String> known() {
        return List.copyOf(KNOWN);
    }

    void word(Token word) {
        String text = word.text();
        if (PLUCKS.containsKey(text)) {
            once(Kind.PLUCK, word, () -> words = words.with(PLUCKS.get(text)));
        } else if (ARRIVALS.containsKey(text)) {
            arrival(word);
        } else if (MARKS.containsKey(text)) {
            mark(word, MARKS.get(text));
        } else {
            withValue(word);
        }
    }

    private void withValue(Token word) {
        switch (word.text()) {
            case "bend" ->
                read(Kind.BEND, word, bend(), bend -> ornament(words.ornaments().with(bend)));
            case "prebend" ->
                read(Kind.BEND, word, bend(), bend -> ornament(words.ornaments().with(bend.beforeTheStroke())));
            case "release" -> release(word);
            case "trill" -> read(Kind.TRILL, word, trill(word), trill -> words = words.with(trill));
            case "harmonic" ->
                read(
                        Kind.HARMONIC,
                        word,
                        harmonic(),
                        harmonic -> ornament(words.ornaments().with(harmonic)));
            case "with" ->
                read(
                        Kind.FINGER,
                        word,
                        finger(),
                        finger -> ornament(words.ornaments().withFinger(finger)));
            case "as" ->
                read(
                        Kind.SPELLING,
                        word,
                        spelling(),
                        name -> ornament(words.ornaments().withSpelling(name)));
            case "until" -> read(Kind.UNTIL, word, until(tokens, problems), until -> words = words.with(until));
            default ->
                problems.add(
                        EventReader.isPlace(word)
                                ? EventProblems.noComma(word)
                                : EventProblems.unknownWord(word, KNOWN));
        }
    }

    /** Where a place lasts to; the word {@code until} is taken already. */
    static Optional<Until> until(Tokens tokens, Problems problems) {
        var word = tokens.last();
        if (tokens.takeWord("end")) {
            return Optional.of(new Until(word.to(tokens.last()), Optional.empty()));
        }
        var moment = Moment.read(tokens);
        if (moment.isEmpty()) {
            problems.add(EventProblems.badUntil(word));
            skipValue(tokens);
        }
        return moment.map(found -> new Until(word.to(tokens.last()), moment));
    }

    private void arrival(Token word) {
        var kind = ARRIVALS.get(word.text());
        if (kind == Arrival.Kind.SLIDE && tokens.takeWord("in")) {
            var ways = Map.of("below", SlideIn.BELOW, "above", SlideIn.ABOVE);
            read(
                    Kind.SLIDE_IN,
                    word,
                    way("slide in", ways),
                    way -> ornament(words.ornaments().with(way)));
        } else if (kind == Arrival.Kind.SLIDE && tokens.takeWord("off")) {
            var ways = Map.of("down", SlideOff.DOWN, "up", SlideOff.UP);
            read(
                    Kind.SLIDE_OFF,
                    word,
                    way("slide off", ways),
                    way -> ornament(words.ornaments().with(way)));
        } else if (tokens.takeWord("from")) {
            read(Kind.ARRIVAL, word, fret(), from -> words = words.with(Arrival.from(kind, from)));
        } else {
            once(Kind.ARRIVAL, word, () -> words = words.with(Arrival.by(kind)));
        }
    }

    private <T> Optional<T> way(String what, Map<String, T> ways) {
        var way = tokens.take(token -> ways.containsKey(token.text()));
        if (way.isEmpty()) {
            problems.add(EventProblems.noWay(tokens.here(), what, List.copyOf(new TreeMap<>(ways).keySet())));
            skipValue(tokens);
        }
        return way.map(token -> ways.get(token.text()));
    }

    /** A quarter of a whole tone to two tones: {@code 1/2}, {@code 1}, {@code 1 1/4}. */
    private Optional<Bend> bend() {
        var here = tokens.here();
        var whole = tokens.take(token -> TypedNumbers.whole(token.text()).isPresent())
                .flatMap(token -> TypedNumbers.whole(token.text()));
        var part = tokens.take(token -> quarters(token.text()).isPresent()).flatMap(token -> quarters(token.text()));
        long quarters = 4L * whole.orElse(0) + part.orElse(0);
        if (quarters < 1 || quarters > Bend.MOST_QUARTERS) {
            if (whole.isEmpty() && part.isEmpty()) {
                skipValue(tokens);
            }
            problems.add(EventProblems.badBend(here));
            return Optional.empty();
        }
        return Optional.of(new Bend((int) quarters));
    }

    /** What is let back stands before. */
    private void release(Token word) {
        var bend = words.ornaments().bend();
        if (bend.isEmpty()) {
            problems.add(EventProblems.nothingToRelease(word));
        } else if (bend.get().released()) {
            problems.add(EventProblems.twice(word.span(), word.text()));
        } else {
            ornament(words.ornaments().with(bend.get().letBack()));
        }
    }

    private Optional<TypedTrill> trill(Token word) {
        if (!tokens.takeWord("to")) {
            return Optional.of(new TypedTrill(word.span(), OptionalInt.empty()));
        }
        var fret = number(0, Place.Fretted.MOST_FRETS);
        if (fret.isEmpty()) {
            problems.add(EventProblems.badTrill(tokens.last()));
            skipValue(tokens);
        }
        return fret.map(to -> new TypedTrill(word.span().to(tokens.last()), OptionalInt.of(to)));
    }

    /** What stands where a value should, unless it is a word of its own, so that it is complained of once. */
    private static void skipValue(Tokens tokens) {
        tokens.take(token -> token.kind() == Token.Kind.WORD && !KNOWN.contains(token.text()));
    }

    private static Optional<Integer> quarters(String text) {
        return switch (text) {
            case "\u00BC" -> Optional.of(1);
            case "\u00BD" -> Optional.of(2);
            case "\u00BE" -> Optional.of(3);
            default ->
                TypedNumbers.fraction(text)
                        .map(part -> part.times(4))
                        .filter(part -> part.denominator() == 1 && part.floor() <= Bend.MOST_QUARTERS)
                        .map(part -> (int) part.floor());
        };
    }

    private Optional<Harmonic> harmonic() {
        if (!tokens.takeWord("at")) {
            return Optional.of(Harmonic.NATURAL);
        }
        var touched = number(1, Harmonic.HIGHEST_TOUCHED);
        if (touched.isEmpty()) {
            problems.add(EventProblems.badTouch(tokens.last()));
            skipValue(tokens);
        }
        return touched.map(Harmonic::touchedAt);
    }

    private Optional<Integer> fret() {
        var fret = number(0, Place.Fretted.MOST_FRETS);
        if (fret.isEmpty()) {
            problems.add(EventProblems.badGrace(tokens.last()));
            skipValue(tokens);
        }
        return fret;
    }

    private Optional<Integer> finger() {
        var finger = number(1, 4);
        if (finger.isEmpty()) {
            problems.add(EventProblems.badFinger(tokens.last()));
            skipValue(tokens);
        }
        return finger;
    }

    private Optional<NoteName> spelling() {
        var name = tokens.take(token -> NoteName.parse(token.text()).isPresent());
        if (name.isEmpty()) {
            problems.add(EventProblems.badSpelling(tokens.here()));
            skipValue(tokens);
        }
        return name.flatMap(token -> NoteName.parse(token.text()));
    }

    /** Takes a number even where it is out of range, so that it is complained of once. */
    private Optional<Integer> number(int from, int to) {
        return tokens.take(token -> TypedNumbers.whole(token.text()).isPresent())
                .flatMap(token -> TypedNumbers.whole(token.text()))
                .filter(number -> number >= from && number <= to);
    }

    private void mark(Token word, Mark mark) {
        if (words.ornaments().has(mark)) {
            problems.add(EventProblems.twice(word.span(), word.text()));
        }
        ornament(words.ornaments().with(mark));
    }

    private <T> void read(Kind kind, Token word, Optional<T> value, Consumer<T> use) {
        value.ifPresent(found -> once(kind, word, () -> use.accept(found)));
    }

    private void once(Kind kind, Token word, Runnable use) {
        var before = said.putIfAbsent(kind, word.text());
        if (before == null) {
            use.run();
        } else {
            problems.add(EventProblems.twoOfAKind(word, before));
        }
    }

    private void ornament(Ornaments ornaments) {
        words = words.with(ornaments);
    }
}
