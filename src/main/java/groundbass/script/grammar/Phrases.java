package groundbass.script.grammar;

import groundbass.script.grammar.Constituent.Tie;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.IntStream;

/** Puts into plain words what talk says with fewer: a fret whose noun was left out ("from the second fret up to the fourth"). */
final class Phrases extends Rewriting {

    /** So many units what something is not may have. */
    private static final int OPPOSED = 6;

    /** What a note is one of, and no other at once. */
    private static final Set<Class<? extends Constituent>> CONTRASTED =
            Set.of(Constituent.Name.class, Constituent.Place.class, Constituent.Value.class, Constituent.Played.class);

    private Phrases(List<Read> units) {
        super(units);
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
        phrases.silences();
        phrases.pointed();
        phrases.ofThose();
        phrases.opposed();
        phrases.farewells();
        phrases.extremes();
        phrases.crossings();
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
            int behind = thing + 1;
            while (Units.isMoment(units, behind) || isTie(behind, Tie.ON) || isTie(behind, Tie.IN)) {
                behind++;
            }
            boolean led = isTie(verb, Tie.PLAY) || begins && isMotion(behind);
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

    /** "The note there is a C": the one that was spoken of. */
    private void pointed() {
        for (int there = units.size() - 2; there > 0; there--) {
            boolean note = isTie(there, Tie.THERE) && isTie(there - 1, Tie.NOTE) && isTie(there + 1, Tie.BE);
            if (note) {
                units.remove(there);
                units.add(there - 1, small(Tie.THAT, units.get(there - 1)));
            }
        }
    }

    /** "Alle drei Töne davon": those that were spoken of. */
    private void ofThose() {
        for (int they = units.size() - 1; they > 0; they--) {
            boolean behind = isTie(they, Tie.THEY)
                    && isTie(they - 1, Tie.NOTE)
                    && (isTie(they + 1, Tie.PLAY) || isTie(they + 1, Tie.BE) || isTie(they + 1, Tie.HOLD));
            if (behind) {
                units.remove(they);
            }
        }
    }

    /** "Not a C but a D", "kein C, sondern ein D": what it is not goes, with the words that set it against what it is. */
    private void opposed() {
        for (int but = units.size() - 2; but > 1; but--) {
            int not = but - 1;
            while (not > 0 && !isTie(not, Tie.NOT) && !isTie(not, Tie.NO) && !isEnd(not)) {
                not--;
            }
            boolean opposed = isTie(but, Tie.BUT)
                    && (isTie(not, Tie.NOT) || isTie(not, Tie.NO))
                    && but - not <= OPPOSED
                    && units.subList(not + 1, but).stream().noneMatch(Phrases::isSaying)
                    && units.subList(not + 1, but).stream().anyMatch(Units::isContent)
                    && !saysMore(but + 1);
            if (opposed) {
                units.subList(not, but + 1).clear();
                but = not;
            }
        }
    }

    /** Whether a verb or a pronoun comes before the next pause. */
    private boolean saysMore(int from) {
        for (int i = from; i < units.size() && !isEnd(i) && !isTie(i, Tie.COMMA); i++) {
            if (isSaying(units.get(i))) {
                return true;
            }
        }
        return false;
    }

    private static boolean isSaying(Read read) {
        return Units.isVerb(read) && read.unit() instanceof Constituent.Small
                || read.is(Tie.IT)
                || read.is(Tie.WE)
                || read.is(Tie.THERE);
    }

    /** "... before you move on": how the talk goes on says nothing of what was told. */
    private void farewells() {
        for (int before = units.size() - 2; before > 1; before--) {
            int end = before + 1;
            while (end < units.size() && !isEnd(end) && !isTie(end, Tie.COMMA) && !Units.isContent(units.get(end))) {
                end++;
            }
            boolean last = end == units.size() || isEnd(end);
            boolean goesOn = isTie(before, Tie.BEFORE)
                    && (isTie(before + 1, Tie.WE) || isTie(before + 1, Tie.IT))
                    && (isTie(before + 2, Tie.PLAY) || isTie(before + 3, Tie.PLAY));
            if (last && goesOn) {
                units.subList(before, end).clear();
            }
        }
    }

    /** "It goes over beat three": it is held there. */
    private void crossings() {
        for (int over = units.size() - 2; over > 0; over--) {
            boolean held = isTie(over, Tie.OVER) && Units.isBeat(units.get(over + 1)) && isTie(over - 1, Tie.PLAY);
            if (held) {
                units.set(over - 1, small(Tie.HOLD, units.get(over - 1)));
            }
        }
    }

    /** "Nothing goes lower than that": that is the lowest note. */
    private void extremes() {
        for (int than = units.size() - 2; than > 1; than--) {
            if (!isTie(than, Tie.OTHER)) {
                continue;
            }
            int from = than - 1;
            while (from > 0 && !isEnd(from - 1) && !isTie(from - 1, Tie.COMMA) && !isTie(from - 1, Tie.AND)) {
                from--;
            }
            boolean up = isTie(than - 1, Tie.UP) || isTie(than - 1, Tie.HIGH);
            boolean down = isTie(than - 1, Tie.DOWN) || isTie(than - 1, Tie.LOW);
            var before = units.subList(from, than - 1);
            boolean none = before.stream()
                    .anyMatch(read -> read.unit() instanceof Constituent.Silence silence
                                    && silence.length().isEmpty()
                            || read.is(Tie.NO) && before.stream().anyMatch(other -> other.is(Tie.NOTE)));
            boolean plain = before.stream()
                    .allMatch(read -> read.unit() instanceof Constituent.Small
                            || read.is(Constituent.Silence.class)
                            || read.is(Constituent.Whole.class)
                            || Units.isMoment(read));
            if (up != down && none && plain) {
                extreme(from, than, up);
                return;
            }
        }
    }

    private void extreme(int from, int than, boolean up) {
        var at = units.get(than);
        var places = units.subList(from, than - 1).stream()
                .filter(read -> read.is(Constituent.Whole.class) || Units.isMoment(read))
                .toList();
        int end = than + 1;
        while (end < units.size() && !isEnd(end) && !isTie(end, Tie.COMMA)) {
            end++;
        }
        var said = new ArrayList<>(units.subList(than + 1, end));
        var which = up ? Constituent.Rank.Which.HIGHEST : Constituent.Rank.Which.LOWEST;
        said.add(new Read(new Constituent.Small(Tie.BE), units.get(from).from(), at.to()));
        said.add(new Read(new Constituent.Rank(which, 1), at.from(), at.to()));
        said.add(small(Tie.NOTE, at));
        places.forEach(place -> said.add(new Read(place.unit(), at.from(), at.to())));
        units.subList(from, end).clear();
        units.addAll(from, said);
    }
}
