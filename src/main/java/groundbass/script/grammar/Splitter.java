package groundbass.script.grammar;

import groundbass.script.grammar.Constituent.Tie;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Cuts the units of a sentence into clauses: where a tie stands between two verbs, and, in text without punctuation,
 * before words that begin a clause.
 */
public final class Splitter {
    private static final Set<Tie> VERBS =
            Set.of(Tie.BE, Tie.HAVE, Tie.PLAY, Tie.START, Tie.END, Tie.HOLD, Tie.CLIMB, Tie.FALL, Tie.CHANGE);
    private static final Set<Tie> SEPARATORS =
            Set.of(Tie.COMMA, Tie.COLON, Tie.SEMICOLON, Tie.AND, Tie.BUT, Tie.SO, Tie.THEN, Tie.STOP, Tie.ASK);

    /** Words that something has to follow. */
    private static final Set<Tie> DANGLING = Set.of(
            Tie.BE,
            Tie.HAVE,
            Tie.PLAY,
            Tie.START,
            Tie.HOLD,
            Tie.CHANGE,
            Tie.ON,
            Tie.IN,
            Tie.OF,
            Tie.AT,
            Tie.TO,
            Tie.FROM,
            Tie.OVER,
            Tie.WITH,
            Tie.FOR,
            Tie.WE,
            Tie.IT,
            Tie.THE,
            Tie.WHICH,
            Tie.MAYBE,
            Tie.EACH);

    /** So many units may tell what comes next. */
    private static final int MORE = 7;

    private final List<Read> units;
    private final boolean unpunctuated;
    private final Openings openings;
    private final List<Clause> clauses = new ArrayList<>();
    private final List<Read> open = new ArrayList<>();

    private Splitter(List<Read> units, boolean unpunctuated) {
        this.units = units;
        this.unpunctuated = unpunctuated;
        this.openings = new Openings(units);
    }

    public static List<Clause> clauses(List<Read> units, boolean unpunctuated) {
        var splitter = new Splitter(units, unpunctuated);
        for (int i = 0; i < units.size(); i++) {
            splitter.take(i);
        }
        splitter.close();
        return splitter.clauses;
    }

    private void take(int i) {
        boolean separates = isSeparator(i)
                && (hasVerb(open) || isPlaced(open) || unpunctuated && isUnknownSaid())
                && (unpunctuated ? openings.isAt(i) || isMore(i) || isOrder(i + 1) : hasVerbBefore(i + 1));
        separates |= units.get(i).is(Tie.SEMICOLON) || isBesideBareNo(i);
        boolean begins = unpunctuated && !open.isEmpty() && isBeginning(i);
        if (separates || begins) {
            var tail = isSeparator(i) && units.get(i).is(Tie.AND) ? subjectList() : List.<Read>of();
            close();
            open.addAll(tail);
        }
        open.add(units.get(i));
    }

    /** "..., no, ..." takes back what was said, and denies nothing of what comes. */
    private boolean isBesideBareNo(int i) {
        return isComma(i) && (isNo(i + 1) && isComma(i + 2) || isNo(i - 1) && (i == 1 || isComma(i - 2)));
    }

    private boolean isComma(int i) {
        return i >= 0 && i < units.size() && units.get(i).is(Tie.COMMA);
    }

    private boolean isNo(int i) {
        return i >= 0 && i < units.size() && units.get(i).is(Tie.NO);
    }

    /** "..., the A and the G are sixteenths": what stands since the comma belongs to what comes; taken out. */
    private List<Read> subjectList() {
        int comma = -1;
        for (int i = 0; i < open.size(); i++) {
            comma = open.get(i).is(Tie.COMMA) ? i : comma;
        }
        boolean list = comma > 0 && hasVerb(open.subList(0, comma)) && !hasVerb(open.subList(comma, open.size()));
        if (!list) {
            return List.of();
        }
        var tail = List.copyOf(open.subList(comma, open.size()));
        open.subList(comma, open.size()).clear();
        return tail;
    }

    private void close() {
        while (!open.isEmpty() && isSeparator(open.get(0))) {
            open.remove(0);
        }
        while (!open.isEmpty()
                && isSeparator(open.get(open.size() - 1))
                && !open.get(open.size() - 1).is(Tie.ASK)) {
            open.remove(open.size() - 1);
        }
        open.removeIf(read -> read.is(Tie.THE));
        if (!open.isEmpty()) {
            clauses.add(new Clause(open));
        }
        open.clear();
    }

    private boolean isSeparator(int i) {
        return i >= 0 && i < units.size() && isSeparator(units.get(i));
    }

    private static boolean isSeparator(Read read) {
        return read.unit() instanceof Constituent.Small small && SEPARATORS.contains(small.tie());
    }

    private static boolean isVerb(Read read) {
        return read.unit() instanceof Constituent.Small small && VERBS.contains(small.tie())
                || read.unit() instanceof Constituent.Played;
    }

    /** Whether something is said to be somewhere without a verb: "bar one, four sixteenths". */
    private static boolean isPlaced(List<Read> some) {
        return some.stream().anyMatch(Splitter::isMoment)
                && some.stream().anyMatch(read -> isContent(read) && !isMoment(read));
    }

    private static boolean hasVerb(List<Read> some) {
        return IntStream.range(0, some.size()).anyMatch(i -> isPlainVerb(some, i))
                || some.stream().anyMatch(read -> read.is(Tie.WE))
                        && some.stream().anyMatch(Splitter::isVerb);
    }

    /** "At the end" is no verb. */
    private static boolean isPlainVerb(List<Read> some, int i) {
        var read = some.get(i);
        boolean edge = read.is(Tie.END) || read.is(Tie.START);
        boolean noun =
                edge && i > 0 && (some.get(i - 1).is(Tie.AT) || some.get(i - 1).is(Tie.THE));
        return read.unit() instanceof Constituent.Small && isVerb(read) && !noun;
    }

    /** Whether a verb comes before the next tie; where another subject stands, a technique may be the verb. */
    private boolean hasVerbBefore(int from) {
        boolean subject = false;
        for (int i = from; i < units.size(); i++) {
            var read = units.get(i);
            if (isSeparator(read) && i > from) {
                return false;
            }
            subject |= read.is(Tie.WE);
            boolean last = read.is(Tie.PLAY)
                    && (i + 1 == units.size() || units.get(i + 1).is(Tie.STOP));
            if (isVerb(read) && !last && (read.unit() instanceof Constituent.Small || subject || i == from)) {
                return true;
            }
        }
        return false;
    }

    /** Whether a clause opens here, where nobody wrote that one ends. */
    private boolean isBeginning(int i) {
        return isComplete() && !isSeparator(i) && !isSeparator(i - 1) && openings.isAt(i);
    }

    /** Whether enough was said for a clause: a verb with something behind it, or something and the moment where it comes. */
    private boolean isComplete() {
        var last = open.get(open.size() - 1);
        boolean dangling = last.unit() instanceof Constituent.Small small && DANGLING.contains(small.tie());
        boolean again = last.is(Tie.AGAIN)
                && open.size() > 1
                && open.get(open.size() - 2).is(Tie.SAME);
        boolean compared = last.is(Tie.SAME) || last.is(Tie.LIKE) || again;
        boolean noun = open.stream()
                .filter(read -> !isSeparator(read))
                .findFirst()
                .filter(read -> read.is(Tie.THE) || read.is(Tie.THAT))
                .isPresent();
        boolean order = open.get(0).unit() instanceof Constituent.Played;
        boolean told = (hasVerb(open) || order) && open.stream().anyMatch(read -> isContent(read) || isMoment(read));
        return !dangling && !compared && (told || isUnknownSaid() || !noun && isPlaced(open));
    }

    /** "It smiles at you": a verb that is not known. */
    private boolean isUnknownSaid() {
        return open.stream().anyMatch(read -> read.is(Constituent.Unknown.class))
                && open.stream().anyMatch(read -> read.is(Tie.WE) || read.is(Tie.IT));
    }

    /** "And then a quaver rest on beat two": more that comes, with a place of its own. */
    private boolean isMore(int i) {
        boolean then = false;
        for (int at = i; at < Math.min(units.size(), i + MORE); at++) {
            if (at > i && openings.isAt(at)) {
                return false;
            }
            then |= units.get(at).is(Tie.THEN) || units.get(at).is(Tie.AFTER);
            if (then && (isMoment(units.get(at)) || units.get(at).is(Constituent.Place.class))) {
                return true;
            }
        }
        return false;
    }

    /** "And hammer ...". */
    private boolean isOrder(int i) {
        return i < units.size() && units.get(i).unit() instanceof Constituent.Played;
    }

    private static boolean isPreposition(Read read) {
        return read.is(Tie.ON) || read.is(Tie.IN) || read.is(Tie.OF) || read.is(Tie.AT) || read.is(Tie.TO);
    }

    static boolean isMoment(List<Read> units, int i) {
        return i >= 0 && i < units.size() && isMoment(units.get(i));
    }

    private static boolean isMoment(Read read) {
        return read.is(Constituent.Bars.class)
                || read.is(Constituent.BarAt.class)
                || read.is(Constituent.Beats.class)
                || read.is(Constituent.LastBeat.class)
                || read.is(Constituent.Parts.class);
    }

    private static boolean isContent(Read read) {
        return !(read.unit() instanceof Constituent.Small);
    }
}
