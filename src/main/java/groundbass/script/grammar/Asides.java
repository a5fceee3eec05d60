package groundbass.script.grammar;

import groundbass.script.grammar.Constituent.Tie;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Takes out what speakers say between two commas of nothing that could be checked, what they say twice in a row, and the
 * counting aloud before a sum, so that what belongs together stands together: "those two, since somebody will ask, are a
 * third apart".
 */
final class Asides {
    /** Words that say nothing of the line among words that are not known. */
    private static final Set<Tie> IDLE = Set.of(
            Tie.WE, Tie.IT, Tie.THAT, Tie.WHICH, Tie.BE, Tie.HAVE, Tie.PLAY, Tie.DO, Tie.MAYBE, Tie.SO, Tie.AND,
            Tie.BUT, Tie.TO, Tie.OF, Tie.IN, Tie.AT, Tie.ON, Tie.WITH, Tie.FOR, Tie.FROM, Tie.THE, Tie.YES, Tie.SORRY,
            Tie.ANY, Tie.ALL, Tie.OVER, Tie.OTHER, Tie.THEY, Tie.LIKE);

    private static final Set<Tie> VERBS =
            Set.of(Tie.BE, Tie.HAVE, Tie.PLAY, Tie.START, Tie.END, Tie.HOLD, Tie.CLIMB, Tie.FALL);

    /** Words that something has to follow. */
    private static final Set<Tie> DANGLING =
            Set.of(Tie.BE, Tie.ON, Tie.IN, Tie.OF, Tie.AT, Tie.TO, Tie.FROM, Tie.OVER, Tie.WITH, Tie.FOR);

    /** What one says again to be understood; names and strokes in a row are a list. */
    private static final Set<Class<? extends Constituent>> REPEATED = Set.of(
            Constituent.Interval.class,
            Constituent.ChordTone.class,
            Constituent.ChordNamed.class,
            Constituent.KeyNamed.class,
            Constituent.TempoNamed.class,
            Constituent.Count.class,
            Constituent.Bars.class,
            Constituent.Place.class);

    private final List<Read> units;

    private Asides(List<Read> units) {
        this.units = new ArrayList<>(units);
    }

    static List<Read> without(List<Read> units) {
        var asides = new Asides(units);
        asides.between();
        asides.counting();
        asides.twice();
        return List.copyOf(asides.units);
    }

    /** "One, two, let me see, that's six": figures in their order, before anything was said. */
    private void counting() {
        int from = 0;
        while (isSeparator(from)) {
            from++;
        }
        int at = from;
        int next = 1;
        while (isNumber(at, next) && isComma(at + 1)) {
            at += 2;
            next++;
        }
        if (next > 2) {
            units.subList(from, at).clear();
        }
    }

    private boolean isNumber(int i, int value) {
        return i < units.size() && units.get(i).unit() instanceof Constituent.Number number && number.value() == value;
    }

    private void between() {
        int first = 0;
        while (first < units.size()) {
            int end = isComma(first) ? nextSeparator(first + 1) : -1;
            boolean aside = end > first && isComma(end) && isTold(first) && isAside(first + 1, end);
            if (aside) {
                takeOut(first, end);
            } else {
                first++;
            }
        }
    }

    /** One comma stays, but where what stood on both sides is one phrase. */
    private void takeOut(int first, int end) {
        boolean joined = isAny(first - 1, DANGLING)
                || isAny(end + 1, VERBS)
                || isTie(end + 1, Tie.NOT)
                || end + 1 < units.size() && units.get(end + 1).is(Constituent.Played.class);
        units.subList(joined ? first : first + 1, end + 1).clear();
    }

    private boolean isTold(int before) {
        return units.subList(0, before).stream().anyMatch(read -> !(read.unit() instanceof Constituent.Small));
    }

    private boolean isAside(int from, int to) {
        var inside = units.subList(from, to);
        boolean idle = inside.stream()
                .allMatch(read -> read.is(Constituent.Unknown.class)
                        || read.unit() instanceof Constituent.Small small && IDLE.contains(small.tie()));
        boolean closing = inside.size() == 2
                && inside.stream().anyMatch(read -> read.is(Constituent.BarAt.class))
                && inside.stream().anyMatch(read -> read.is(Tie.END) || read.is(Tie.START));
        if (closing) { // "the C, which ends the bar, ..."
            return true;
        }
        boolean strange = inside.stream().anyMatch(read -> read.is(Constituent.Unknown.class) || read.is(Tie.SORRY));
        boolean speaker = inside.size() > 1
                && inside.get(0).is(Tie.WE)
                && inside.stream().noneMatch(read -> read.is(Tie.MAYBE)); // "you know"
        return idle && (inside.isEmpty() || strange || speaker);
    }

    /** "That's a minor third, yes, a minor third". */
    private void twice() {
        for (int comma = units.size() - 1; comma > 0; comma--) {
            int from = comma + 1;
            while (isTie(from, Tie.YES) || isComma(from)) {
                from++;
            }
            int end = from;
            while (end < units.size() && !isSeparator(end)) {
                end++;
            }
            if (isComma(comma) && isSaidBefore(comma, from, end)) {
                units.subList(comma, end).clear();
            }
        }
    }

    private boolean isSaidBefore(int comma, int from, int end) {
        int many = end - from;
        boolean last = end == units.size() || isTie(end, Tie.STOP) || isTie(end, Tie.COMMA);
        if (many < 1 || comma < many + 1 || !last) {
            return false;
        }
        boolean same = IntStream.range(0, many).allMatch(i -> units.get(comma - many + i)
                .unit()
                .equals(units.get(from + i).unit()));
        boolean told = units.subList(from, end).stream()
                .anyMatch(read -> REPEATED.contains(read.unit().getClass()));
        boolean led = units.get(comma - many - 1).unit() instanceof Constituent.Small && !isSeparator(comma - many - 1);
        return same && told && led;
    }

    private int nextSeparator(int from) {
        int at = from;
        while (at < units.size() && !isComma(at) && !isEnd(at)) {
            at++;
        }
        return at < units.size() ? at : -1;
    }

    private boolean isEnd(int i) {
        return isTie(i, Tie.STOP) || isTie(i, Tie.ASK) || isTie(i, Tie.COLON) || isTie(i, Tie.SEMICOLON);
    }

    private boolean isSeparator(int i) {
        return isComma(i) || isEnd(i) || isTie(i, Tie.AND) || isTie(i, Tie.SO) || isTie(i, Tie.THEN);
    }

    private boolean isComma(int i) {
        return isTie(i, Tie.COMMA);
    }

    private boolean isTie(int i, Tie tie) {
        return i >= 0 && i < units.size() && units.get(i).is(tie);
    }

    private boolean isAny(int i, Set<Tie> ties) {
        return i >= 0
                && i < units.size()
                && units.get(i).unit() instanceof Constituent.Small small
                && ties.contains(small.tie());
    }
}
