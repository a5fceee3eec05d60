package groundbass.script.reading;

import groundbass.score.Meter;
import groundbass.script.claims.Chunk;
import groundbass.script.words.Found;
import groundbass.script.words.Sense;
import groundbass.script.words.Terms;
import groundbass.theory.ChordSymbol;
import groundbass.theory.ChordSymbol.Chord;
import groundbass.theory.Key;
import groundbass.theory.Mode;
import groundbass.theory.Quality;
import java.util.Optional;

/** Reads what stands at the head of a line: key, meter, tempo, feel, chords, and how long it is. */
final class Heads {
    private final Terms terms;
    private final NoteNames notes;

    Heads(Terms terms, NoteNames notes) {
        this.terms = terms;
        this.notes = notes;
    }

    Optional<Found<Chunk>> read(int i) {
        return key(i).or(() -> tonic(i))
                .or(() -> meter(i))
                .or(() -> tempo(i))
                .or(() -> feel(i))
                .or(() -> chord(i))
                .or(() -> bars(i));
    }

    private Optional<Found<Chunk>> key(int i) {
        return notes.name(i)
                .filter(found -> terms.is(found.after(), Sense.MODE))
                .map(found -> {
                    var mode = Mode.valueOf(terms.at(found.after()).value(Sense.MODE));
                    int after = found.after() + 1;
                    boolean claimed = !terms.is(after, Sense.NO_KEY) && isClaimed(i);
                    return Key.isWritable(found.value(), mode)
                            ? new Found<Chunk>(new Chunk.KeyNamed(new Key(found.value(), mode), claimed), after)
                            : new Found<Chunk>(new Chunk.Tie(Sense.PLAIN), after);
                });
    }

    /** Whether the words before a key say that it is the line's. */
    private boolean isClaimed(int i) {
        int at = i - 1;
        while (terms.isAny(at, Sense.THE, Sense.GLUE) && at > i - 3) {
            at--;
        }
        boolean other = terms.is(at, Sense.OF) && terms.isAny(at - 1, Sense.NOTE, Sense.NO_KEY);
        return !other
                && (terms.isAny(at, Sense.IN, Sense.SUBJECT, Sense.KEY)
                        || (terms.is(at, Sense.OF) && terms.is(at - 1, Sense.KEY))
                        || (terms.is(at, Sense.BE) && terms.isAny(at - 1, Sense.KEY, Sense.THE_LINE)));
    }

    private Optional<Found<Chunk>> tonic(int i) {
        boolean said = terms.is(i, Sense.SUBJECT) || terms.at(i).raw().equals("key") && terms.is(i + 1, Sense.BE);
        int at = terms.is(i, Sense.SUBJECT) ? i + 1 : i + 2;
        return said
                ? notes.name(at)
                        .filter(found -> terms.isBreak(found.after()) && !terms.is(found.after(), Sense.COLON))
                        .map(found -> new Found<>(new Chunk.TonicNamed(found.value()), found.after()))
                : Optional.empty();
    }

    private Optional<Found<Chunk>> meter(int i) {
        String raw = terms.at(i).raw();
        if (raw.matches("\\d{1,2}/(2|4|8|16)")) {
            String[] figures = raw.split("/");
            return meter(Integer.parseInt(figures[0]), Integer.parseInt(figures[1]), i + 1);
        }
        boolean said = terms.isAny(i - 1, Sense.IN, Sense.SUBJECT) || terms.is(i + 2, Sense.TIME);
        var counts = terms.number(i).filter(found -> said && found.after() == i + 1);
        var unit = terms.number(i + 1).filter(found -> found.value() == 4 || found.value() == 8);
        return counts.isPresent() && unit.isPresent() && !terms.isAny(i + 2, Sense.BAR, Sense.STRING)
                ? meter(counts.get().value(), unit.get().value(), i + 2)
                : Optional.empty();
    }

    private static Optional<Found<Chunk>> meter(int counts, int unit, int after) {
        return counts >= 2 && counts <= Meter.MOST_COUNTS
                ? Optional.of(new Found<>(new Chunk.MeterNamed(Meter.of(counts, unit)), after))
                : Optional.empty();
    }

    /** Only what is said to be the line's own tempo; speeds to practise at are the speaker's affair. */
    private Optional<Found<Chunk>> tempo(int i) {
        if (!terms.is(i, Sense.TEMPO)) {
            return Optional.empty();
        }
        int at = terms.isAny(i + 1, Sense.BE, Sense.ON) ? i + 2 : i + 1;
        return hundreds(at)
                .filter(found -> found.value() >= 20 && (at == i + 2 || terms.is(i, Sense.TEMPO)))
                .map(found -> new Found<>(new Chunk.TempoNamed(found.value()), found.after()));
    }

    /** "Ninety six", "a hundred and ten". */
    private Optional<Found<Integer>> hundreds(int i) {
        int at = terms.at(i).raw().equals("a") ? i + 1 : i;
        boolean one = terms.is(at, Sense.NUMBER) && terms.at(at).number(Sense.NUMBER) == 1;
        int hundred = one ? at + 1 : at;
        if (!terms.at(hundred).raw().equals("hundred")) {
            return terms.number(i);
        }
        int rest = terms.is(hundred + 1, Sense.AND) ? hundred + 2 : hundred + 1;
        return Optional.of(terms.number(rest)
                .map(found -> new Found<>(100 + found.value(), found.after()))
                .orElse(new Found<>(100, hundred + 1)));
    }

    private Optional<Found<Chunk>> feel(int i) {
        if (terms.isAny(i, Sense.SWUNG, Sense.STRAIGHT)) {
            return Optional.of(new Found<>(new Chunk.FeelNamed(terms.is(i, Sense.SWUNG)), i + 1));
        }
        return Optional.empty();
    }

    /** "Over Em7", "the chord is A7"; a bare root is not enough. */
    private Optional<Found<Chunk>> chord(int i) {
        if (terms.at(i - 1).raw().equalsIgnoreCase("over")) {
            var root = notes.name(i).filter(found -> !terms.isAny(found.after(), Sense.STRING, Sense.MODE));
            if (root.isPresent()) { // a bare root may be short for any chord on it
                return Optional.of(
                        new Found<>(new Chunk.Tie(Sense.OVER), bass(root.get().after())));
            }
        }
        String raw = terms.at(i).raw();
        boolean symbol = raw.length() > 1 && raw.length() < 12 && Character.isUpperCase(raw.charAt(0));
        if (!symbol || terms.is(i, Sense.LETTER)) {
            return Optional.empty();
        }
        if (terms.at(i - 1).raw().equalsIgnoreCase("over") && raw.endsWith("5")) {
            return Optional.of(new Found<>(new Chunk.Tie(Sense.OVER), i + 1));
        }
        boolean figured = raw.chars().anyMatch(Character::isDigit) || terms.is(i - 1, Sense.OVER);
        return ChordSymbol.parse(raw)
                .filter(chord -> figured)
                .filter(chord -> chord instanceof Chord named && named.quality() != Quality.POWER)
                .map(chord -> new Found<>(new Chunk.ChordNamed(chord), bass(i + 1)));
    }

    /** Past the bass note of a slash chord. */
    private int bass(int i) {
        boolean slash = notes.name(i).isPresent()
                && terms.at(i).from() == terms.at(i - 1).to() + 1;
        return slash ? i + 1 : i;
    }

    /** "The line is eight bars long", "an eight-bar line". */
    private Optional<Found<Chunk>> bars(int i) {
        var number = terms.number(i).filter(found -> terms.is(found.after(), Sense.BAR));
        return number.filter(found -> terms.at(found.after() + 1).raw().equals("long")
                        || terms.is(found.after() + 1, Sense.THE_LINE)
                        || (terms.is(i - 1, Sense.BE) && terms.is(i - 2, Sense.THE_LINE)))
                .map(found -> new Found<>(new Chunk.BarCount(found.value()), found.after() + 1));
    }
}
