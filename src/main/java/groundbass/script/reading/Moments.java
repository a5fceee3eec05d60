package groundbass.script.reading;

import groundbass.script.claims.Chunk;
import groundbass.script.words.Found;
import groundbass.script.words.Sense;
import groundbass.script.words.Terms;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Reads bars, beats and parts of beats: "bars one and two", "on beat 3", "the first three beats", "the and of four". */
final class Moments {
    private static final int MOST_IN_A_RANGE = 64;

    private final Terms terms;

    Moments(Terms terms) {
        this.terms = terms;
    }

    Optional<Found<Chunk>> bar(int i) {
        if (terms.is(i, Sense.BAR)) {
            return numbers(i + 1).map(found -> new Found<>(new Chunk.Bars(found.value()), found.after()));
        }
        var alone = alone(i);
        if (alone.isPresent()) {
            return alone;
        }
        var ordinal = terms.ordinal(i);
        if (ordinal.isPresent()) {
            return several(ordinal.get(), Sense.BAR)
                    .map(found -> new Found<>(new Chunk.Bars(found.value()), found.after()));
        }
        if (terms.is(i, Sense.PICKUP)) {
            return Optional.of(new Found<>(new Chunk.BarAt(Chunk.BarAt.Way.PICKUP), i + 1));
        }
        boolean bar = terms.is(i + 1, Sense.BAR) && terms.number(i + 2).isEmpty();
        if (bar && terms.is(i, Sense.NEXT)) {
            return Optional.of(new Found<>(new Chunk.BarAt(Chunk.BarAt.Way.NEXT), i + 2));
        }
        if (bar && terms.is(i, Sense.LAST)) {
            return Optional.of(new Found<>(new Chunk.BarAt(Chunk.BarAt.Way.LAST), i + 2));
        }
        return bar && terms.isAny(i, Sense.THIS) && !terms.is(i, Sense.SAME)
                ? Optional.of(new Found<>(new Chunk.BarAt(Chunk.BarAt.Way.THIS), i + 2))
                : Optional.empty();
    }

    /** "The seventh bar is the same as the first." */
    private Optional<Found<Chunk>> alone(int i) {
        boolean compared = terms.is(i - 1, Sense.SAME) || (terms.is(i - 1, Sense.THE) && terms.is(i - 2, Sense.SAME));
        boolean bars = terms.has(Sense.BAR) && !terms.has(Sense.NOTE);
        return terms.ordinal(i)
                .filter(found -> compared && bars && terms.isBreak(found.after()))
                .map(found -> new Found<>(new Chunk.Bars(List.of(found.value())), found.after()));
    }

    Optional<Found<Chunk>> beat(int i) {
        boolean exactly = terms.isAny(i, Sense.EXACTLY) && !terms.is(i, Sense.THE);
        int at = exactly ? terms.skipArticles(i + 1) : i;
        return downbeat(at)
                .or(() -> terms.is(at, Sense.BEAT)
                        ? numbers(at + 1).map(found -> beats(found.value(), exactly, found.after()))
                        : Optional.empty())
                .or(() -> terms.ordinal(at)
                        .flatMap(ordinal -> several(ordinal, Sense.BEAT))
                        .map(found -> beats(found.value(), exactly, found.after())))
                .or(() -> lastBeats(at))
                .or(() -> exactly ? bare(at, true) : Optional.empty())
                .or(() -> terms.is(at, Sense.ON) ? bare(terms.skipArticles(at + 1), false) : Optional.empty());
    }

    private static Found<Chunk> beats(List<Integer> numbers, boolean exactly, int after) {
        return new Found<>(new Chunk.Beats(numbers, exactly), after);
    }

    /** "On four", where nothing else is counted by the number. */
    private Optional<Found<Chunk>> bare(int i, boolean exactly) {
        return terms.number(i)
                .filter(found -> found.value() <= 12 && endsMoment(found.after()))
                .map(found -> beats(List.of(found.value()), exactly, found.after()));
    }

    private boolean endsMoment(int i) {
        boolean inBar = terms.isAny(i, Sense.OF, Sense.IN) && terms.isAny(i + 1, Sense.BAR, Sense.ORDINAL);
        return inBar || (terms.isBreak(i) && !terms.is(i, Sense.TO));
    }

    private Optional<Found<Chunk>> downbeat(int i) {
        if (!terms.is(i, Sense.DOWNBEAT)) {
            return Optional.empty();
        }
        var number = terms.is(i + 1, Sense.OF)
                ? terms.number(terms.is(i + 2, Sense.BEAT) ? i + 3 : i + 2)
                : Optional.<Found<Integer>>empty();
        return Optional.of(number.map(found -> beats(List.of(found.value()), true, found.after()))
                .orElse(beats(List.of(1), true, i + 1)));
    }

    /** "The third beat", "the first three beats". */
    private Optional<Found<List<Integer>>> several(Found<Integer> ordinal, Sense noun) {
        int after = ordinal.after();
        if (terms.is(after, noun) && terms.number(after + 1).isEmpty()) {
            return Optional.of(new Found<>(List.of(ordinal.value()), after + 1));
        }
        return ordinal.value() == 1
                ? terms.number(after)
                        .filter(found -> terms.is(found.after(), noun) && found.value() <= MOST_IN_A_RANGE)
                        .map(found -> new Found<>(range(1, found.value()), found.after() + 1))
                : Optional.empty();
    }

    private Optional<Found<Chunk>> lastBeats(int i) {
        if (!terms.is(i, Sense.LAST)) {
            return Optional.empty();
        }
        var number = terms.number(i + 1).filter(found -> terms.is(found.after(), Sense.BEAT));
        if (number.isPresent()) {
            return Optional.of(new Found<>(
                    new Chunk.LastBeats(number.get().value()), number.get().after() + 1));
        }
        return terms.is(i + 1, Sense.BEAT) ? Optional.of(new Found<>(new Chunk.LastBeats(1), i + 2)) : Optional.empty();
    }

    /** "The and of two", "2&", "the e of beat one", and "on the a", whose beat is the one spoken of. */
    Optional<Found<Chunk>> part(int i) {
        if (terms.is(i, Sense.PART) && terms.is(i + 1, Sense.OF)) {
            int at = terms.skipArticles(i + 2);
            return terms.number(terms.is(at, Sense.BEAT) ? at + 1 : at)
                    .map(found -> part(Optional.of(found.value()), i, found.after()));
        }
        var number = terms.number(i);
        boolean joined = number.isPresent()
                && terms.is(i + 1, Sense.PART)
                && (terms.at(i).to() == terms.at(i + 1).from()
                        || terms.at(i + 1).raw().equals("&"));
        if (joined) {
            return number.map(found -> part(Optional.of(found.value()), i + 1, i + 2));
        }
        boolean loose = terms.isAny(i, Sense.ON, Sense.EXACTLY)
                && terms.is(i + 1, Sense.THE)
                && terms.is(i + 2, Sense.PART)
                && !Character.isUpperCase(terms.at(i + 2).raw().charAt(0))
                && terms.isBreak(i + 3);
        return loose ? Optional.of(part(Optional.empty(), i + 2, i + 3)) : Optional.empty();
    }

    private Found<Chunk> part(Optional<Integer> beat, int at, int after) {
        return new Found<>(new Chunk.Part(beat, terms.at(at).number(Sense.PART)), after);
    }

    /** "One and two", "3, 4 and 5", "one to four". */
    private Optional<Found<List<Integer>>> numbers(int i) {
        var first = terms.number(i);
        if (first.isEmpty()) {
            return Optional.empty();
        }
        var numbers = new ArrayList<>(List.of(first.get().value()));
        int after = first.get().after();
        while (numbers.size() < MOST_IN_A_RANGE) {
            int at = after;
            var next = terms.separator(at)
                    .flatMap(found -> terms.number(found.after()))
                    .filter(found -> isPlural(i - 1) && !isCounting(found.after()));
            if (next.isEmpty()) {
                break;
            }
            boolean range = terms.is(at, Sense.TO);
            int last = numbers.get(numbers.size() - 1);
            boolean rising = range && next.get().value() > last && next.get().value() - last < MOST_IN_A_RANGE;
            numbers.addAll(
                    rising
                            ? range(last + 1, next.get().value())
                            : List.of(next.get().value()));
            after = next.get().after();
        }
        return Optional.of(new Found<>(numbers, after));
    }

    private boolean isPlural(int noun) {
        return terms.at(noun).raw().endsWith("s") || terms.at(noun).raw().endsWith("e");
    }

    private boolean isCounting(int i) {
        return terms.isAny(
                i, Sense.LENGTH, Sense.MANNER, Sense.NOTE, Sense.DOTTED, Sense.FRET, Sense.OCTAVE, Sense.PLAIN);
    }

    private static List<Integer> range(int from, int to) {
        return IntStream.rangeClosed(from, to).boxed().toList();
    }
}
