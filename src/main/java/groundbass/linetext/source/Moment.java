package groundbass.linetext.source;

import groundbass.score.Count;
import groundbass.score.Fraction;
import groundbass.score.Meter;
import java.util.Optional;

/** A time in a bar as it is typed: a count, and a part of one count past it where no syllable reaches ({@code 2 1/3}). */
public record Moment(Count count, Fraction part) {
    public static Moment at(Fraction offset, Meter meter) {
        var counts = offset.dividedBy(meter.count());
        return Count.at(offset, meter)
                .map(count -> new Moment(count, Fraction.ZERO))
                .orElseGet(() ->
                        new Moment(new Count(Math.toIntExact(counts.floor()) + 1, 0), counts.modulo(Fraction.ONE)));
    }

    /** Reads a count, and a part after it; nothing is taken where there is no count. */
    public static Optional<Moment> read(Tokens tokens) {
        var count = tokens.take(token -> Count.parse(token.text()).isPresent());
        return count.flatMap(token -> Count.parse(token.text())).map(found -> new Moment(found, readPart(tokens)));
    }

    public Fraction offset(Meter meter) {
        return count.offset(meter).plus(meter.count().times(part));
    }

    private static Fraction readPart(Tokens tokens) {
        return tokens.take(token -> part(token.text()).isPresent())
                .flatMap(token -> part(token.text()))
                .orElse(Fraction.ZERO);
    }

    private static Optional<Fraction> part(String text) {
        return TypedNumbers.fraction(text).filter(part -> part.isPositive() && part.isBefore(Fraction.ONE));
    }

    @Override
    public String toString() {
        return part.isZero() ? count.toString() : count + " " + part;
    }
}
