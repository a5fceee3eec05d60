package groundbass.script.reading;

import groundbass.score.Tuning;
import groundbass.script.claims.Chunk;
import groundbass.script.claims.Manner;
import groundbass.script.claims.Said;
import groundbass.script.words.Found;
import groundbass.script.words.Sense;
import groundbass.script.words.Terms;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/** Cuts a sentence into chunks: at every word the first reader that finds something has it. */
final class Chunker {
    /** Words that tie chunks together, in the order in which they are looked for. */
    private static final List<Sense> TIES = List.of(
            Sense.UNREAL,
            Sense.IF,
            Sense.OOPS,
            Sense.INSTEAD,
            Sense.NOT,
            Sense.SAME_RHYTHM,
            Sense.EQUAL_PITCH,
            Sense.SAME,
            Sense.NEARLY,
            Sense.TUPLET,
            Sense.VOICE,
            Sense.LEAD,
            Sense.UNTIL,
            Sense.EXCEPT,
            Sense.CHANGES,
            Sense.SEMICOLON,
            Sense.COLON,
            Sense.COMMA,
            Sense.BUT,
            Sense.SO,
            Sense.THEN,
            Sense.AND,
            Sense.PRONOUN,
            Sense.THAT,
            Sense.BE,
            Sense.AGAIN,
            Sense.TOGETHER,
            Sense.THE_LINE,
            Sense.TO,
            Sense.FROM,
            Sense.QUESTION,
            Sense.OVER,
            Sense.NOTE,
            Sense.PLAIN);

    private static final Set<Manner> PATHS = Set.of(Manner.HAMMER, Manner.PULL, Manner.SLIDE);

    private final Terms terms;
    private final NoteNames notes;
    private final PlaceNames places;
    private final Moments moments;
    private final NoteLengths lengths;
    private final Heads heads;

    private Chunker(Terms terms, Tuning tuning) {
        this.terms = terms;
        this.notes = new NoteNames(terms);
        this.places = new PlaceNames(terms, notes, tuning);
        this.moments = new Moments(terms);
        this.lengths = new NoteLengths(terms);
        this.heads = new Heads(terms, notes);
    }

    static List<Said> chunks(Terms terms, Tuning tuning) {
        var chunker = new Chunker(terms, tuning);
        var chunks = new ArrayList<Said>();
        int i = 0;
        while (i < terms.size()) {
            var found = chunker.at(i);
            if (found.isPresent()) {
                int after = Math.max(i + 1, found.get().after());
                chunks.add(new Said(
                        found.get().value(),
                        i,
                        after,
                        terms.at(i).from(),
                        terms.at(after - 1).to()));
                i = after;
            } else {
                i++;
            }
        }
        return chunks;
    }

    private Optional<Found<Chunk>> at(int i) {
        return moments.bar(i)
                .or(() -> heads.read(i))
                .or(() -> moments.part(i))
                .or(() -> moments.beat(i))
                .or(() -> order(i))
                .or(() -> hand(i))
                .or(() -> finger(i))
                .or(() -> octaves(i))
                .or(() -> moved(i))
                .or(() -> places.row(i))
                .or(() -> afterManner(i))
                .or(() -> places.bare(i))
                .or(() -> places.loose(i).filter(found -> wantsString(i)))
                .or(() -> lengths.lasting(i))
                .or(() -> lengths.silence(i))
                .or(() -> lengths.row(i))
                .or(() -> notes.row(i))
                .or(() -> played(i))
                .or(() -> tie(i));
    }

    /** "The first note", "the last two sixteenths", "starts on", "the final G". */
    private Optional<Found<Chunk>> order(int i) {
        if (terms.is(i, Sense.HIGHEST) || terms.is(i, Sense.LOWEST)) {
            boolean noun =
                    terms.at(i).to() - terms.at(i).from() > terms.at(i).raw().length();
            boolean ofNotes = noun || terms.is(i + 1, Sense.NOTE);
            var which = terms.is(i, Sense.HIGHEST) ? Chunk.Which.HIGHEST : Chunk.Which.LOWEST;
            return ofNotes ? Optional.of(new Found<>(new Chunk.Order(which, 1, true), i + 1)) : Optional.empty();
        }
        if (terms.is(i, Sense.START) && !terms.is(i + 1, Sense.TO)) {
            return Optional.of(new Found<>(new Chunk.Order(Chunk.Which.FIRST, 1, true), i + 1));
        }
        if (terms.is(i, Sense.END)) {
            boolean noun = terms.at(i).raw().equals("end") && terms.is(i + 1, Sense.OF);
            var which = noun ? Chunk.Which.ENDING : Chunk.Which.LAST;
            return Optional.of(new Found<>(new Chunk.Order(which, 1, true), i + 1));
        }
        return terms.is(i, Sense.LAST) ? counted(i, i + 1, Chunk.Which.LAST, 1) : nth(i);
    }

    private Optional<Found<Chunk>> nth(int i) {
        return terms.ordinal(i)
                .flatMap(found -> found.value() == 1
                        ? counted(i, found.after(), Chunk.Which.FIRST, 1)
                        : counted(i, found.after(), Chunk.Which.NTH, found.value()));
    }

    /** An order is one where it orders notes; which, the next terms tell. */
    private Optional<Found<Chunk>> counted(int i, int from, Chunk.Which which, int nth) {
        int at = from;
        while (terms.is(at, Sense.REGISTER)) {
            at++;
        }
        var number = terms.number(at).filter(found -> which != Chunk.Which.NTH);
        int noun = number.map(Found::after).orElse(at);
        boolean ofNotes = terms.isAny(noun, Sense.NOTE, Sense.LENGTH, Sense.DOTTED)
                || notes.name(noun)
                        .filter(found -> !terms.is(found.after(), Sense.STRING))
                        .isPresent()
                || (terms.is(noun, Sense.MANNER) && which != Chunk.Which.NTH)
                || (number.isPresent() && terms.is(noun, Sense.BE));
        boolean isFret = terms.isAny(from, Sense.FRET, Sense.STRING, Sense.FINGER);
        return ofNotes && !isFret
                ? Optional.of(new Found<>(
                        new Chunk.Order(which, number.map(Found::value).orElse(nth), terms.is(noun, Sense.NOTE)),
                        i + 1))
                : Optional.empty();
    }

    /** "Index finger at fret 5" in a heading: where the hand lies, and no note. */
    private Optional<Found<Chunk>> hand(int i) {
        boolean lies = terms.is(i, Sense.FINGER_NAME) && terms.isAny(i + 1, Sense.ON, Sense.IN) && isHeading(i);
        return lies
                ? places.row(terms.skipArticles(i + 2))
                        .map(found -> new Found<>(new Chunk.Tie(Sense.PLAIN), found.after()))
                : Optional.empty();
    }

    /** Whether a colon comes later in the sentence, as after the place that a sentence begins with. */
    private boolean isHeading(int i) {
        return IntStream.range(i, terms.size()).anyMatch(at -> terms.is(at, Sense.COLON));
    }

    private Optional<Found<Chunk>> finger(int i) {
        var ordinal = terms.ordinal(i).filter(found -> terms.is(found.after(), Sense.FINGER) && found.value() <= 4);
        if (ordinal.isPresent()) {
            return Optional.of(new Found<>(
                    new Chunk.Finger(ordinal.get().value()), ordinal.get().after() + 1));
        }
        return terms.is(i, Sense.FINGER_NAME)
                ? Optional.of(new Found<>(new Chunk.Finger(terms.at(i).number(Sense.FINGER_NAME)), i + 1))
                : Optional.empty();
    }

    private Optional<Found<Chunk>> octaves(int i) {
        var number = terms.number(i).filter(found -> terms.is(found.after(), Sense.OCTAVE));
        int at = number.map(Found::after).orElse(i);
        if (!terms.is(at, Sense.OCTAVE) || notes.name(at + 1).isPresent()) {
            return Optional.empty();
        }
        int many = number.map(Found::value).orElse(1);
        int direction = terms.is(at + 1, Sense.ABOVE) ? 1 : terms.is(at + 1, Sense.BELOW) ? -1 : 0;
        if (terms.is(at + 1, Sense.OF)) {
            return Optional.of(new Found<>(new Chunk.Octaves(many, 0), at + 2));
        }
        boolean said = direction != 0 || terms.is(at + 1, Sense.APART);
        return said ? Optional.of(new Found<>(new Chunk.Octaves(many, direction), at + 2)) : Optional.empty();
    }

    /** "Moved up two frets", "two frets higher". */
    private Optional<Found<Chunk>> moved(int i) {
        if (terms.is(i, Sense.MOVED) && terms.isAny(i + 1, Sense.ABOVE, Sense.BELOW)) {
            int at = terms.at(i + 2).raw().equals("a") ? i + 3 : i + 2;
            var number = at == i + 3 ? Optional.of(new Found<>(1, at)) : terms.number(at);
            int sign = terms.is(i + 1, Sense.ABOVE) ? 1 : -1;
            return number.filter(found -> terms.is(found.after(), Sense.FRET))
                    .map(found -> new Found<>(new Chunk.Moved(sign * found.value()), found.after() + 1));
        }
        return terms.number(i)
                .filter(found ->
                        terms.is(found.after(), Sense.FRET) && terms.isAny(found.after() + 1, Sense.ABOVE, Sense.BELOW))
                .map(found -> new Found<>(
                        new Chunk.Moved(terms.is(found.after() + 1, Sense.ABOVE) ? found.value() : -found.value()),
                        found.after() + 2));
    }

    /** "To the seventh" after a hammer, a pull or a slide. */
    private Optional<Found<Chunk>> afterManner(int i) {
        boolean targeted = terms.isAny(i - 1, Sense.TO, Sense.FROM) && followsPath(i - 1);
        return targeted ? places.target(i) : Optional.empty();
    }

    private boolean followsPath(int i) {
        for (int at = i - 1; at >= Math.max(0, i - 4); at--) {
            if (terms.is(at, Sense.MANNER)) {
                return PATHS.contains(Manner.valueOf(terms.at(at).value(Sense.MANNER)));
            }
        }
        return false;
    }

    private boolean wantsString(int i) {
        return terms.is(i - 1, Sense.MANNER) || terms.isAny(i - 1, Sense.FRET, Sense.NOTE, Sense.LENGTH);
    }

    /** A technique, with the number of notes that it is said of; "two-note" is no technique but a pair. */
    private Optional<Found<Chunk>> played(int i) {
        if (terms.is(i, Sense.PAIR) && (terms.at(i).to() - terms.at(i).from() > 6 || terms.is(i + 1, Sense.MANNER))) {
            return Optional.of(new Found<>(new Chunk.Pair(), i + 1));
        }
        boolean twoNote = terms.number(i).filter(found -> found.value() == 2).isPresent()
                && terms.is(i + 1, Sense.NOTE)
                && terms.is(i + 2, Sense.MANNER);
        if (twoNote) {
            return Optional.of(new Found<>(new Chunk.Pair(), i + 2));
        }
        var number = terms.number(i).filter(found -> terms.is(found.after(), Sense.MANNER));
        int at = number.map(Found::after).orElse(i);
        if (!terms.is(at, Sense.MANNER)) {
            return Optional.empty();
        }
        var manner = Manner.valueOf(terms.at(at).value(Sense.MANNER));
        return Optional.of(
                new Found<>(new Chunk.Played(manner, number.map(Found::value).orElse(1)), at + 1));
    }

    private Optional<Found<Chunk>> tie(int i) {
        return TIES.stream()
                .filter(sense -> terms.is(i, sense))
                .findFirst()
                .map(sense -> new Found<>(new Chunk.Tie(sense), i + 1));
    }
}
