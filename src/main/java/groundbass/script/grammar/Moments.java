package groundbass.script.grammar;

import groundbass.script.lexicon.Category;
import groundbass.script.lexicon.SpokenWords;
import groundbass.script.lexicon.SpokenWords.Found;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/** Reads bars, beats, parts of beats, and how long things last. */
final class Moments {
    private static final int MOST = 64;
    private static final int MOST_COUNTS = 12;

    private static final Pattern SINGULAR = Pattern.compile("(?i)takt(es|s)?|bar|measure");

    /** The number of the bar before the first. */
    private static final int PICKUP = 0;

    private final SpokenWords tokens;
    private final Spans spans;

    Moments(SpokenWords tokens) {
        this.tokens = tokens;
        this.spans = new Spans(tokens);
    }

    Optional<Found<Constituent>> read(int i) {
        return bar(i).or(() -> tokens.is(i, Category.BEAT) ? spans.perBar(i + 1) : Optional.empty())
                .or(() -> spans.share(i))
                .or(() -> part(i))
                .or(() -> beat(i))
                .or(() -> spans.perBar(i))
                .or(() -> spans.lasting(i));
    }

    private Optional<Found<Constituent>> bar(int i) {
        if (tokens.is(i, Category.PICKUP)) {
            int after = tokens.is(i + 1, Category.BAR) ? i + 2 : i + 1;
            return Optional.of(new Found<>(new Constituent.Bars(List.of(PICKUP)), after));
        }
        if (tokens.is(i, Category.BAR)) {
            return numbers(i + 1, Category.BAR)
                    .map(found -> new Found<>(new Constituent.Bars(found.value()), found.after()));
        }
        if (tokens.isAny(i, Category.FINAL_BAR, Category.OPENING_BAR)) {
            boolean last = tokens.is(i, Category.FINAL_BAR);
            return Optional.of(new Found<>(
                    new Constituent.BarAt(last ? Constituent.BarAt.Way.LAST : Constituent.BarAt.Way.FIRST), i + 1));
        }
        int penultimate = afterPenultimate(i);
        if (penultimate > i && tokens.is(penultimate, Category.BAR)) {
            return Optional.of(new Found<>(new Constituent.BarAt(Constituent.BarAt.Way.PENULTIMATE), penultimate + 1));
        }
        var ordinal = tokens.ordinal(i).filter(found -> tokens.is(found.after(), Category.BAR));
        if (ordinal.isPresent() && !tokens.is(ordinal.get().after() + 1, Category.NUMBER)) {
            return ordinal.map(found -> new Found<>(new Constituent.Bars(List.of(found.value())), found.after() + 1));
        }
        var edge = edge(i, Category.BAR);
        if (edge.isPresent()) {
            return edge.map(found ->
                    new Found<>(new Constituent.BarsAtEdge(found.value(), tokens.is(i, Category.LAST)), found.after()));
        }
        boolean pointed = tokens.is(i - 1, Category.IN)
                && tokens.is(i, Category.THAT)
                && tokens.is(i + 1, Category.NEUTRAL)
                && tokens.isEnd(i + 2);
        if (pointed) { // "there are five notes in this one"
            return Optional.of(new Found<>(new Constituent.BarAt(Constituent.BarAt.Way.THIS), i + 2));
        }
        boolean bare = tokens.is(i - 1, Category.IN)
                && tokens.is(i, Category.NUMBER)
                && (tokens.isAny(i + 1, Category.WE, Category.THERE) || isSingular(i + 1));
        if (bare) { // "in six we have"
            return Optional.of(
                    new Found<>(new Constituent.Bars(List.of(tokens.at(i).number(Category.NUMBER))), i + 1));
        }
        boolean plain = tokens.is(i + 1, Category.BAR)
                && tokens.number(i + 2)
                        .filter(found -> !tokens.isCounting(found.after()))
                        .isEmpty();
        boolean ofBar = tokens.is(i - 1, Category.OF)
                && tokens.is(i - 2, Category.NOTE)
                && tokens.isAny(i - 3, Category.LAST, Category.ORDINAL)
                && tokens.is(i, Category.NUMBER)
                && isEnd(i + 1);
        if (ofBar) { // "the last note of two"
            return Optional.of(
                    new Found<>(new Constituent.Bars(List.of(tokens.at(i).number(Category.NUMBER))), i + 1));
        }
        boolean figure = tokens.at(i).raw().matches("\\d{1,2}")
                && tokens.is(i + 1, Category.BAR)
                && SINGULAR.matcher(tokens.at(i + 1).raw()).matches()
                && tokens.at(i).number(Category.NUMBER) > 1;
        if (figure && !tokens.isAny(i + 2, Category.LINE, Category.NUMBER)) { // "im 3. Takt", as it is typed
            return Optional.of(
                    new Found<>(new Constituent.Bars(List.of(tokens.at(i).number(Category.NUMBER))), i + 2));
        }
        var way = plain ? way(i) : Optional.<Constituent.BarAt.Way>empty();
        if (way.isPresent()) {
            return Optional.of(new Found<>(new Constituent.BarAt(way.get()), i + 2));
        }
        boolean counted = tokens.number(i)
                .filter(found -> tokens.is(found.after(), Category.BAR))
                .filter(found -> !tokens.is(found.after() + 1, Category.NUMBER))
                .isPresent();
        return counted
                ? tokens.number(i).map(found -> new Found<>(new Constituent.BarCount(found.value()), found.after() + 1))
                : Optional.empty();
    }

    /** "The first two bars", "the last couple of beats": how many. */
    private Optional<Found<Integer>> edge(int i, Category noun) {
        boolean first = tokens.is(i, Category.ORDINAL) && tokens.at(i).number(Category.ORDINAL) == 1;
        if (!first && !tokens.is(i, Category.LAST)) {
            return Optional.empty();
        }
        var many = tokens.is(i + 1, Category.BOTH) ? Optional.of(new Found<>(2, i + 2)) : tokens.number(i + 1);
        return many.map(found -> new Found<>(found.value(), tokens.skip(found.after(), Category.OF)))
                .filter(found -> tokens.is(found.after(), noun)
                        && found.value() <= MOST
                        && tokens.number(found.after() + 1).isEmpty())
                .map(found -> new Found<>(found.value(), found.after() + 1));
    }

    /** "The opening bar", "the closing bar". */
    private boolean isEdge(int i, Category edge) {
        return tokens.is(i, edge) && tokens.is(i - 1, Category.THE);
    }

    /** "Last but one", "second to last", "next to last": index after it; the same where none is said. */
    private int afterPenultimate(int i) {
        boolean butOne =
                tokens.is(i, Category.LAST) && tokens.is(i + 1, Category.BUT) && tokens.is(i + 2, Category.NEUTRAL);
        boolean second = tokens.is(i, Category.ORDINAL) && tokens.at(i).number(Category.ORDINAL) == 2;
        boolean toLast = (second || tokens.is(i, Category.NEXT))
                && tokens.is(i + 1, Category.TO)
                && tokens.is(i + 2, Category.LAST);
        return butOne || toLast ? i + 3 : i;
    }

    private Optional<Constituent.BarAt.Way> way(int i) {
        if (tokens.is(i, Category.LAST) || isEdge(i, Category.END)) {
            return Optional.of(Constituent.BarAt.Way.LAST);
        }
        if (isEdge(i, Category.START)) {
            return Optional.of(Constituent.BarAt.Way.FIRST);
        }
        if (tokens.is(i, Category.PENULTIMATE)) {
            return Optional.of(Constituent.BarAt.Way.PENULTIMATE);
        }
        if (tokens.is(i, Category.NEXT)) {
            return Optional.of(Constituent.BarAt.Way.NEXT);
        }
        if (tokens.isAny(i, Category.EACH, Category.ALL)) {
            return Optional.of(Constituent.BarAt.Way.EACH);
        }
        boolean the = tokens.isAny(i, Category.THE, Category.THAT, Category.SAME)
                && !tokens.at(i).raw().equals("a");
        return the && !tokens.at(i).raw().equals("an") ? Optional.of(Constituent.BarAt.Way.THIS) : Optional.empty();
    }

    /** "The and of two", "on the and", "the e and the a", "two &". */
    private Optional<Found<Constituent>> part(int i) {
        int the = tokens.skip(tokens.is(i, Category.ON) ? i + 1 : i, Category.THE);
        if (tokens.is(the - 1, Category.THE) && tokens.is(the - 1, Category.PART)) {
            the--; // "the a of two"
        }
        if (tokens.is(the, Category.PART) && tokens.is(the + 1, Category.OF)) {
            int at = tokens.skip(the + 2, Category.THE, Category.BEAT);
            int part = the;
            return tokens.number(at)
                    .map(found -> new Found<>(parts(OptionalInt.of(found.value()), part), found.after()));
        }
        boolean two = tokens.is(i, Category.THE)
                && tokens.is(i + 1, Category.PART)
                && tokens.is(i + 2, Category.AND)
                && tokens.is(i + 3, Category.THE)
                && tokens.is(i + 4, Category.PART);
        if (two) {
            var both = List.of(
                    tokens.at(i + 1).number(Category.PART), tokens.at(i + 4).number(Category.PART));
            return Optional.of(new Found<>(new Constituent.Parts(OptionalInt.empty(), both), i + 5));
        }
        boolean alone = tokens.is(i, Category.ON) && tokens.is(i + 1, Category.THE) && isAnd(i + 2)
                || tokens.is(i, Category.THE) && isAnd(i + 1) && isEnd(i + 2);
        if (alone) {
            int at = tokens.is(i, Category.ON) ? i + 2 : i + 1;
            return Optional.of(new Found<>(parts(OptionalInt.empty(), at), at + 1));
        }
        var number = tokens.number(onThe(i));
        boolean sign = number.isPresent()
                && tokens.is(number.get().after(), Category.PART)
                && tokens.at(number.get().after()).raw().equals("&");
        boolean spoken = number.isPresent()
                && onThe(i) > i
                && isAnd(number.get().after())
                && isAfterPart(number.get().after() + 1);
        return sign || spoken
                ? number.map(
                        found -> new Found<>(parts(OptionalInt.of(found.value()), found.after()), found.after() + 1))
                : Optional.empty();
    }

    private Constituent parts(OptionalInt beat, int at) {
        return new Constituent.Parts(beat, List.of(tokens.at(at).number(Category.PART)));
    }

    private boolean isAnd(int i) {
        return tokens.is(i, Category.PART) && tokens.is(i, Category.AND);
    }

    private boolean isEnd(int i) {
        return tokens.isEnd(i) || tokens.isAny(i, Category.BE, Category.PLAY, Category.HAVE);
    }

    /** What may come after "on two and". */
    private boolean isAfterPart(int i) {
        return tokens.isEnd(i)
                || tokens.isAny(i, Category.BE, Category.PLAY, Category.HAVE, Category.WE)
                || isAnd(i) && tokens.isLowered(); // "on two and and then"
    }

    /** Past "on", "on the", or the article of a German count; the same index where there is neither. */
    private int onThe(int i) {
        if (tokens.is(i, Category.ON)) {
            return tokens.is(i + 1, Category.THE) ? i + 2 : i + 1;
        }
        boolean article =
                tokens.is(i, Category.THE) && tokens.at(i + 1).isCapital() && !tokens.is(i + 1, Category.LETTER);
        boolean subject = tokens.is(i, Category.THE)
                && tokens.is(i + 1, Category.NUMBER)
                && (isSingular(i + 2) || isOpening(i + 2) || isOfBar(i + 2));
        return article || subject ? i + 1 : i;
    }

    /** "Die Zwei fängt mit ... an". */
    private boolean isOpening(int i) {
        boolean edge = tokens.isAny(i, Category.START, Category.END)
                && tokens.at(i).raw().matches(".*[ts]");
        boolean one = tokens.is(i, Category.PLAY) && tokens.at(i).raw().matches("(?!.*st$).*[eh]t|kommt|hat");
        return edge || one;
    }

    /** "Die Drei in Takt zwei". */
    private boolean isOfBar(int i) {
        return tokens.isAny(i, Category.IN, Category.OF) && tokens.isAny(i + 1, Category.BAR);
    }

    private boolean isSingular(int i) {
        return tokens.is(i, Category.BE) && !tokens.at(i).raw().equals("are");
    }

    /** "The second of the four", "the last one of three": a number of things that were told, and no beat. */
    private boolean isOfSeveral(int i) {
        int of = tokens.is(i - 1, Category.THE) ? i - 2 : i - 1;
        int which = tokens.is(of - 1, Category.NEUTRAL) ? of - 2 : of - 1;
        return tokens.is(tokens.skip(i, Category.THE), Category.NUMBER)
                && tokens.is(of, Category.OF)
                && tokens.isAny(which, Category.LAST, Category.ORDINAL, Category.MIDDLE);
    }

    private Optional<Found<Constituent>> beat(int i) {
        if (isOfSeveral(i)) {
            return Optional.empty();
        }
        int at = tokens.skip(tokens.is(i, Category.ON) ? i + 1 : i, Category.THE);
        boolean led = at > i
                && (tokens.is(at, Category.BEAT)
                        || tokens.isAny(at, Category.LAST, Category.ORDINAL) && tokens.is(at + 1, Category.BEAT));
        if (led) {
            return Optional.empty(); // the preposition is a word of its own
        }
        if (tokens.is(at, Category.BEAT)) {
            return numbers(at + 1, Category.BEAT)
                    .map(found -> new Found<>(new Constituent.Beats(found.value()), found.after()));
        }
        var ofNumber = tokens.is(at, Category.PULSE) && tokens.is(at + 1, Category.OF)
                ? tokens.number(at + 2).filter(found -> !tokens.isCounting(found.after()))
                : Optional.<Found<Integer>>empty();
        if (ofNumber.isPresent()) { // "the downbeat of four"
            return ofNumber.map(found -> new Found<>(new Constituent.Beats(List.of(found.value())), found.after()));
        }
        if (tokens.is(at, Category.PULSE)) {
            return Optional.of(new Found<>(new Constituent.Beats(List.of(1)), at + 1));
        }
        if (tokens.is(at, Category.LAST) && tokens.is(at + 1, Category.BEAT)) {
            return Optional.of(new Found<>(new Constituent.LastBeats(1), at + 2));
        }
        var edge = edge(at, Category.BEAT).filter(found -> found.value() <= MOST_COUNTS);
        if (edge.isPresent()) {
            boolean last = tokens.is(at, Category.LAST);
            return edge.map(found -> new Found<>(edgeBeats(found.value(), last), found.after()));
        }
        var ordinal = tokens.ordinal(at).filter(found -> tokens.is(found.after(), Category.BEAT));
        if (ordinal.isPresent()) {
            return ordinal.map(found -> new Found<>(new Constituent.Beats(List.of(found.value())), found.after() + 1));
        }
        boolean begins = i == 0 || i == 1 && tokens.isAny(0, Category.AND, Category.SO, Category.THEN);
        boolean twice = begins
                && tokens.is(i, Category.NUMBER)
                && tokens.is(i + 1, Category.COMMA)
                && isCounted(i + 2)
                && tokens.at(i).number(Category.NUMBER) == tokens.at(i + 2).number(Category.NUMBER);
        if (twice) { // "three, three-and: ..."
            return Optional.of(
                    new Found<>(new Constituent.Beats(List.of(tokens.at(i).number(Category.NUMBER))), i + 4));
        }
        if (begins && isCounted(i)) { // "two-and: ..."
            return Optional.of(new Found<>(parts(OptionalInt.of(tokens.at(i).number(Category.NUMBER)), i + 1), i + 2));
        }
        var ofBar = tokens.number(i)
                .filter(found -> tokens.is(found.after(), Category.OF)
                        && tokens.isAny(found.after() + 1, Category.THE, Category.THAT)
                        && tokens.is(found.after() + 2, Category.BAR));
        if (ofBar.isPresent()) { // "four of that bar"
            return ofBar.map(found -> new Found<>(new Constituent.Beats(List.of(found.value())), found.after()));
        }
        boolean bareBeat =
                begins && tokens.is(i, Category.NUMBER) && (isSingular(i + 1) || tokens.is(i + 1, Category.COLON));
        if (bareBeat) { // "and four is a rest", "three: slide ..."
            return Optional.of(
                    new Found<>(new Constituent.Beats(List.of(tokens.at(i).number(Category.NUMBER))), i + 1));
        }
        boolean path = tokens.isAny(i - 1, Category.OF, Category.FROM, Category.TO)
                && tokens.is(i, Category.THE)
                && tokens.is(i + 1, Category.NUMBER)
                && tokens.isAny(i + 2, Category.TO, Category.BE, Category.PLAY);
        if (path) { // "von der zwei zur drei"
            return Optional.of(
                    new Found<>(new Constituent.Beats(List.of(tokens.at(i + 1).number(Category.NUMBER))), i + 2));
        }
        int bare = onThe(i);
        return bare == i
                ? Optional.empty()
                : numbers(bare, Category.BEAT)
                        .filter(found -> found.value().stream().allMatch(number -> number <= MOST_COUNTS)
                                && !tokens.isCounting(found.after()))
                        .map(found -> new Found<>(new Constituent.Beats(found.value()), found.after()));
    }

    /** "Two-and" before a colon. */
    private boolean isCounted(int i) {
        return tokens.is(i, Category.NUMBER)
                && isAnd(i + 1)
                && tokens.at(i + 2).raw().equals(":");
    }

    private static Constituent edgeBeats(int many, boolean last) {
        return last
                ? new Constituent.LastBeats(many)
                : new Constituent.Beats(IntStream.rangeClosed(1, many).boxed().toList());
    }

    /** "One and two", "3, 4 and 5", "one to four"; the noun may be said again. */
    private Optional<Found<List<Integer>>> numbers(int i, Category noun) {
        var first = tokens.number(i).filter(found -> !tokens.isCounting(found.after()));
        if (first.isEmpty()) {
            return Optional.empty();
        }
        var all = new ArrayList<>(List.of(first.get().value()));
        int after = first.get().after();
        while (all.size() < MOST && tokens.isAny(after, Category.AND, Category.COMMA, Category.TO)) {
            int next = tokens.skip(after, Category.AND, Category.COMMA, Category.TO, noun);
            var number = tokens.number(next)
                    .filter(found -> !tokens.isCounting(found.after())
                            && (!tokens.is(found.after(), Category.BAR)
                                    || tokens.is(found.after() + 1, Category.NUMBER)));
            int last = all.get(all.size() - 1);
            boolean apart = tokens.isLowered()
                    && tokens.is(next - 1, noun)
                    && number.filter(found -> isSingular(found.after())).isPresent();
            if (apart) {
                break; // "... bar one and bar six is ..."
            }
            if (number.isEmpty() || number.get().value() <= last || number.get().value() - last > MOST) {
                break;
            }
            boolean range = tokens.is(after, Category.TO);
            all.addAll(
                    range
                            ? IntStream.rangeClosed(last + 1, number.get().value())
                                    .boxed()
                                    .toList()
                            : List.of(number.get().value()));
            after = number.get().after();
        }
        return Optional.of(new Found<>(all, after));
    }
}
