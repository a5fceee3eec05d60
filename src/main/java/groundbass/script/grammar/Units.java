package groundbass.script.grammar;

import groundbass.script.grammar.Constituent.Tie;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/** What units are by themselves and beside one another: verbs, moments, separators, and what carries a meaning. */
final class Units {
    private static final Set<Tie> VERBS =
            Set.of(Tie.BE, Tie.HAVE, Tie.PLAY, Tie.START, Tie.END, Tie.HOLD, Tie.CLIMB, Tie.FALL, Tie.CHANGE);
    private static final Set<Tie> SEPARATORS =
            Set.of(Tie.COMMA, Tie.COLON, Tie.SEMICOLON, Tie.AND, Tie.BUT, Tie.SO, Tie.THEN, Tie.STOP, Tie.ASK);

    private Units() {}

    static boolean isSeparator(Read read) {
        return read.unit() instanceof Constituent.Small small && SEPARATORS.contains(small.tie());
    }

    static boolean isVerb(Read read) {
        return read.unit() instanceof Constituent.Small small && VERBS.contains(small.tie())
                || read.unit() instanceof Constituent.Played;
    }

    /** Whether something is said to be somewhere without a verb: "bar one, four sixteenths". */
    static boolean isPlaced(List<Read> some) {
        return some.stream().anyMatch(Units::isMoment)
                && some.stream()
                        .anyMatch(read -> isContent(read) && !isMoment(read) && !read.is(Constituent.Unknown.class));
    }

    static boolean hasVerb(List<Read> some) {
        return IntStream.range(0, some.size()).anyMatch(i -> isPlainVerb(some, i))
                || some.stream().anyMatch(read -> read.is(Tie.WE))
                        && some.stream().anyMatch(Units::isVerb);
    }

    /** "At the end" is no verb. */
    static boolean isPlainVerb(List<Read> some, int i) {
        var read = some.get(i);
        boolean edge = read.is(Tie.END) || read.is(Tie.START);
        boolean noun =
                edge && i > 0 && (some.get(i - 1).is(Tie.AT) || some.get(i - 1).is(Tie.THE));
        return read.unit() instanceof Constituent.Small && isVerb(read) && !noun;
    }

    static boolean isBeat(Read read) {
        return read.is(Constituent.Beats.class) || read.is(Constituent.Parts.class);
    }

    static boolean isBeforeNoun(Read read) {
        return isPreposition(read) || read.is(Tie.AFTER) || read.is(Tie.WITH) || read.is(Tie.FROM) || read.is(Tie.FOR);
    }

    static boolean isPreposition(Read read) {
        return read.is(Tie.ON) || read.is(Tie.IN) || read.is(Tie.OF) || read.is(Tie.AT) || read.is(Tie.TO);
    }

    static boolean isMoment(List<Read> units, int i) {
        return i >= 0 && i < units.size() && isMoment(units.get(i));
    }

    static boolean isMoment(Read read) {
        return read.is(Constituent.Bars.class)
                || read.is(Constituent.BarAt.class)
                || read.is(Constituent.Beats.class)
                || read.is(Constituent.BarsAtEdge.class)
                || read.is(Constituent.LastBeats.class)
                || read.is(Constituent.HalfBar.class)
                || read.is(Constituent.Parts.class);
    }

    static boolean isContent(Read read) {
        return !(read.unit() instanceof Constituent.Small);
    }
}
