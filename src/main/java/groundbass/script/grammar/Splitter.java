package groundbass.script.grammar;

import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.lexicon.WordOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Cuts the units of a sentence into clauses: where a tie stands between two verbs, and, in text without punctuation,
 * before words that begin a clause.
 */
final class Splitter {

    /** Words that lead to a moment. */
    private static final Set<Tie> LEADING = Set.of(
            Tie.ON,
            Tie.IN,
            Tie.OF,
            Tie.AT,
            Tie.TO,
            Tie.FROM,
            Tie.FOR,
            Tie.OVER,
            Tie.WITH,
            Tie.LIKE,
            Tie.SAME,
            Tie.THE,
            Tie.BE,
            Tie.AFTER,
            Tie.BEFORE,
            Tie.BETWEEN,
            Tie.ONLY,
            Tie.EXCEPT,
            Tie.THEN,
            Tie.PLAY,
            Tie.THAT,
            Tie.AGAIN);

    /** So many units may tell what comes next. */
    private static final int MORE = 7;

    private final List<Read> units;
    private final boolean unpunctuated;
    private final Openings openings;
    private final List<Integer> cuts = new ArrayList<>();
    private final List<Read> open = new ArrayList<>();
    private final OpenClause taken;

    private Splitter(List<Read> units, boolean unpunctuated, WordOrder order) {
        this.units = units;
        this.unpunctuated = unpunctuated;
        this.openings = new Openings(units, order);
        this.taken = new OpenClause(units, open, openings);
    }

    /** Indexes of the units before which a clause ends, in order. */
    static List<Integer> cuts(List<Read> units, boolean unpunctuated, WordOrder order) {
        var splitter = new Splitter(units, unpunctuated, order);
        for (int i = 0; i < units.size(); i++) {
            splitter.take(i);
        }
        return splitter.cuts;
    }

    private void take(int i) {
        boolean separates = isSeparator(i)
                && !(unpunctuated && isVerbLast(i))
                && (Units.hasVerb(open)
                        || Units.isPlaced(open)
                        || unpunctuated && (taken.isUnknownSaid() || taken.isStrange()))
                && (unpunctuated ? openings.isAt(i) || isMore(i) || isOrder(i + 1) : hasVerbBefore(i + 1));
        separates |= unpunctuated
                && isSeparator(i)
                && taken.isThing()
                && (openings.isStrong(i + 1) || isAside(i) || isBreath(i));
        separates |= isTimedList(i);
        separates |= !unpunctuated && isComparison(i);
        separates |= !unpunctuated
                && (isNewSubject(i) || isRelative(i) || isDenied(i) || isReason(i) || isOwnSubject(i) || isLater(i));
        separates |= units.get(i).is(Tie.SEMICOLON) || isBesideBareNo(i) || isNoneOf(i) || isPreface(i);
        boolean begins = unpunctuated && !open.isEmpty() && isBeginning(i);
        if (separates || begins) {
            var tail = isSeparator(i) && units.get(i).is(Tie.AND) ? taken.subjectList() : List.<Read>of();
            cuts.add(i - tail.size());
            open.clear();
            open.addAll(tail);
        }
        open.add(units.get(i));
    }

    /** "So I like that": what begins with a word that is not known goes on with nothing. */
    private boolean isAside(int i) {
        return units.get(i).is(Tie.SO)
                && i + 1 < units.size()
                && units.get(i + 1).is(Constituent.Unknown.class)
                && Units.hasVerb(open);
    }

    /** "..., which keeps you busy": what more is said of it, whatever that is. */
    private boolean isRelative(int i) {
        return units.get(i).is(Tie.COMMA)
                && i + 2 < units.size()
                && units.get(i + 1).is(Tie.WHICH)
                && units.get(i + 2).is(Constituent.Unknown.class)
                && Units.hasVerb(open);
    }

    /** "Long it is not, sixteen bars": what is denied ends with its comma. */
    private boolean isDenied(int i) {
        return units.get(i).is(Tie.COMMA)
                && !open.isEmpty()
                && open.get(open.size() - 1).is(Tie.NOT)
                && Units.hasVerb(open);
    }

    /** "On three come B and C sharp, and then it dissolves into D in the last bar": what comes at another time. */
    private boolean isLater(int i) {
        int then = i + 1;
        while (then < units.size() && units.get(then).is(Tie.AND)) {
            then++;
        }
        int end = then + 1;
        while (end < units.size() && !isSeparator(end)) {
            end++;
        }
        return units.get(i).is(Tie.COMMA)
                && then < units.size()
                && units.get(then).is(Tie.THEN)
                && (Units.hasVerb(open) || Units.isPlaced(open))
                && open.stream().anyMatch(Units::isMoment)
                && units.subList(Math.min(then + 1, end), end).stream()
                        .anyMatch(read -> read.is(Constituent.Bars.class) || read.is(Constituent.BarAt.class));
    }

    /** "..., that's where it lives": why or where something is so, and no more of what it is. */
    private boolean isReason(int i) {
        return units.get(i).is(Tie.COMMA)
                && i + 3 < units.size()
                && units.get(i + 1).is(Tie.THAT)
                && units.get(i + 2).is(Tie.BE)
                && units.get(i + 3).is(Tie.WHAT);
    }

    /** "The same E again, and it comes in on three": a verb with a subject of its own, where there was none. */
    private boolean isOwnSubject(int i) {
        boolean tied = units.get(i).is(Tie.COMMA)
                && i + 3 < units.size()
                && (units.get(i + 1).is(Tie.AND) || units.get(i + 1).is(Tie.BUT));
        boolean subject = tied
                && (units.get(i + 2).is(Tie.IT)
                        || units.get(i + 2).is(Tie.THAT)
                        || units.get(i + 2).is(Tie.THEY));
        boolean path = open.stream().anyMatch(read -> read.is(Tie.FROM) || read.is(Tie.TO));
        return subject
                && !path
                && taken.isThing()
                && !Units.hasVerb(open)
                && Units.isVerb(units.get(i + 3))
                && units.get(i + 3).unit() instanceof Constituent.Small;
    }

    /** "..., and that C is the root": what was said just now is spoken of. */
    private boolean isNewSubject(int i) {
        if (!units.get(i).is(Tie.COMMA) || !taken.isThing()) {
            return false;
        }
        int at = i + 1;
        while (isSeparator(at)) {
            at++;
        }
        boolean points = at > i + 1 && at < units.size() && units.get(at).is(Tie.THAT);
        int next = at + 1;
        boolean noun = next < units.size()
                && (units.get(next).is(Constituent.Name.class)
                        || units.get(next).is(Tie.ONE));
        return points && noun && next + 1 < units.size() && units.get(next + 1).is(Tie.BE);
    }

    /** "B on three and D on four": each with a time of its own, and no verb that is of both. */
    private boolean isTimedList(int i) {
        int last = open.size() - 1;
        while (last > 0 && open.get(last).is(Tie.AGAIN)) {
            last--;
        }
        boolean told = isSeparator(i) && last >= 0 && Units.isBeat(open.get(last)) && taken.isThing();
        int from = i + 1;
        while (told && isSeparator(from)) {
            from++;
        }
        int end = from;
        while (told && end < units.size() && !isSeparator(end) && !(end > from && isClauseEnd(end))) {
            end++;
        }
        boolean other = told
                && end > from + 1
                && Units.isBeat(units.get(end - 1))
                && units.subList(from, end - 1).stream().noneMatch(Units::isMoment)
                && units.subList(from, end - 1).stream()
                        .anyMatch(read -> Units.isContent(read) && !read.is(Constituent.Number.class));
        return other
                && IntStream.range(i + 1, units.size())
                        .takeWhile(at -> !units.get(at).is(Tie.STOP) && !isClauseEnd(at))
                        .noneMatch(at -> Units.isVerb(units.get(at)));
    }

    /** In text without marks a clause may end before its sentence does. */
    private boolean isClauseEnd(int i) {
        return unpunctuated && openings.isStrong(i);
    }

    /** "Now the D on three". */
    private boolean isBreath(int i) {
        return units.get(i).is(Tie.SO)
                && i + 1 < units.size()
                && units.get(i + 1).is(Tie.THE);
    }

    /** "There are eight notes, one more than in bar one". */
    private boolean isComparison(int i) {
        if (!units.get(i).is(Tie.COMMA) || !Units.hasVerb(open)) {
            return false;
        }
        for (int at = i + 1; at < units.size() && !isSeparator(at); at++) {
            if (units.get(at).is(Tie.OTHER)) {
                return at > i + 1;
            }
        }
        return false;
    }

    /** "Takt sechs ist dann ...", "das F kommt dann ...": a verb that something has to follow. */
    private boolean isVerbLast(int i) {
        var last = open.isEmpty() ? units.get(i) : open.get(open.size() - 1);
        return last.is(Tie.BE) || last.is(Tie.PLAY) && units.get(i).is(Tie.THEN);
    }

    /** "Five notes, and none of them dead". */
    private boolean isNoneOf(int i) {
        int at = i;
        while (isSeparator(at)) {
            at++;
        }
        boolean none = isNo(at) || at < units.size() && units.get(at).is(Tie.NOT);
        int of = at + 1 < units.size() && units.get(at + 1).is(Constituent.Count.class) ? at + 2 : at + 1;
        return isSeparator(i)
                && !open.isEmpty()
                && none
                && of + 1 < units.size()
                && units.get(of).is(Tie.OF)
                && units.get(of + 1).is(Tie.THEY);
    }

    /** "One thing to remember: we ...": what says nothing of the line leads to what does. */
    private boolean isPreface(int i) {
        boolean empty = open.stream()
                .allMatch(read -> read.unit() instanceof Constituent.Small
                        || read.is(Constituent.Unknown.class)
                        || read.is(Constituent.Number.class)
                        || read.is(Constituent.Rank.class));
        return units.get(i).is(Tie.COLON) && !open.isEmpty() && empty && hasVerbBefore(i + 1);
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

    private boolean isSeparator(int i) {
        return i >= 0 && i < units.size() && Units.isSeparator(units.get(i));
    }

    /** Whether a verb comes before the next tie; where another subject stands, a technique may be the verb. */
    private boolean hasVerbBefore(int from) {
        boolean subject = false;
        for (int i = from; i < units.size(); i++) {
            var read = units.get(i);
            if (Units.isSeparator(read) && i > from) {
                return false;
            }
            boolean may = subject && read.is(Tie.MAYBE)
                    || read.is(Tie.MAYBE)
                            && i + 1 < units.size()
                            && units.get(i + 1).is(Tie.WE); // "da kannst du"
            if (may) {
                return true;
            }
            subject |= read.is(Tie.WE);
            boolean urged = read.is(Tie.DO) && isSeparator(i - 1); // "so do warm up"
            if (urged) {
                return true;
            }
            boolean last = read.is(Tie.PLAY)
                    && (i + 1 == units.size() || units.get(i + 1).is(Tie.STOP));
            boolean rests =
                    read.is(Constituent.Silence.class) && units.get(i - 1).is(Tie.WE) && i > from; // "you rest"
            if (rests) {
                return true;
            }
            boolean listed = i + 1 == units.size() || isSeparator(i + 1); // "slap and pop"
            boolean order = i == from && !listed;
            if (Units.isVerb(read) && !last && (read.unit() instanceof Constituent.Small || subject || order)) {
                return true;
            }
        }
        return false;
    }

    /** Whether a clause opens here, where nobody wrote that one ends. */
    private boolean isBeginning(int i) {
        boolean goesOn = units.get(i).is(Tie.FROM) && open.stream().anyMatch(read -> read.is(Constituent.Played.class));
        return !goesOn
                && taken.isComplete(i)
                && !isSeparator(i)
                && !isSeparator(i - 1)
                && (openings.isAt(i)
                        || openings.isPointing(i)
                        || isOtherBeat(i)
                        || isOtherCount(i)
                        || isNewOrder(i)
                        || isBareMoment(i));
    }

    /** "It goes D E on beat one, beat two fifth fret": a second beat begins something else, verb or none. */
    private boolean isOtherBeat(int i) {
        boolean bare = Units.isBeat(units.get(i)) && !Units.isPreposition(units.get(i - 1)) && i + 1 < units.size();
        return bare
                && open.stream().anyMatch(Units::isBeat)
                && Units.isContent(units.get(i + 1))
                && !Units.isMoment(units, i + 1);
    }

    /** "Bar one has five slaps, one hammer-on in the line". */
    private boolean isOtherCount(int i) {
        var last = open.get(open.size() - 1);
        return units.get(i).is(Constituent.Count.class)
                && (Units.isContent(last) || last.is(Tie.ONE))
                && Units.hasVerb(open)
                && open.stream().anyMatch(read -> read.is(Constituent.Count.class));
    }

    /** "... on the A string, bar two ...": a moment that nothing leads to, after something was told. */
    private boolean isBareMoment(int i) {
        var unit = units.get(i).unit();
        boolean moment = unit instanceof Constituent.Bars
                || unit instanceof Constituent.Beats
                || unit instanceof Constituent.BarCount
                || unit instanceof Constituent.BarAt at && at.way() == Constituent.BarAt.Way.LAST;
        var before = units.get(i - 1);
        boolean led = before.unit() instanceof Constituent.Small small && LEADING.contains(small.tie());
        boolean told = taken.isThing() || Units.hasVerb(open) && open.size() > 1;
        boolean last =
                i + 1 == units.size() || isSeparator(i + 1) && openings.isStrong(i + 2); // "... on three and that's"
        return moment && !led && !last && !Units.isMoment(before) && told;
    }

    /** "It's loud, pop the fifth fret". */
    private boolean isNewOrder(int i) {
        var last = open.get(open.size() - 1);
        return isOrder(i)
                && (last.is(Constituent.Unknown.class) || last.is(Tie.AGAIN))
                && i + 1 < units.size()
                && (units.get(i + 1).is(Tie.THE) || units.get(i + 1).is(Constituent.Place.class));
    }

    /** "And then a quaver rest on beat two": more that comes, with a place of its own. */
    private boolean isMore(int i) {
        boolean then = false;
        for (int at = i; at < Math.min(units.size(), i + MORE); at++) {
            if (at > i && openings.isAt(at)) {
                return false;
            }
            then |= units.get(at).is(Tie.THEN) || units.get(at).is(Tie.AFTER);
            if (then && (Units.isMoment(units.get(at)) || units.get(at).is(Constituent.Place.class))) {
                return true;
            }
        }
        return false;
    }

    /** "And hammer ...". */
    private boolean isOrder(int i) {
        boolean played = i < units.size() && units.get(i).unit() instanceof Constituent.Played;
        boolean play = i + 1 < units.size()
                && units.get(i).is(Tie.PLAY)
                && units.get(i + 1).is(Tie.THE); // "and grab the"
        return played || play;
    }
}
