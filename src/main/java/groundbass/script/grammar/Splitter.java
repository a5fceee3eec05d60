package groundbass.script.grammar;

import groundbass.script.grammar.Unit.Tie;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * Cuts the units of a sentence into clauses: where a tie stands between two verbs, and, in text without punctuation,
 * before words that begin a clause.
 */
public final class Splitter {
    private static final Set<Tie> VERBS =
            Set.of(Tie.BE, Tie.HAVE, Tie.PLAY, Tie.START, Tie.END, Tie.HOLD, Tie.CLIMB, Tie.FALL, Tie.CHANGE);
    private static final Set<Tie> SEPARATORS =
            Set.of(Tie.COMMA, Tie.COLON, Tie.SEMICOLON, Tie.AND, Tie.BUT, Tie.SO, Tie.THEN, Tie.STOP, Tie.ASK);
    private static final Set<Tie> SUBJECTS = Set.of(Tie.IT, Tie.THAT, Tie.WE, Tie.THERE, Tie.THEY, Tie.WHICH);

    /** So many units may stand before the verb of a noun. */
    private static final int NOUN = 5;

    private final List<Read> units;
    private final boolean unpunctuated;
    private final List<Clause> clauses = new ArrayList<>();
    private final List<Read> open = new ArrayList<>();

    private Splitter(List<Read> units, boolean unpunctuated) {
        this.units = units;
        this.unpunctuated = unpunctuated;
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
                && (hasVerb(open) || isPlaced(open))
                && (unpunctuated ? isClauseNext(i + 1) : hasVerbBefore(i + 1));
        separates |= units.get(i).is(Tie.SEMICOLON);
        boolean begins = unpunctuated && !open.isEmpty() && isBeginning(i);
        if (separates || begins) {
            var tail = isSeparator(i) && units.get(i).is(Tie.AND) ? subjectList() : List.<Read>of();
            close();
            open.addAll(tail);
        }
        open.add(units.get(i));
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
        return read.unit() instanceof Unit.Small small && SEPARATORS.contains(small.tie());
    }

    private static boolean isVerb(Read read) {
        return read.unit() instanceof Unit.Small small && VERBS.contains(small.tie())
                || read.unit() instanceof Unit.Played;
    }

    /** Whether something is said to be somewhere without a verb: "bar one, four sixteenths". */
    private static boolean isPlaced(List<Read> some) {
        return some.stream().anyMatch(Splitter::isMoment)
                && some.stream().anyMatch(read -> isContent(read) && !isMoment(read));
    }

    private static boolean hasVerb(List<Read> some) {
        return some.stream().anyMatch(read -> read.unit() instanceof Unit.Small && isVerb(read))
                || some.stream().anyMatch(read -> read.is(Tie.WE))
                        && some.stream().anyMatch(Splitter::isVerb);
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
            if (isVerb(read) && (read.unit() instanceof Unit.Small || subject || i == from)) {
                return true;
            }
        }
        return false;
    }

    private boolean isBeginning(int i) {
        var read = units.get(i);
        boolean subject = read.unit() instanceof Unit.Small small && SUBJECTS.contains(small.tie());
        boolean complete = hasVerb(open) && isContent(open.get(open.size() - 1)) || open.size() > 2;
        boolean afterTie = open.stream()
                .allMatch(before -> isSeparator(before) || isMoment(before) || before.is(Tie.ON) || before.is(Tie.IN));
        if (subject && hasVerbBefore(i + 1)) {
            return complete && !afterTie && !isVerb(open.get(open.size() - 1));
        }
        boolean speaker = read.is(Tie.WE) && hasVerb(open) && isContent(open.get(open.size() - 1)) && !afterTie;
        if (speaker) {
            return true;
        }
        if (isPreposition(i) && !read.is(Tie.OF)) {
            return complete && startsMoment(i + 1) && !afterTie && isFollowedByVerb(afterMoments(i + 1));
        }
        if (read.is(Tie.THE)) {
            return complete && !afterTie && isNounThenVerb(i + 1);
        }
        if (isSeparator(read)) {
            return complete && (startsMoment(i + 1) || startsSubject(i + 1));
        }
        boolean placed = isMoment(read) && !isSeparator(i - 1) && !isPreposition(i - 1);
        int after = i + 2 < units.size() && units.get(i + 1).is(Tie.OF) && isMoment(units.get(i + 2)) ? i + 3 : i + 1;
        return complete && placed && isFollowedByVerb(after);
    }

    /** Whether a clause of its own comes next, where nobody wrote where one ends. */
    private boolean isClauseNext(int i) {
        return startsMoment(i)
                || startsSubject(i)
                || i < units.size() && units.get(i).is(Tie.AFTER)
                || i < units.size() && units.get(i).unit() instanceof Unit.Played
                || i < units.size() && isNounThenVerb(i);
    }

    /** "The dead note is ...": a noun, perhaps with more said of it, and a verb. */
    private boolean isNounThenVerb(int i) {
        for (int at = i; at < Math.min(units.size(), i + NOUN); at++) {
            var read = units.get(at);
            if (read.is(Tie.BE) || read.is(Tie.HOLD)) {
                return at > i;
            }
            boolean second = at > i && !units.get(at - 1).is(Tie.OF) && (read.is(Tie.THE) || isMoment(read));
            if (second || !isOfNoun(read)) {
                return false;
            }
        }
        return false;
    }

    private static boolean isOfNoun(Read read) {
        return !(read.unit() instanceof Unit.Small)
                || read.is(Tie.NOTE)
                || read.is(Tie.OF)
                || read.is(Tie.ONE)
                || read.is(Tie.THEY)
                || read.is(Tie.THE)
                || read.is(Tie.CHORD)
                || read.is(Tie.IN);
    }

    /** Past "beat two of bar six". */
    private int afterMoments(int i) {
        int at = i + 1;
        while (at + 1 < units.size() && units.get(at).is(Tie.OF) && isMoment(units.get(at + 1))) {
            at += 2;
        }
        return at;
    }

    private boolean startsMoment(int i) {
        return i < units.size()
                && (isMoment(units.get(i)) || isPreposition(i) && i + 1 < units.size() && isMoment(units.get(i + 1)));
    }

    private boolean startsSubject(int i) {
        return i < units.size()
                && units.get(i).unit() instanceof Unit.Small small
                && SUBJECTS.contains(small.tie())
                && hasVerbBefore(i + 1);
    }

    private boolean isFollowedByVerb(int i) {
        return i < units.size()
                && (isVerb(units.get(i)) && units.get(i).unit() instanceof Unit.Small
                        || units.get(i).is(Tie.WE)
                        || units.get(i).is(Tie.THERE));
    }

    private boolean isPreposition(int i) {
        return i >= 0
                && (units.get(i).is(Tie.ON)
                        || units.get(i).is(Tie.IN)
                        || units.get(i).is(Tie.OF)
                        || units.get(i).is(Tie.AT));
    }

    private static boolean isMoment(Read read) {
        return read.is(Unit.Bars.class)
                || read.is(Unit.BarAt.class)
                || read.is(Unit.Beats.class)
                || read.is(Unit.LastBeat.class)
                || read.is(Unit.Parts.class);
    }

    private static boolean isContent(Read read) {
        return !(read.unit() instanceof Unit.Small);
    }
}
