package groundbass.script.grammar;

import groundbass.script.grammar.Constituent.Tie;
import java.util.List;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

/**
 * How little a row of units looks like one clause, and how little a place in it looks like the end of one. Talk is free:
 * nothing here forbids a clause, it only makes another way to cut more likely.
 */
final class Strain {
    private static final double SLIGHT = 0.4;
    private static final double HEAVY = 0.6;

    /** What belongs together as a verb and its object do. */
    private static final double TORN = 0.7;

    /** "No, it's" takes back, and denies nothing. */
    private static final double TAKEN_BACK = 0.8;

    private static final Set<Tie> VERBS =
            Set.of(Tie.BE, Tie.HAVE, Tie.PLAY, Tie.START, Tie.END, Tie.HOLD, Tie.CLIMB, Tie.FALL, Tie.CHANGE);
    private static final Set<Tie> WAITING = Set.of(Tie.BE, Tie.HAVE, Tie.PLAY, Tie.START);
    private static final Set<Tie> WITH_OBJECT = Set.of(Tie.BE, Tie.HAVE, Tie.PLAY, Tie.HOLD);
    private static final Set<Tie> OBJECTS = Set.of(Tie.WE, Tie.THE, Tie.THAT, Tie.IT);
    private static final Set<Tie> SUBJECTS = Set.of(Tie.IT, Tie.THAT, Tie.THEY, Tie.WE, Tie.THERE, Tie.WHICH);
    private static final Set<Tie> SPEAKERS = Set.of(Tie.IT, Tie.WE);
    private static final Set<Tie> AFTER_SPEAKERS = Set.of(Tie.NOT, Tie.ALL, Tie.BOTH, Tie.THEN);
    private static final Set<Tie> BEFORE_VERBS = Set.of(Tie.IT, Tie.WE, Tie.THERE);
    private static final Set<Tie> ARTICLES = Set.of(Tie.THE, Tie.THAT, Tie.THEY);
    private static final Set<Tie> HEADLESS = Set.of(Tie.OF, Tie.TO);
    private static final Set<Tie> ASKING = Set.of(Tie.WHAT, Tie.WHICH, Tie.HOW_MANY);
    private static final Set<Tie> POINTING = Set.of(Tie.THAT, Tie.THEY, Tie.IT);
    private static final Set<Tie> BEFORE_NOUNS = Set.of(
            Tie.ON,
            Tie.IN,
            Tie.OF,
            Tie.AT,
            Tie.TO,
            Tie.FROM,
            Tie.OVER,
            Tie.WITH,
            Tie.FOR,
            Tie.AFTER,
            Tie.BEFORE,
            Tie.LIKE,
            Tie.SAME,
            Tie.UP,
            Tie.DOWN,
            Tie.ABOVE,
            Tie.BELOW,
            Tie.BETWEEN,
            Tie.ALL,
            Tie.BOTH,
            Tie.ONLY);

    private static final Read NOTHING = new Read(new Constituent.Unknown(false), 0, 0);

    private final List<Read> units;

    Strain(List<Read> units) {
        this.units = units;
    }

    /** Of a clause that would be all units of an interval. */
    double inside(int from, int to) {
        boolean told = false;
        double strain = atEnds(from, to) + repeated(from, to) + (isJoined(from, to) ? HEAVY : 0);
        for (int i = from; i < to; i++) {
            strain += told ? opening(i, to) : 0;
            strain += i + 1 < to && isTakenBack(i) ? TAKEN_BACK : 0;
            told |= isVerb(i) || isContent(i) && !Units.isMoment(units.get(i));
        }
        return strain;
    }

    /** Of words that hardly stand but where a clause opens, behind something that was told. */
    private double opening(int i, int to) {
        boolean subject = isTie(i, SUBJECTS) && canBeVerb(i + 1) && !isTie(i - 1, BEFORE_NOUNS);
        boolean points = i + 1 < to && isContent(i + 1) && (at(i).is(Tie.THAT) || at(i).is(Tie.THEY));
        boolean noun = isContent(i - 1) && (at(i).is(Tie.THE) || points);
        boolean all = isContent(i - 1) && (at(i).is(Tie.ALL) || at(i).is(Tie.BOTH));
        boolean moment = isMomentOfVerb(i, to);
        boolean so = i + 1 < to && (at(i).is(Tie.SO) || at(i).is(Tie.BUT));
        boolean onward = i + 1 < to && (at(i).is(Tie.THEN) || at(i).is(Tie.AFTER) && canBeVerb(i + 1));
        return (subject || moment || all || so ? HEAVY : 0)
                + (noun ? SLIGHT : 0)
                + (onward ? SLIGHT : 0)
                + (isTie(i, ASKING) ? SLIGHT : 0);
    }

    /** "... and on three come": a moment with a verb of its own. */
    private boolean isMomentOfVerb(int i, int to) {
        boolean begins = Units.isMoment(at(i)) && i + 1 < to && isTie(i + 1, VERBS);
        int before = at(i - 1).is(Tie.THE) ? i - 2 : i - 1;
        boolean led = isTie(before, BEFORE_NOUNS)
                || at(before).is(Tie.AND)
                || isContent(before)
                || at(before).is(Tie.IT)
                || at(before).is(Tie.AGAIN);
        boolean joined = isTie(before, VERBS) && !at(before).is(Tie.BE); // "... comes | beat two is"
        return begins && (joined || led && !at(i + 1).is(Tie.BE));
    }

    /** "... is a quaver and the next one comes ...": two clauses with a verb and a noun each. */
    private boolean isJoined(int from, int to) {
        return IntStream.range(from + 1, to - 1)
                .filter(i -> at(i).is(Tie.AND) && isTie(i + 1, ARTICLES))
                .anyMatch(i -> count(from, i, this::isVerb) > 0 && count(i, to, this::isVerb) > 0);
    }

    private boolean isTakenBack(int i) {
        return at(i).is(Tie.NO) && (isTie(i + 1, SUBJECTS) || at(i + 1).is(Tie.THE));
    }

    /** Of more than one verb, one bar, one time; of a time alone, and of a way to play that is of no note. */
    private double repeated(int from, int to) {
        long verbs = count(from, to, this::isVerb);
        long bars = count(from, to, i -> at(i).is(Constituent.Bars.class));
        long times = count(from, to, i -> at(i).isTime());
        boolean content = count(from, to, i -> Units.isContent(at(i)) && !Units.isMoment(at(i))) > 0;
        boolean alone = !content && verbs == 0 && bars + times > 0;
        boolean ordered = bars + times == 0
                && count(from, to, i -> at(i).is(Constituent.Played.class)) > 0
                && count(from, to, i -> isContent(i) && !at(i).is(Constituent.Played.class) || isTie(i, SUBJECTS)) == 0;
        return SLIGHT * (more(verbs) + more(bars) + more(times)) + (alone || ordered ? HEAVY : 0);
    }

    private static long more(long many) {
        return Math.max(0, many - 1);
    }

    private static long count(int from, int to, IntPredicate which) {
        return IntStream.range(from, to).filter(which).count();
    }

    /** Of a clause that begins with what something leads to, or ends with what leads to something. */
    private double atEnds(int from, int to) {
        int first = from;
        while (first < to - 1 && Units.isSeparator(units.get(first))) {
            first++;
        }
        int last = to - 1;
        while (last > first && Units.isSeparator(units.get(last))) {
            last--;
        }
        boolean lost =
                to - first > 1 && isTie(first, SPEAKERS) && !canBeVerb(first + 1) && !isTie(first + 1, AFTER_SPEAKERS);
        boolean waiting =
                last > first && to < units.size() && isTie(last, WAITING) && count(from, to, this::isVerb) == 1;
        boolean other =
                count(from, first, i -> at(i).is(Tie.THEN)) > 0 && at(first).is(Tie.IT); // "and then it's C"
        boolean row = isContent(to - 1)
                && isContent(to)
                && at(to).is(Constituent.Played.class)
                && count(from, to, this::isVerb) == 0;
        boolean fronted = count(from, to, this::isVerb) == 0
                && count(from, to, this::isContent) > 0
                && isTie(to, VERBS)
                && at(to + 1).is(Tie.WE); // "das G auf der Drei | spielt ihr"
        boolean onward =
                last > first && to < units.size() && at(last).is(Tie.AFTER) && last == to - 1; // "... danach |"
        boolean headless = isTie(first, HEADLESS)
                || at(first).is(Tie.WITH) && at(first + 1).is(Constituent.Value.class); // "namely as a quarter"
        return (lost || other || row || fronted || headless ? HEAVY : 0)
                + (waiting ? HEAVY : 0)
                + (onward ? SLIGHT : 0);
    }

    /** Of an end before a unit. */
    double cut(int at) {
        if (at <= 0 || at >= units.size()) {
            return 0;
        }
        return (isTorn(at) ? TORN : 0) + (isList(at) ? HEAVY : 0) + (isRow(at) ? SLIGHT : 0);
    }

    /** Before the "and" or "then" between two things of a kind. */
    private boolean isList(int at) {
        boolean tied = at(at).is(Tie.AND) || at(at).is(Tie.THEN);
        int next = at(at + 1).is(Tie.THEN) || at(at + 1).is(Tie.THE) ? at + 2 : at + 1;
        return tied
                && isContent(at - 1)
                && isContent(next)
                && at(at - 1).unit().getClass() == at(next).unit().getClass();
    }

    /** Between a verb and its subject or object, or between "that" and its noun. */
    private boolean isTorn(int at) {
        boolean struck =
                at(at - 1).is(Constituent.Played.class) && at(at).is(Tie.THE) && isContent(at + 1); // "pop the open D"
        boolean object = struck || isTie(at - 1, WITH_OBJECT) && isTie(at, OBJECTS) && !canBeVerb(at + 1);
        boolean verb = isTie(at - 1, VERBS) && isContent(at) || isContent(at - 1) && isTie(at, VERBS);
        boolean pointing = isTie(at - 1, POINTING) && isContent(at) && !isTie(at - 2, BEFORE_NOUNS);
        boolean edge = (at(at).is(Tie.FROM) || at(at).is(Tie.AT))
                && (at(at + 1).is(Tie.START) || at(at + 1).is(Tie.END))
                && !isTie(at + 2, VERBS)
                && !at(at + 2).is(Tie.WE); // "the low E from the start"
        boolean wished =
                at(at - 1).is(Tie.MAYBE) && (isTie(at, SUBJECTS) || isTie(at, OBJECTS)); // "if you", "kannst du"
        boolean compared = at(at - 1).is(Tie.BE) && (at(at).is(Tie.LIKE) || at(at).is(Tie.SAME));
        return object || compared || verb || pointing || edge || wished || isTie(at - 1, BEFORE_VERBS) && canBeVerb(at);
    }

    /** Within a place or a moment, or between two nouns of which one may say more of the other. */
    private boolean isRow(int at) {
        boolean led = isTie(at, BEFORE_NOUNS);
        boolean place = led && at(at + 1).is(Constituent.Place.class);
        boolean moments = Units.isMoment(at(at - 1)) && (Units.isMoment(at(at)) || led && Units.isMoment(at(at + 1)));
        boolean nouns = isContent(at - 1) && isContent(at) && !Units.isMoment(at(at));
        return place || moments || nouns;
    }

    private Read at(int i) {
        return i >= 0 && i < units.size() ? units.get(i) : NOTHING;
    }

    private boolean isVerb(int i) {
        return isTie(i, VERBS) && !Units.isBeforeNoun(at(i - 1));
    }

    private boolean canBeVerb(int i) {
        return isTie(i, VERBS)
                || at(i).is(Constituent.Played.class)
                || at(i).is(Tie.MAYBE)
                || at(i).is(Tie.ONLY) && isTie(i + 1, VERBS);
    }

    private boolean isContent(int i) {
        return Units.isContent(at(i)) && !at(i).is(Constituent.Unknown.class);
    }

    private boolean isTie(int i, Set<Tie> some) {
        return at(i).unit() instanceof Constituent.Small small && some.contains(small.tie());
    }
}
