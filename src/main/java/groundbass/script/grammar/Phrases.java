package groundbass.script.grammar;

import groundbass.script.grammar.Constituent.Tie;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Puts into plain order what talk says in another: a thing named first and pointed at then ("that C, that's the fifth"),
 * one singled out ("it's the middle one that you pop"), and a fret whose noun was left out ("from the second fret up to
 * the fourth").
 */
final class Phrases {
    private static final Set<Tie> POINTING = Set.of(Tie.THAT, Tie.IT, Tie.THEY, Tie.WHICH);
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

    /** What a note is one of, and no other at once. */
    private static final Set<Class<? extends Constituent>> CONTRASTED =
            Set.of(Constituent.Name.class, Constituent.Place.class, Constituent.Value.class, Constituent.Played.class);

    /** "On two, that's a D" names a time, and no thing. */
    private static final Set<Tie> BEFORE_TIMES = Set.of(Tie.ON, Tie.IN, Tie.AT, Tie.FOR);

    private final List<Read> units;

    private Phrases(List<Read> units) {
        this.units = new ArrayList<>(units);
    }

    static List<Read> plain(List<Read> units) {
        var phrases = new Phrases(units);
        phrases.frets();
        phrases.sameString();
        phrases.besides();
        phrases.lengths();
        phrases.contrasts();
        phrases.sources();
        phrases.ways();
        phrases.objects();
        phrases.dismissed();
        phrases.resumed();
        phrases.dislocated();
        phrases.singledOut();
        phrases.silences();
        return List.copyOf(phrases.units);
    }

    private void frets() {
        for (int i = 1; i < units.size(); i++) {
            boolean fret = isRank(i) && isLed(i) && isLast(i + 1) && isNearerToAFret(i);
            if (fret) {
                var rank = (Constituent.Rank) units.get(i).unit();
                var place = new Constituent.Place(Optional.empty(), OptionalInt.empty(), OptionalInt.of(rank.nth()));
                units.set(i, new Read(place, units.get(i).from(), units.get(i).to()));
            }
        }
    }

    /** "The seventh fret of that same string": which string that is, was said before. */
    private void sameString() {
        for (int string = units.size() - 1; string > 2; string--) {
            int same = isTie(string - 1, Tie.SAME) ? string - 1 : string;
            boolean points = isTie(same - 1, Tie.THAT) || same < string && isTie(same - 1, Tie.THE);
            boolean fret = isTie(string, Tie.STRING)
                    && points
                    && (isTie(same - 2, Tie.OF) || isTie(same - 2, Tie.ON))
                    && same > 2
                    && isFret(same - 3);
            if (fret) {
                units.subList(same - 2, string + 1).clear();
                string = same - 2;
            }
        }
    }

    /** "Then a C on the same string": what is said beside a note of its string is left aside. */
    private void besides() {
        for (int string = units.size() - 1; string > 2; string--) {
            boolean same = (isTie(string, Tie.STRING) || isTie(string, Tie.FRET)) && isTie(string - 1, Tie.SAME);
            int on = same && isTie(string - 2, Tie.THE) ? string - 3 : string - 2;
            boolean noun = same
                    && isTie(on, Tie.ON)
                    && (units.subList(0, on).stream().anyMatch(read -> read.is(Constituent.Name.class))
                            || string + 1 < units.size() && isFret(string + 1))
                    && units.subList(0, on).stream()
                            .noneMatch(read ->
                                    read.is(Tie.THEY) || read.is(Tie.BOTH) || read.is(Tie.ALL) || read.is(Tie.BE));
            if (noun) {
                var aside = new Read(
                        new Constituent.Unknown(false),
                        units.get(on).from(),
                        units.get(string).to());
                units.subList(on, string + 1).clear();
                units.add(on, aside);
                return;
            }
        }
    }

    /** "It lasts three quavers": as long as those together. */
    private void lengths() {
        for (int i = units.size() - 2; i > 0; i--) {
            int verb = i - 1;
            while (verb > 0 && (isTie(verb, Tie.THEN) || isTie(verb, Tie.FOR) || isTie(verb, Tie.ONLY))) {
                verb--;
            }
            boolean length = units.get(i).unit() instanceof Constituent.Count
                    && units.get(i + 1).unit() instanceof Constituent.Value
                    && isTie(verb, Tie.HOLD);
            if (length) {
                int many = ((Constituent.Count) units.get(i).unit()).many();
                var each = ((Constituent.Value) units.get(i + 1).unit()).length();
                var all = new Read(
                        new Constituent.Value(each.times(many)),
                        units.get(i).from(),
                        units.get(i + 1).to());
                units.subList(i, i + 2).clear();
                units.add(i, all);
            }
        }
    }

    /** "It's popped, not slapped": what it is not, is another thing of a kind. */
    private void contrasts() {
        for (int not = units.size() - 2; not > 0; not--) {
            int before = isTie(not - 1, Tie.COMMA) ? not - 2 : not - 1;
            boolean contrast = isTie(not, Tie.NOT)
                    && before >= 0
                    && CONTRASTED.contains(units.get(not + 1).unit().getClass())
                    && units.get(before).unit().getClass()
                            == units.get(not + 1).unit().getClass()
                    && (not + 2 == units.size() || isEnd(not + 2) || isTie(not + 2, Tie.COMMA));
            if (contrast) {
                units.subList(before + 1, not + 2).clear();
            }
        }
    }

    /** "Von diesem D aus": from it. */
    private void sources() {
        for (int aus = units.size() - 1; aus > 1; aus--) {
            int of = aus - 2;
            while (of > 0 && (isTie(of, Tie.THAT) || isTie(of, Tie.LOW) || isTie(of, Tie.HIGH))) {
                of--;
            }
            boolean source = isTie(aus, Tie.FROM)
                    && isTie(of, Tie.OF)
                    && (units.get(aus - 1).is(Constituent.Name.class)
                            || units.get(aus - 1).is(Constituent.Place.class)
                            || isTie(aus - 1, Tie.THERE));
            if (source) {
                units.remove(aus);
                units.set(
                        of,
                        new Read(
                                new Constituent.Small(Tie.FROM),
                                units.get(of).from(),
                                units.get(of).to()));
                aus = of;
            }
        }
    }

    /** "Das kommt von der leeren D-Saite", "von dem F rutschst du ...": from it, where a verb of motion stands beside it. */
    private void ways() {
        for (int of = 0; of + 1 < units.size(); of++) {
            int thing = of + 1;
            while (isTie(thing, Tie.THE) || isTie(thing, Tie.THAT) || isTie(thing, Tie.LOW) || isTie(thing, Tie.HIGH)) {
                thing++;
            }
            boolean named = isTie(of, Tie.OF)
                    && thing < units.size()
                    && (units.get(thing).is(Constituent.Name.class)
                            || units.get(thing).is(Constituent.Place.class)
                            || isTie(thing, Tie.THERE));
            int verb = of - 1;
            while (isTie(verb, Tie.WE) || isTie(verb, Tie.IT) || isTie(verb, Tie.THEN)) {
                verb--;
            }
            boolean begins = of == 0 || isEnd(of - 1) || isTie(of - 1, Tie.AND) || isTie(of - 1, Tie.COMMA);
            boolean led = isTie(verb, Tie.PLAY) || begins && isMotion(thing + 1);
            if (named && led) {
                var from = units.get(of);
                units.set(of, new Read(new Constituent.Small(Tie.FROM), from.from(), from.to()));
            }
        }
    }

    /** A stroke or a step with a speaker behind it. */
    private boolean isMotion(int i) {
        boolean stroke = i < units.size() && units.get(i).is(Constituent.Played.class);
        return (stroke || isTie(i, Tie.PLAY)) && (isTie(i + 1, Tie.WE) || isTie(i + 1, Tie.IT));
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

    /** "It's a short one, that note on four", "all on the A string, that slide": what is spoken of is said again behind. */
    private void dislocated() {
        boolean it =
                units.size() > 3 && (isTie(0, Tie.IT) && isTie(1, Tie.BE) || isTie(0, Tie.ALL) && isTie(1, Tie.ON));
        for (int comma = units.size() - 3; it && comma > 2; comma--) {
            boolean again = isTie(comma, Tie.COMMA)
                    && isTie(comma + 1, Tie.THAT)
                    && (isTie(comma + 2, Tie.NOTE)
                            || isTie(comma + 2, Tie.ONE)
                            || units.get(comma + 2).is(Constituent.Played.class));
            if (again) {
                units.subList(comma, comma + 3).clear();
            }
        }
    }

    private boolean isRank(int i) {
        return units.get(i).unit() instanceof Constituent.Rank rank && rank.which() == Constituent.Rank.Which.NTH;
    }

    private boolean isLed(int i) {
        int before = isTie(i - 1, Tie.THE) ? i - 2 : i - 1;
        boolean listed = isTie(before, Tie.AND) && before > 0 && isFret(before - 1); // "the second fret and the fifth"
        return isTie(before, Tie.TO) || isTie(before, Tie.FROM) || listed;
    }

    private boolean isLast(int i) {
        return i >= units.size()
                || units.get(i).unit() instanceof Constituent.Small small
                        && Set.of(Tie.COMMA, Tie.STOP, Tie.AND, Tie.TO, Tie.SO, Tie.ON, Tie.UP, Tie.DOWN, Tie.COLON)
                                .contains(small.tie());
    }

    /** "From fret three to the fifth", but not "from bar one to the second, and fret five". */
    private boolean isNearerToAFret(int i) {
        return IntStream.range(0, units.size())
                .filter(at -> isFret(at) || units.get(at).is(Constituent.Bars.class))
                .boxed()
                .min(Comparator.comparingInt(at -> Math.abs(at - i)))
                .filter(this::isFret)
                .isPresent();
    }

    private boolean isFret(int at) {
        return units.get(at).unit() instanceof Constituent.Place place
                && place.fret().isPresent();
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

    /** "Nothing, an eighth rest": one silence, whose length is said behind it. */
    private void silences() {
        for (int i = units.size() - 1; i > 0; i--) {
            boolean same = units.get(i).is(Constituent.Silence.class)
                    && units.get(i - 1).unit() instanceof Constituent.Silence first
                    && first.length().isEmpty();
            if (same) {
                units.set(
                        i,
                        new Read(
                                units.get(i).unit(),
                                units.get(i - 1).from(),
                                units.get(i).to()));
                units.remove(i - 1);
            }
        }
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

    private boolean isEnd(int i) {
        return isTie(i, Tie.STOP) || isTie(i, Tie.ASK) || isTie(i, Tie.COLON) || isTie(i, Tie.SEMICOLON);
    }

    private boolean isTie(int i, Tie tie) {
        return i >= 0 && i < units.size() && units.get(i).is(tie);
    }

    private boolean isAny(int i, Set<Tie> ties) {
        return i >= 0 && i < units.size() && isAny(units.get(i), ties);
    }

    private static boolean isAny(Read read, Set<Tie> ties) {
        return read.unit() instanceof Constituent.Small small && ties.contains(small.tie());
    }
}
