package groundbass.script.grammar;

import groundbass.script.lexicon.Category;
import groundbass.script.lexicon.SpokenWords;
import groundbass.script.lexicon.SpokenWords.Found;
import groundbass.theory.ChordSymbol;
import groundbass.theory.ChordSymbol.Chord;
import groundbass.theory.Key;
import groundbass.theory.Mode;
import groundbass.theory.NoteName;
import groundbass.theory.Quality;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/** Reads keys, chords in words, tempos, metres and feels. */
final class Heads {
    private static final int SLOWEST = 20;

    /** A number that is not called a tempo is hardly one below this. */
    private static final int SLOWEST_SAID = 40;

    /** So many words may say how a tempo feels before it is said. */
    private static final int DESCRIPTION = 4;

    /** What Germans call a flat by itself. */
    private static final Pattern FLAT = Pattern.compile("b|Be?|be");

    private static final Pattern INSTRUMENT = Pattern.compile("(?i)string|.*sait(er|ig.*)");

    private static final int MOST_SIGNS = Key.MOST_FIFTHS;

    private final SpokenWords tokens;
    private final Names names;

    Heads(SpokenWords tokens, Names names) {
        this.tokens = tokens;
        this.names = names;
    }

    Optional<Found<Constituent>> read(int i) {
        return tempo(i).or(() -> meter(i))
                .or(() -> symbol(i))
                .or(() -> named(i))
                .or(() -> signature(i))
                .or(() -> strings(i));
    }

    /** "Two flats in the signature", "drei Kreuze": signs before the line, and none in front of a note. */
    private Optional<Found<Constituent>> signature(int i) {
        boolean told = IntStream.range(0, tokens.size())
                .anyMatch(at -> tokens.isAny(at, Category.METER, Category.KEY, Category.SIGNATURE));
        return tokens.number(i)
                .filter(found -> told && found.value() <= MOST_SIGNS && sign(found.after()) != 0)
                .map(found ->
                        new Found<>(new Constituent.Signature(found.value() * sign(found.after())), found.after() + 1));
    }

    private int sign(int i) {
        if (FLAT.matcher(tokens.at(i).raw()).matches()) {
            return -1;
        }
        return tokens.is(i, Category.SIGN) ? tokens.at(i).number(Category.SIGN) : 0;
    }

    /** "Ninety beats a minute", "the click is at 90", "tempo 90". */
    private Optional<Found<Constituent>> tempo(int i) {
        if (tokens.isAny(i, Category.TEMPO, Category.CLICK)) {
            int at = tokens.skip(
                    i + 1,
                    Category.BE,
                    Category.RUN,
                    Category.AT,
                    Category.HAVE,
                    Category.FILLER,
                    Category.ON,
                    Category.TO);
            int described = afterDescription(at);
            return tokens.number(described)
                    .filter(found -> found.value() >= (described > at ? SLOWEST_SAID : SLOWEST))
                    .map(found -> tempo(found.value(), perMinute(found.after()).orElse(found.after())));
        }
        var number = tokens.number(i).filter(found -> found.value() >= SLOWEST);
        if (number.isEmpty()) {
            return Optional.empty();
        }
        int after = number.get().after();
        boolean marked = number.get().value() >= SLOWEST_SAID && tokens.is(i - 1, Category.AT) && !isNoun(after);
        if (marked) {
            return Optional.of(tempo(number.get().value(), perMinute(after).orElse(after)));
        }
        var minute = perMinute(after);
        if (minute.isPresent()) {
            return Optional.of(tempo(number.get().value(), minute.get()));
        }
        int at = tokens.skip(after, Category.BE, Category.ON, Category.THE);
        boolean said = at > after && tokens.isAny(at, Category.TEMPO, Category.CLICK);
        return said ? Optional.of(tempo(number.get().value(), at + 1)) : Optional.empty();
    }

    /** "Tempo is a comfortable ninety-eight": index of the number behind the words that only say how it feels. */
    private int afterDescription(int i) {
        int at = i;
        while (at < i + DESCRIPTION
                && (!tokens.at(at).isKnown() && !tokens.isEnd(at)
                        || tokens.isAny(at, Category.THE, Category.FILLER, Category.ONLY))) {
            at++;
        }
        return tokens.number(at).isPresent() ? at : i;
    }

    /** "At ninety percent". */
    private boolean isNoun(int i) {
        return tokens.isAny(i, Category.PERCENT, Category.FRET, Category.BAR, Category.STRING, Category.NOTE);
    }

    private static Found<Constituent> tempo(int perMinute, int after) {
        return new Found<>(new Constituent.TempoNamed(perMinute), after);
    }

    private Optional<Integer> perMinute(int i) {
        int at = tokens.skip(i, Category.BEAT, Category.LENGTH, Category.DOTTED);
        at = tokens.skip(at, Category.PER, Category.THE, Category.IN);
        return tokens.is(at, Category.MINUTE) ? Optional.of(at + 1) : Optional.empty();
    }

    private Optional<Found<Constituent>> meter(int i) {
        String raw = tokens.at(i).raw();
        if (raw.matches("\\d{1,2}/(2|4|8|16)")) {
            String[] figures = raw.split("/");
            return Optional.of(meter(Integer.parseInt(figures[0]), Integer.parseInt(figures[1]), i + 1));
        }
        var counts = tokens.number(i).filter(found -> found.value() >= 2 && found.value() <= 12);
        if (counts.isEmpty()) {
            return Optional.empty();
        }
        int after = counts.get().after();
        var unit = tokens.number(after).filter(found -> found.value() == 4 || found.value() == 8);
        boolean said = tokens.is(i - 1, Category.IN)
                || tokens.is(i - 1, Category.METER)
                || tokens.is(i - 1, Category.BE) && tokens.is(i - 2, Category.METER)
                || unit.filter(found -> tokens.is(found.after(), Category.TIME)).isPresent();
        if (unit.isPresent() && said) {
            int end = unit.get().after();
            return Optional.of(
                    meter(counts.get().value(), unit.get().value(), tokens.is(end, Category.TIME) ? end + 1 : end));
        }
        boolean compound = tokens.is(after, Category.LENGTH)
                && (tokens.is(after + 1, Category.BAR) || isBareMeter(i, after))
                && tokens.at(after).number(Category.LENGTH) <= 8
                && tokens.at(after).number(Category.LENGTH) >= 4;
        return compound
                ? Optional.of(meter(
                        counts.get().value(),
                        tokens.at(after).number(Category.LENGTH),
                        tokens.is(after + 1, Category.BAR) ? after + 2 : after + 1))
                : Optional.empty();
    }

    /** "Vier Viertel", said by itself. */
    private boolean isBareMeter(int i, int unit) {
        boolean begins = i == 0 || tokens.isEnd(i - 1);
        return begins && tokens.at(unit).raw().equals("Viertel") && tokens.isEnd(unit + 1);
    }

    private static Found<Constituent> meter(int counts, int unit, int after) {
        return new Found<>(new Constituent.MeterNamed(counts, unit), after);
    }

    /** "Em7", "B7"; a capital word without a figure is none, and what two namings call two chords is neither. */
    private Optional<Found<Constituent>> symbol(int i) {
        if (tokens.is(i, Category.EITHER_CHORD)) {
            return Optional.empty();
        }
        String raw = tokens.at(i).raw();
        boolean small = tokens.isLowered() && raw.matches("[a-g][#b]?(m|maj)?\\d+");
        boolean written = raw.length() > 1 && Character.isUpperCase(raw.charAt(0)) && raw.matches(".*\\d.*");
        String symbol = small ? Character.toUpperCase(raw.charAt(0)) + raw.substring(1) : raw;
        return written || small
                ? ChordSymbol.parse(symbol)
                        .filter(Chord.class::isInstance)
                        .map(chord -> new Found<>(new Constituent.ChordNamed((Chord) chord), i + 1))
                : Optional.empty();
    }

    /** "E minor", "an E minor seven", "C seven", "E flat major seven". */
    private Optional<Found<Constituent>> named(int i) {
        var name = names.name(i);
        if (name.isEmpty()) {
            return Optional.empty();
        }
        int at = name.get().after();
        if (!tokens.is(at, Category.MODE)) {
            return seventh(name.get().value(), Quality.SEVENTH, at);
        }
        var mode = Mode.valueOf(tokens.at(at).value(Category.MODE));
        var quality = mode == Mode.MAJOR ? Quality.MAJOR_SEVENTH : Quality.MINOR_SEVENTH;
        boolean chord = mode == Mode.MAJOR || mode == Mode.MINOR;
        var seventh = chord ? seventh(name.get().value(), quality, at + 1) : Optional.<Found<Constituent>>empty();
        return seventh.or(() -> Key.isWritable(name.get().value(), mode) || chord
                ? Optional.of(new Found<>(new Constituent.KeyNamed(name.get().value(), mode), at + 1))
                : Optional.empty());
    }

    private Optional<Found<Constituent>> seventh(NoteName root, Quality quality, int i) {
        boolean figure = tokens.is(i, Category.NUMBER) && tokens.at(i).number(Category.NUMBER) == 7;
        boolean ordinal = tokens.is(i, Category.ORDINAL)
                && tokens.at(i).number(Category.ORDINAL) == 7
                && !tokens.isAny(i + 1, Category.FRET, Category.ON);
        boolean compound = tokens.is(i, Category.CHORD)
                && tokens.at(i).value(Category.CHORD).equals("7");
        return figure || ordinal || compound
                ? Optional.of(new Found<>(new Constituent.ChordNamed(Chord.of(root, quality)), i + 1))
                : Optional.empty();
    }

    private Optional<Found<Constituent>> strings(int i) {
        return tokens.number(i)
                .filter(found -> tokens.is(found.after(), Category.STRING))
                .filter(found -> !tokens.isAny(found.after() + 1, Category.UP, Category.DOWN, Category.APART))
                .map(found -> new Found<>(
                        new Constituent.StringCount(
                                found.value(),
                                INSTRUMENT
                                        .matcher(tokens.at(found.after()).raw())
                                        .matches()),
                        found.after() + 1));
    }
}
