package groundbass.script.reading;

import groundbass.score.Fraction;
import groundbass.script.claims.Chunk;
import groundbass.script.words.Found;
import groundbass.script.words.Sense;
import groundbass.script.words.Terms;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;

/** Reads note lengths and rests: "a dotted eighth and a sixteenth", "two sixteenths", "an eighth-note rest". */
final class NoteLengths {
    private static final int MOST_NOTES = 16;

    private final Terms terms;

    NoteLengths(Terms terms) {
        this.terms = terms;
    }

    private record Amount(int many, Fraction length) {}

    Optional<Found<Chunk>> row(int i) {
        var first = amount(i);
        if (first.isEmpty()) {
            return Optional.empty();
        }
        var each = new ArrayList<>(copies(first.get().value()));
        int after = first.get().after();
        while (each.size() < MOST_NOTES) {
            var next = terms.separator(after).flatMap(found -> amount(terms.skipArticles(found.after())));
            if (next.isEmpty()) {
                break;
            }
            each.addAll(copies(next.get().value()));
            after = next.get().after();
        }
        return Optional.of(new Found<>(new Chunk.Lengths(each), after));
    }

    private static List<Fraction> copies(Amount amount) {
        return Collections.nCopies(amount.many(), amount.length());
    }

    private Optional<Found<Amount>> amount(int i) {
        var number = terms.number(i);
        if (number.filter(found -> found.value() < 1 || found.value() > MOST_NOTES)
                .isPresent()) {
            return Optional.empty();
        }
        int at = number.map(Found::after).orElse(i);
        while (number.isPresent() && terms.isAny(at, Sense.PLAIN, Sense.GLUE) && at < i + 4) {
            at++;
        }
        int many = number.map(Found::value).orElse(1);
        return length(at)
                .filter(found -> !terms.is(found.after(), Sense.REST) && !isShareOf(found.after()))
                .map(found -> new Found<>(new Amount(many, found.value()), found.after()));
    }

    /** "Three quarters of a whole tone". */
    private boolean isShareOf(int i) {
        return terms.is(i, Sense.OF) && terms.at(i + 1).raw().equals("a");
    }

    /** "Eighth" and "sixteenth" may also count frets, bars or beats. */
    private Optional<Found<Fraction>> length(int i) {
        boolean dotted = terms.is(i, Sense.DOTTED);
        int at = dotted ? i + 1 : i;
        if (!terms.is(at, Sense.LENGTH) || (!dotted && isOrdinal(at))) {
            return Optional.empty();
        }
        var plain = Fraction.of(1, terms.at(at).number(Sense.LENGTH));
        return Optional.of(new Found<>(dotted ? plain.times(Fraction.of(3, 2)) : plain, at + 1));
    }

    private boolean isOrdinal(int i) {
        return terms.is(i, Sense.ORDINAL)
                && (terms.isAny(i + 1, Sense.FRET, Sense.BAR, Sense.BEAT, Sense.STRING, Sense.FINGER)
                        || (terms.is(i - 1, Sense.THE)
                                && !List.of("a", "an").contains(terms.at(i - 1).raw())
                                && terms.isAny(i - 2, Sense.TO, Sense.FROM, Sense.AND))
                        || terms.is(i - 1, Sense.TO));
    }

    /** A rest as a thing, not the resting of a hand. */
    Optional<Found<Chunk>> silence(int i) {
        var length = length(i).filter(found -> terms.is(found.after(), Sense.REST));
        if (length.isPresent()) {
            return Optional.of(new Found<>(
                    new Chunk.Silence(Optional.of(length.get().value())),
                    length.get().after() + 1));
        }
        boolean rest = terms.is(i, Sense.REST) && !terms.isAny(i + 1, Sense.OF, Sense.TO);
        return rest ? Optional.of(new Found<>(new Chunk.Silence(Optional.empty()), i + 1)) : Optional.empty();
    }

    /** "For two beats", "rings for the whole bar". */
    Optional<Found<Chunk>> lasting(int i) {
        if (!terms.is(i, Sense.HOLD)) {
            return Optional.empty();
        }
        int at = terms.is(i + 1, Sense.HOLD) ? i + 2 : i + 1;
        int after = terms.skipArticles(at);
        if (terms.is(after, Sense.WHOLE_BAR)) {
            return Optional.of(new Found<>(new Chunk.Lasts(0, true), after + 1));
        }
        boolean said = !terms.is(i, Sense.LAST) || terms.is(i + 1, Sense.HOLD);
        return terms.number(after)
                .filter(found -> said
                        && terms.is(found.after(), Sense.BEAT)
                        && terms.number(found.after() + 1).isEmpty())
                .map(found -> new Found<>(new Chunk.Lasts(found.value(), false), found.after() + 1));
    }
}
