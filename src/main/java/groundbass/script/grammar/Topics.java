package groundbass.script.grammar;

import groundbass.script.grammar.Constituent.Tie;
import java.util.List;
import java.util.Set;

/**
 * Puts into plain order what talk says in another: a thing named first and pointed at then ("that C, that's the fifth"),
 * one named again behind ("it's short, that note"), and one singled out ("it's the middle one that you pop").
 */
final class Topics extends Rewriting {
    private static final Set<Tie> POINTING = Set.of(Tie.THAT, Tie.IT, Tie.THEY, Tie.WHICH);
    private static final Set<Tie> SAYING = Set.of(Tie.BE, Tie.HAVE, Tie.PLAY, Tie.HOLD);
    private static final Set<Tie> NO_TOPIC = Set.of(
            Tie.BE,
            Tie.HAVE,
            Tie.PLAY,
            Tie.START,
            Tie.END,
            Tie.HOLD,
            Tie.CLIMB,
            Tie.FALL,
            Tie.CHANGE,
            Tie.WE,
            Tie.IT,
            Tie.WHAT,
            Tie.WHICH,
            Tie.HOW_MANY,
            Tie.ASK,
            Tie.MAYBE,
            Tie.NOT,
            Tie.NO,
            Tie.LIKE,
            Tie.SAME,
            Tie.THEN);

    /** "On two, that's a D" names a time, and no thing. */
    private static final Set<Tie> BEFORE_TIMES = Set.of(Tie.ON, Tie.IN, Tie.AT, Tie.FOR);

    private Topics(List<Read> units) {
        super(units);
    }

    static List<Read> plain(List<Read> units) {
        var topics = new Topics(units);
        topics.objects();
        topics.dismissed();
        topics.resumed();
        topics.dislocated();
        topics.singledOut();
        topics.counted();
        return List.copyOf(topics.units);
    }

    /** "That low D, you find it on ...": what is named first is what comes behind the verb. */
    private void objects() {
        for (int comma = units.size() - 4; comma > 0; comma--) {
            boolean object = isTie(comma, Tie.COMMA)
                    && isTie(comma + 1, Tie.WE)
                    && isTie(comma + 2, Tie.PLAY)
                    && isTie(comma + 3, Tie.IT);
            if (object && isTopic(comma)) {
                var verb = units.get(comma + 2);
                units.subList(comma, comma + 4).clear();
                units.add(comma, new Read(new Constituent.Small(Tie.BE), verb.from(), verb.to()));
            }
        }
    }

    /** "The B flat, no, that's on the first fret": somebody else had it wrong. */
    private void dismissed() {
        for (int no = units.size() - 3; no > 1; no--) {
            boolean apart = isTie(no, Tie.NO)
                    && isTie(no - 1, Tie.COMMA)
                    && isTie(no + 1, Tie.COMMA)
                    && isAny(no + 2, POINTING)
                    && isTie(no + 3, Tie.BE);
            if (apart && isTopic(no - 1)) {
                units.subList(no, no + 2).clear();
            }
        }
    }

    /**
     * "It's a short one, that note on four", "all on the A string, that slide", "it comes on three, that dead one": what is
     * spoken of is said again behind, or only there.
     */
    private void dislocated() {
        int it = 0;
        while (isTie(it, Tie.AND) || isTie(it, Tie.SO) || isTie(it, Tie.BUT)) {
            it++;
        }
        boolean all = isTie(it, Tie.ALL) && isTie(it + 1, Tie.ON);
        boolean points = (isTie(it, Tie.IT) || isTie(it, Tie.THAT) || isTie(it, Tie.THEY)) && isAny(it + 1, SAYING);
        for (int comma = units.size() - 3; (all || points) && comma > it + 2; comma--) {
            boolean again = isTie(comma, Tie.COMMA) && (isTie(comma + 1, Tie.THAT) || isTie(comma + 1, Tie.THEY));
            int noun = comma + 2;
            while (isTie(noun, Tie.LOW) || isTie(noun, Tie.HIGH)) {
                noun++;
            }
            if (again && isNoun(noun)) {
                var named = List.copyOf(units.subList(comma + 1, noun + 1));
                boolean more = isUnit(noun, Constituent.Dead.class) && isTie(noun + 1, Tie.ONE);
                units.subList(comma, more ? noun + 2 : noun + 1).clear();
                boolean mere = named.stream().allMatch(read -> read.unit() instanceof Constituent.Small);
                if (!all && !mere) {
                    var pronoun = units.remove(it);
                    units.addAll(
                            it,
                            named.stream()
                                    .map(read -> new Read(read.unit(), pronoun.from(), pronoun.to()))
                                    .toList());
                }
                return;
            }
        }
    }

    private boolean isNoun(int i) {
        return isTie(i, Tie.NOTE)
                || isTie(i, Tie.ONE)
                || isUnit(i, Constituent.Played.class)
                || isUnit(i, Constituent.Dead.class)
                || isUnit(i, Constituent.Triplet.class)
                || isUnit(i, Constituent.Name.class);
    }

    /** "Slides, you've got three of them": so many slides. */
    private void counted() {
        for (int of = units.size() - 2; of > 1; of--) {
            boolean several = isTie(of, Tie.OF) && isTie(of + 1, Tie.THEY) && isAmount(of - 1);
            int amount = of + 1;
            while (isTie(amount, Tie.HAVE) || isTie(amount, Tie.IT) || isTie(amount, Tie.WE) || isTie(amount, Tie.BE)) {
                amount++;
            }
            boolean german = isTie(of, Tie.THEY) && isAmount(amount); // "Slides, davon gibt es drei"
            int comma = several || german ? of - 1 : -1;
            while (comma > 0 && !isTie(comma, Tie.COMMA)) {
                comma--;
            }
            boolean named = comma > 0
                    && isCounted(comma - 1)
                    && units.subList(0, comma - 1).stream().allMatch(read -> read.unit() instanceof Constituent.Small);
            if (named) {
                var noun = units.get(comma - 1);
                int at = several ? of - 1 : amount;
                var many = units.get(at);
                units.set(at, new Read(new Constituent.Count(many.many()), many.from(), many.to()));
                if (several) {
                    units.subList(of, of + 2).clear();
                }
                units.add(at + 1, new Read(noun.unit(), many.to(), many.to()));
                if (german) {
                    units.remove(of);
                }
                units.subList(comma - 1, comma + 1).clear();
                return;
            }
        }
    }

    private boolean isAmount(int i) {
        return i >= 0 && i < units.size() && units.get(i).isAmount();
    }

    private boolean isCounted(int i) {
        return i >= 0 && i < units.size() && units.get(i).isCounted();
    }

    /** "From that D up to the F sharp, that's a third": the comma and the word that points go. */
    private void resumed() {
        for (int comma = units.size() - 3; comma > 0; comma--) {
            boolean points = isTie(comma, Tie.COMMA) && isAny(comma + 1, POINTING) && isTie(comma + 2, Tie.BE);
            if (points && isTopic(comma)) {
                units.subList(comma, comma + 2).clear();
            }
        }
    }

    private boolean isTopic(int comma) {
        int from = comma;
        while (from > 0 && !isEnd(from - 1)) {
            from--;
        }
        while (isTie(from, Tie.AND) || isTie(from, Tie.SO) || isTie(from, Tie.BUT) || isTie(from, Tie.COMMA)) {
            from++;
        }
        var topic = units.subList(Math.min(from, comma), comma);
        boolean plain = topic.stream().noneMatch(read -> isAny(read, NO_TOPIC) || read.is(Constituent.Played.class));
        boolean thing = topic.stream().anyMatch(read -> isThing(read.unit()));
        boolean timed = !topic.isEmpty() && isAny(topic.get(0), BEFORE_TIMES);
        return plain && thing && !timed;
    }

    private static boolean isThing(Constituent unit) {
        return unit instanceof Constituent.Name
                || unit instanceof Constituent.Dead
                || unit instanceof Constituent.Triplet
                || unit instanceof Constituent.Rank
                || unit instanceof Constituent.Small small && small.tie() == Tie.RHYTHM;
    }

    /** "It's the last one that you slap": the last one is slapped. */
    private void singledOut() {
        for (int that = 3; that < units.size(); that++) {
            int verb = played(that);
            int from = start(that);
            if (verb > 0 && from >= 0) {
                var be = units.get(from + 1);
                int comma = isTie(that - 1, Tie.COMMA) ? that - 1 : that;
                units.subList(comma, verb).clear();
                units.add(comma, be);
                units.subList(from, from + 2).clear();
                return;
            }
        }
    }

    /** Of the stroke after "that you have to"; 0 where there is none. */
    private int played(int that) {
        boolean relative =
                (isTie(that, Tie.THAT) || isTie(that, Tie.WHICH) || isTie(that, Tie.WHAT)) && isTie(that + 1, Tie.WE);
        int at = that + 2;
        while (isTie(at, Tie.HAVE) || isTie(at, Tie.TO) || isTie(at, Tie.DO)) {
            at++;
        }
        return relative && at < units.size() && units.get(at).is(Constituent.Played.class) ? at : 0;
    }

    /** Of "it is" before something that is singled out; -1 where there is none. */
    private int start(int that) {
        int be = that - 1;
        while (be > 0 && !isTie(be, Tie.BE) && !isEnd(be)) {
            be--;
        }
        boolean single = be > 0
                && isTie(be, Tie.BE)
                && (isTie(be - 1, Tie.IT) || isTie(be - 1, Tie.THAT))
                && units.subList(be, that).stream().anyMatch(read -> isThing(read.unit()));
        return single ? be - 1 : -1;
    }
}
