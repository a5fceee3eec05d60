package groundbass.script.grammar;

import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.lexicon.WordOrder;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Where clauses open in text without punctuation: where words that can be a subject, or a moment, have a verb of their
 * own behind them.
 */
final class Openings {
    private static final Set<Tie> VERBS =
            Set.of(Tie.BE, Tie.HAVE, Tie.PLAY, Tie.START, Tie.END, Tie.HOLD, Tie.CLIMB, Tie.FALL, Tie.CHANGE);
    private static final Set<Tie> PRONOUNS = Set.of(Tie.IT, Tie.THAT, Tie.WE, Tie.THERE, Tie.THEY, Tie.WHICH);
    private static final Set<Tie> TIES = Set.of(Tie.AND, Tie.BUT, Tie.SO, Tie.THEN, Tie.COMMA, Tie.COLON, Tie.STOP);
    private static final Set<Tie> PREPOSITIONS = Set.of(Tie.ON, Tie.IN, Tie.AT, Tie.OVER);

    /** Small words that may belong to a noun. */
    private static final Set<Tie> OF_NOUNS = Set.of(
            Tie.THE,
            Tie.NOTE,
            Tie.ONE,
            Tie.THEY,
            Tie.THAT,
            Tie.CHORD,
            Tie.HIGH,
            Tie.LOW,
            Tie.ALL,
            Tie.BOTH,
            Tie.EACH,
            Tie.OF,
            Tie.STRING,
            Tie.BEAT,
            Tie.BAR,
            Tie.FRET,
            Tie.ONLY,
            Tie.THERE,
            Tie.UP,
            Tie.START,
            Tie.END,
            Tie.KEY,
            Tie.TEMPO);

    private static final Set<Tie> DETERMINERS = Set.of(Tie.THE, Tie.BOTH, Tie.ALL, Tie.EACH, Tie.THAT, Tie.THEY);

    /** So many units a noun may have before its verb. */
    private static final int NOUN = 12;

    private final List<Read> units;

    private final WordOrder order;

    Openings(List<Read> units, WordOrder order) {
        this.units = units;
        this.order = order;
    }

    /** Whether a clause can open here, words that tie it to the one before left out. */
    boolean isAt(int i) {
        int at = i;
        while (is(at, TIES)) {
            at++;
        }
        boolean onward = at > i && isTie(at - 1, Tie.THEN) && (isVerb(at) || isPlayed(at));
        boolean counted = at + 1 < units.size() && units.get(at + 1).is(Constituent.Count.class);
        boolean only = isTie(at, Tie.ONLY) && (counted || Units.isMoment(units, at + 1));
        boolean sum = isTie(at, Tie.SUM) && isVerb(at + 1);
        boolean after = isTie(at, Tie.AFTER) && (at > i || isTie(at + 1, Tie.THAT));
        boolean none = isTie(at, Tie.NO) && isContent(at + 1);
        boolean what = isAsking(at) || isTie(at, Tie.WHAT) && is(at + 1, PRONOUNS);
        boolean bare = isBare(at) && isTie(at + 1, Tie.BE);
        boolean numbered = at > i && isNumber(at) && isPronoun(at + 1); // "okay, five, we're on ..."
        int to = isTie(at + 1, Tie.UP) || isTie(at + 1, Tie.DOWN) ? at + 2 : at + 1;
        boolean path = isName(at) && isTie(to, Tie.TO) && isName(to + 1); // "C up to E"
        boolean so = at > i && isTie(at - 1, Tie.SO) && (isVerb(at) || isOrder(at));
        boolean turned =
                at > i && isTie(at, Tie.BE) && (is(at + 1, PRONOUNS) || isAmount(at + 1)); // "..., sind das neun"
        boolean verbFirst = isTie(at, Tie.PLAY) && is(at + 1, PREPOSITIONS) && Units.isMoment(units, at + 2);
        boolean plural = isBare(at) && !isName(at) && !isAmount(at - 1) && isVerb(at + 1);
        return bare
                || isInverted(at)
                || isFronted(at)
                || plural
                || verbFirst
                || numbered
                || path
                || so
                || turned
                || onward
                || only
                || sum
                || after
                || none
                || what
                || isPronoun(at)
                || isMoment(at)
                || isNoun(at)
                || isPath(at)
                || isCondition(at);
    }

    /** "Aufhören tut der Takt", "at the end comes", "wer mag", "yes". */
    private boolean isFronted(int i) {
        boolean edge = isTie(i, Tie.START) || isTie(i, Tie.END);
        boolean led = (isTie(i, Tie.TO) || isTie(i, Tie.AT)) && isTie(i + 1, Tie.END) && isVerb(i + 2);
        boolean some = isTie(i, Tie.WHAT) && isTie(i + 1, Tie.MAYBE);
        return edge && isTie(i + 1, Tie.DO) || led || some || isTie(i, Tie.YES);
    }

    /** "Pausen haben wir", "am Ende seid ihr": the verb before its subject, and one thing before the verb. */
    private boolean isInverted(int i) {
        int thing = is(i, PREPOSITIONS) ? i + 1 : i;
        boolean led = thing == i && i > 0 && (is(i - 1, PREPOSITIONS) || isTie(i - 1, Tie.THE) || isAmount(i - 1));
        boolean subject = isTie(thing + 2, Tie.WE) || isTie(thing + 2, Tie.IT);
        return !led && isContent(thing) && !isNumber(thing) && isVerb(thing + 1) && subject;
    }

    /** "If you", "when the", "try leaning", "don't squeeze". */
    private boolean isCondition(int i) {
        int next = isTie(i + 1, Tie.AND) ? i + 2 : i + 1; // "try and keep"
        boolean order = (isTie(i, Tie.MAYBE) || isTie(i, Tie.NOT)) && isUnknown(next);
        boolean others = isUnknown(i) && isTie(i + 1, Tie.MAYBE)
                || isTie(i, Tie.MAYBE) && (isTie(i + 1, Tie.MAYBE) || Units.isMoment(units, i + 1)); // "some people"
        if (others) {
            return true;
        }
        return order || isTie(i, Tie.MAYBE) && (is(i + 1, PRONOUNS) || isTie(i + 1, Tie.THE));
    }

    /** "It's", "that one is", "you then play". */
    private boolean isPronoun(int i) {
        if (!is(i, PRONOUNS)) {
            return false;
        }
        boolean all = units.size() > i + 1
                && (units.get(i + 1).is(Tie.ALL) || units.get(i + 1).is(Tie.BOTH));
        int next = all || isTie(i + 1, Tie.ONE) || isTie(i + 1, Tie.ONLY) || isTie(i + 1, Tie.THEN) ? i + 2 : i + 1;
        boolean speaker = isTie(i, Tie.WE);
        boolean unknown = isUnknown(next) && (speaker || isTie(i, Tie.IT));
        boolean denied = speaker && isTie(next, Tie.NOT);
        return denied || isVerb(next) || isTie(next, Tie.MAYBE) || speaker && isPlayed(next) || unknown;
    }

    /** "On four there's", "bar two has", "in the first bar you". */
    private boolean isMoment(int i) {
        int at = is(i, PREPOSITIONS) || isTie(i, Tie.FROM) ? i + 1 : i;
        at = isTie(at, Tie.THE) ? at + 1 : at;
        if (!Units.isMoment(units, at)) {
            return false;
        }
        boolean beat = !isBar(at);
        int first = at;
        at++;
        while (true) {
            boolean next = Units.isMoment(units, at + 1);
            boolean tied = next
                    && (isTie(at, Tie.OF)
                            || is(at, PREPOSITIONS) && isBar(at + 1) == beat
                            || isTie(at, Tie.AND) && isBar(at + 1) != beat);
            boolean bare = Units.isMoment(units, at) && isBar(at) == beat;
            if (!tied && !bare) {
                break;
            }
            at += tied ? 2 : 1;
        }
        boolean onward = isTie(at, Tie.THEN) && isContent(at + 1); // "on four, then, G"
        at = isTie(at, Tie.THEN) ? at + 1 : at;
        boolean there = (isTie(at, Tie.THERE) || isUnknown(at)) && isVerb(at + 1);
        boolean noun = isTie(at, Tie.THE) && isNoun(at);
        boolean subject = isPronoun(at) || isTie(at, Tie.WE);
        boolean repeats = isTie(at, Tie.LIKE) && Units.isMoment(units, at + 1);
        return repeats
                || noun
                || onward
                || isVerb(at)
                || isPlayed(at)
                || there
                || subject && order.allows(isTie(at, Tie.THERE) || hasBar(first, at));
    }

    private boolean hasBar(int from, int to) {
        return IntStream.range(from, Math.min(to, units.size())).anyMatch(this::isBar);
    }

    private boolean isBar(int i) {
        return units.get(i).is(Constituent.Bars.class) || units.get(i).is(Constituent.BarAt.class);
    }

    /** "The dead note is", "the last two of bar three are", "the c on beat four you": a noun that begins with an article. */
    private boolean isNoun(int i) {
        boolean article = is(i, DETERMINERS);
        boolean bare = i > 0 && is(i - 1, TIES) && isContent(i);
        if (!article && !bare) {
            return false;
        }
        boolean named = isTie(i, Tie.ALL);
        for (int at = i; at < Math.min(units.size(), i + NOUN); at++) {
            boolean subject = isTie(at, Tie.WE) && named;
            boolean parted = at == i + 1 && (isTie(at, Tie.START) || isTie(at, Tie.END)) && isTie(at + 1, Tie.WITH);
            if (isVerb(at) || subject || parted) { // "der fängt mit ... an"
                return named || at == i + 1; // "der kommt"
            }
            boolean strange = named && isUnknown(at) && is(at + 1, PREPOSITIONS); // "the octave lives on"
            boolean several = (isTie(i, Tie.ALL) || isTie(i, Tie.BOTH))
                    && (isPlace(at) || isTie(at, Tie.ON) && at > i + 1); // "all three fifth fret"
            if (strange || several) {
                return true;
            }
            boolean other = at > i && (isTie(at, Tie.THAT) || isTie(at, Tie.THEY)) && !isTie(at - 1, Tie.OF);
            boolean resumed = other
                    && at > i + 1
                    && (units.get(i + 1).is(Constituent.Rank.class) || isName(i + 1))
                    && isVerb(at + 1); // "the first one that's"
            if (resumed) {
                return true;
            }
            boolean second =
                    other || isTie(at, Tie.THE) && at > i && !isTie(at - 1, Tie.OF) && !is(at - 1, PREPOSITIONS);
            boolean moment = Units.isMoment(units, at);
            boolean placed = moment && isBar(at) && !isTie(at - 1, Tie.OF) && !is(at - 1, PREPOSITIONS);
            boolean ofNoun = is(at, OF_NOUNS) || is(at, PREPOSITIONS) || isContent(at) || isUnknown(at) || moment;
            boolean early = !article && at > i && (moment || isContent(at)); // "and a semiquaver beat two is"
            if (second || placed || early || !ofNoun) {
                return false;
            }
            named |=
                    isContent(at) || isUnknown(at) || isTie(at, Tie.CHORD) || isTie(at, Tie.NOTE) || isTie(at, Tie.ONE);
        }
        return false;
    }

    /** "From the g up to the b is". */
    private boolean isPath(int i) {
        boolean from = isTie(i, Tie.FROM) && !Units.isMoment(units, i + 1);
        boolean there = false;
        for (int at = i + 1; at < Math.min(units.size(), i + NOUN); at++) {
            if (is(at, TIES)) {
                return false;
            }
            there |= isTie(at, Tie.TO);
            if (isTie(at, Tie.BE) || isPlayed(at) && !is(at - 1, DETERMINERS)) {
                return from || there && isTie(i, Tie.OF);
            }
        }
        return false;
    }

    private boolean is(int i, Set<Tie> some) {
        return i >= 0
                && i < units.size()
                && units.get(i).unit() instanceof Constituent.Small small
                && some.contains(small.tie());
    }

    private boolean isTie(int i, Tie tie) {
        return i >= 0 && i < units.size() && units.get(i).is(tie);
    }

    private boolean isVerb(int i) {
        boolean noun = (isTie(i, Tie.END) || isTie(i, Tie.START)) && (isTie(i - 1, Tie.AT) || isTie(i - 1, Tie.THE));
        return is(i, VERBS) && !noun;
    }

    private boolean isPlayed(int i) {
        return i < units.size() && units.get(i).is(Constituent.Played.class);
    }

    /** Whether what was said is spoken of: "the first of those is", "it's". */
    boolean isPointing(int i) {
        boolean ranked =
                isTie(i, Tie.THE) && i + 1 < units.size() && units.get(i + 1).is(Constituent.Rank.class);
        return ranked ? isNoun(i) : isPronoun(i) || isOrder(i);
    }

    /** Whether words stand here that hardly go on with what was said: they speak of it, or of a moment. */
    boolean isStrong(int i) {
        boolean bar = i > 0 && isTie(i - 1, Tie.SO) && Units.isMoment(units, i) && isBar(i);
        boolean after = (isTie(i, Tie.AFTER) || isTie(i, Tie.THEN)) && isMoment(i + 1);
        return bar || after || isAsking(i) || isPointing(i) || isMoment(i);
    }

    /** "Leave it". */
    private boolean isOrder(int i) {
        return isUnknown(i) && (isTie(i + 1, Tie.IT) || isTie(i + 1, Tie.THEY));
    }

    /** "D is ...", "dead notes are ...". */
    private boolean isBare(int i) {
        return i < units.size() && isContent(i) && !(units.get(i).unit() instanceof Constituent.Place) && !isNumber(i);
    }

    /** "How many", "what's", "what do". */
    boolean isAsking(int i) {
        return isTie(i, Tie.HOW_MANY) || isTie(i, Tie.WHAT) && (isTie(i + 1, Tie.DO) || isVerb(i + 1));
    }

    /** "The low F is": an article, a noun and its verb. */
    boolean isSubject(int i) {
        return isTie(i, Tie.THE) && isNoun(i);
    }

    private boolean isAmount(int i) {
        return i >= 0 && isNumber(i)
                || i >= 0 && i < units.size() && units.get(i).is(Constituent.Count.class);
    }

    private boolean isNumber(int i) {
        return i < units.size() && units.get(i).is(Constituent.Number.class);
    }

    private boolean isName(int i) {
        return i < units.size() && units.get(i).is(Constituent.Name.class);
    }

    private boolean isPlace(int i) {
        return i < units.size() && units.get(i).is(Constituent.Place.class);
    }

    private boolean isUnknown(int i) {
        return i < units.size() && units.get(i).is(Constituent.Unknown.class);
    }

    private boolean isContent(int i) {
        return i < units.size()
                && !(units.get(i).unit() instanceof Constituent.Small)
                && !isUnknown(i)
                && !Units.isMoment(units, i);
    }
}
