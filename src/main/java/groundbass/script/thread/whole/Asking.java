package groundbass.script.thread.whole;

import groundbass.score.Fraction;
import groundbass.script.grammar.Clause;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.grammar.Read;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/** A question that the speaker answers at once: both together say something. */
public record Asking(Clause asked, boolean isPatient) {
    private static final Set<Tie> ASKING = Set.of(Tie.ASK, Tie.WHAT, Tie.WHICH, Tie.COMMA, Tie.HOW_MANY, Tie.YES);
    private static final Set<Tie> VERBS = Set.of(Tie.HAVE, Tie.PLAY, Tie.START, Tie.END, Tie.HOLD);

    /** So many units an answer may have. */
    private static final int SHORT = 7;

    private static final Set<Tie> POINTING = Set.of(Tie.THAT, Tie.IT, Tie.THEY);

    /** Words of an answer that add nothing to a number. */
    private static final Set<Tie> AROUND_NUMBERS = Set.of(
            Tie.THAT, Tie.IT, Tie.THEY, Tie.BE, Tie.THERE, Tie.HAVE, Tie.WE, Tie.COMMA, Tie.STOP, Tie.PLAY, Tie.IN,
            Tie.MAYBE, Tie.SO, Tie.YES, Tie.OF);

    public Asking(Clause asked) {
        this(asked, false);
    }

    /** The same, where something was said between that answers nothing. */
    public Asking patient() {
        return new Asking(asked, true);
    }

    /** The statement that question and answer make; empty where the next clause is no answer, or denies. */
    public Optional<Clause> answered(Clause next) {
        boolean fragment = next.units().stream()
                .noneMatch(read -> read.unit() instanceof Constituent.Small small && VERBS.contains(small.tie())
                        || read.is(Tie.BE) && read != next.units().get(0));
        boolean amount = next.units().size() <= 3 && next.has(Constituent.Number.class) // "There are two"
                || asked.has(Tie.HOW_MANY) && isAmount(next);
        boolean no = isPlain() && next.units().stream().allMatch(read -> read.is(Tie.NO) || read.is(Tie.COMMA));
        if (no) {
            return Optional.of(new Clause(negated()));
        }
        boolean yes = isPlain()
                && next.has(Tie.YES)
                && next.units().stream()
                        .allMatch(read ->
                                read.unit() instanceof Constituent.Small small && AROUND_NUMBERS.contains(small.tie()));
        if (yes) {
            return Optional.of(new Clause(affirmed()));
        }
        boolean pointing = isOpen() && isPointing(next.units()) && next.units().size() <= SHORT;
        boolean reserved = next.has(Tie.MAYBE) && !(asked.has(Tie.HOW_MANY) && isAmount(next)); // "that'd be six"
        if (isMoment(asked) && next.units().stream().noneMatch(Read::isTime)) { // "And beat two? Starts with a rest."
            return Optional.of(new Clause(joined(asked, next)));
        }
        var fretted = fretted(next);
        if (fretted.isPresent()) {
            return fretted;
        }
        boolean denied = next.has(Tie.NO) || next.has(Tie.NOT) || next.has(Tie.ASK) || reserved;
        boolean answers = next.has(Tie.YES)
                || amount
                || pointing
                || fragment && next.units().size() <= SHORT;
        if (denied || !answers) {
            return Optional.empty();
        }
        return Optional.of(new Clause(asked.has(Tie.HOW_MANY) ? counted(next) : joined(next.units())));
    }

    /** Whether no more than a time is asked about. */
    private static boolean isMoment(Clause clause) {
        return clause.units().stream().anyMatch(Read::isTime)
                && clause.units().stream()
                        .allMatch(read -> read.isTime()
                                || isEmptyVerb(clause, read)
                                || read.is(Tie.ASK)
                                || read.is(Tie.AND)
                                || read.is(Tie.SO)
                                || read.is(Tie.ON)
                                || read.is(Tie.IN)
                                || read.is(Tie.COMMA));
    }

    /** "What happens on four?", "what do we have there?" */
    private static boolean isEmptyVerb(Clause clause, Read read) {
        return clause.has(Tie.WHAT)
                && (read.is(Tie.WHAT)
                        || read.is(Tie.PLAY)
                        || read.is(Tie.BE)
                        || read.is(Tie.HAVE)
                        || read.is(Tie.DO)
                        || read.is(Tie.WE)
                        || read.is(Tie.THERE));
    }

    private static List<Read> joined(Clause asked, Clause next) {
        var units = new ArrayList<>(stated(asked.units()));
        units.removeIf(read -> read.is(Tie.AND) || read.is(Tie.SO) || isEmptyVerb(asked, read));
        units.addAll(next.units());
        return units;
    }

    /** "Which fret? Seven, on the D string", "the second": the number is a fret. */
    private Optional<Clause> fretted(Clause next) {
        var number = next.units().stream()
                .filter(read -> number(read.unit()).isPresent())
                .toList();
        boolean fret = asked.has(Tie.FRET) && number.size() == 1 && next.units().get(0) == number.get(0);
        if (!fret) {
            return Optional.empty();
        }
        var string = next.units().stream()
                .map(Read::unit)
                .filter(Constituent.Place.class::isInstance)
                .map(Constituent.Place.class::cast)
                .filter(place -> place.hasString() && place.fret().isEmpty())
                .findFirst();
        var place = new Constituent.Place(
                string.flatMap(Constituent.Place::string),
                string.map(Constituent.Place::number).orElse(OptionalInt.empty()),
                number(number.get(0).unit()));
        var units = new ArrayList<>(asked.units().stream()
                .filter(read -> isContent(read) && !read.is(Constituent.Unknown.class)
                        || read.is(Tie.THAT)
                        || read.is(Tie.ONE)
                        || read.is(Tie.NOTE)
                        || read.is(Tie.IT)
                        || read.is(Tie.ON)
                        || read.is(Tie.IN))
                .toList());
        int at = number.get(0).from();
        if (units.isEmpty()) {
            units.add(new Read(new Constituent.Small(Tie.IT), at, at));
        }
        units.add(new Read(new Constituent.Small(Tie.BE), at, at));
        units.add(new Read(place, at, next.to()));
        return Optional.of(new Clause(units));
    }

    private static OptionalInt number(Constituent unit) {
        if (unit instanceof Constituent.Number number) {
            return OptionalInt.of(number.value());
        }
        return unit instanceof Constituent.Rank rank && rank.which() == Constituent.Rank.Which.NTH
                ? OptionalInt.of(rank.nth())
                : OptionalInt.empty();
    }

    /** "That's six notes", whatever was asked. */
    private static boolean isAmount(Clause next) {
        long many = next.units().stream().filter(read -> read.isAmount()).count();
        return many == 1
                && next.units().stream()
                        .allMatch(read -> read.is(Constituent.Number.class)
                                || read.is(Constituent.Count.class)
                                || read.is(Constituent.Bars.class)
                                || read.is(Tie.NOTE)
                                || read.unit() instanceof Constituent.Small small
                                        && AROUND_NUMBERS.contains(small.tie()));
    }

    /** "That's ...". */
    private static boolean isPointing(List<Read> units) {
        return units.size() > 2
                && units.get(0).unit() instanceof Constituent.Small small
                && POINTING.contains(small.tie())
                && units.get(1).is(Tie.BE);
    }

    /** Whether it asks what something is: "what is the D?", "and the D?". */
    private boolean isOpen() {
        return subject().isPresent();
    }

    /** What is asked about, where the question is no more than that. */
    private Optional<List<Read>> subject() {
        var all = stated(asked.units()).stream()
                .filter(read -> !read.is(Tie.AND) && !read.is(Tie.SO) && !read.is(Tie.LONG))
                .toList();
        boolean named = asked.has(Tie.WHICH)
                && all.size() > 2
                && isKind(all.get(0))
                && all.get(1).is(Tie.BE);
        var units = named ? all.subList(1, all.size()) : all; // "which string is that"
        boolean what = (asked.has(Tie.WHAT) || named)
                && !units.isEmpty()
                && units.get(0).is(Tie.BE);
        var rest = what ? units.subList(1, units.size()) : units;
        boolean thing = rest.stream().noneMatch(Asking::isVerb) && rest.stream().anyMatch(read -> isThing(read.unit()));
        boolean fragment = !asked.has(Tie.WHAT) && !asked.has(Tie.HOW_MANY) && !asked.has(Tie.WHICH);
        return thing && (what || fragment) ? Optional.of(rest) : Optional.empty();
    }

    private static boolean isKind(Read read) {
        return read.is(Tie.STRING) || read.is(Tie.NOTE) || read.is(Tie.FRET) || read.is(Tie.CHORD);
    }

    private static boolean isThing(Constituent unit) {
        return unit instanceof Constituent.Name
                || unit instanceof Constituent.Rank
                || unit instanceof Constituent.Number
                || unit instanceof Constituent.Dead
                || unit instanceof Constituent.Small small
                        && (small.tie() == Tie.THEY || small.tie() == Tie.IT || small.tie() == Tie.THAT);
    }

    private static boolean isVerb(Read read) {
        return read.is(Tie.BE)
                || read.is(Constituent.Played.class)
                || read.unit() instanceof Constituent.Small small && VERBS.contains(small.tie());
    }

    /** Whether yes or no answers it. */
    private boolean isPlain() {
        boolean open = asked.has(Tie.WHAT) || asked.has(Tie.WHICH) || asked.has(Tie.HOW_MANY) || asked.has(Tie.LIKE);
        return !open && asked.has(Tie.BE) && asked.units().stream().anyMatch(read -> isContent(read));
    }

    private static boolean isContent(Read read) {
        return !(read.unit() instanceof Constituent.Small);
    }

    /** "Are those quarters? Yes, they are": they are. */
    private List<Read> affirmed() {
        var units = negated();
        units.removeIf(read -> read.is(Tie.NOT));
        return units;
    }

    /** "Is it short? No": it is not. */
    private List<Read> negated() {
        var units = new ArrayList<>(stated(asked.units()));
        int be = 0;
        while (!units.get(be).is(Tie.BE)) {
            be++;
        }
        var verb = units.remove(be);
        int last = units.size() - 1;
        while (last > 0 && !isContent(units.get(last))) {
            last--;
        }
        units.add(last, verb);
        units.add(last + 1, new Read(new Constituent.Small(Tie.NOT), verb.from(), verb.to()));
        return units;
    }

    private List<Read> joined(List<Read> answer) {
        var subject = subject();
        if (subject.isPresent()) {
            var units = new ArrayList<>(subject.get());
            var rest = isPointing(answer) ? answer.subList(2, answer.size()) : answer;
            units.add(new Read(
                    new Constituent.Small(Tie.BE),
                    answer.get(0).from(),
                    answer.get(0).from()));
            units.addAll(withoutStop(rest));
            return units;
        }
        var which = which();
        if (which.isPresent()) {
            var units = new ArrayList<>(stated(answer));
            units.addAll(stated(which.get()));
            return units;
        }
        var units = new ArrayList<>(stated(asked.units()));
        boolean howLong = asked.has(Tie.WHAT) && asked.has(Tie.LONG); // "how long do you hold it?"
        units.removeIf(read -> howLong && (read.is(Tie.LONG) || read.is(Tie.DO)));
        units.removeIf(read -> read.is(Tie.ANY)); // "is there one anywhere? - Yes, on four"
        units.addAll(withoutStop(answer.stream()
                .dropWhile(read -> read.is(Tie.YES) || read.is(Tie.COMMA))
                .toList()));
        for (int i = units.size() - 2; i >= 0; i--) {
            boolean dangling = units.get(i).is(Tie.IN) && units.get(i + 1).isTime()
                    || units.get(i).is(Tie.IN) && units.get(i + 1).is(Constituent.Bars.class);
            if (dangling) {
                units.remove(i);
            }
        }
        return units;
    }

    /** "Which of them is dead? The third": what was asked for is spoken of; what is said of it. */
    private Optional<List<Read>> which() {
        var units = asked.units();
        int which = 0;
        while (which < units.size() && !units.get(which).is(Tie.WHICH)) {
            which++;
        }
        boolean one = which + 1 < units.size()
                && (isOne(units.get(which + 1)) || units.get(which + 1).is(Tie.OF));
        int rest = one && isOne(units.get(which + 1)) ? which + 2 : which + 1;
        return one ? Optional.of(units.subList(rest, units.size())) : Optional.empty();
    }

    private static boolean isOne(Read read) {
        return read.is(Tie.ONE) || read.unit() instanceof Constituent.Count count && count.many() == 1;
    }

    /** "How many notes? Four": the number stands where it was asked for. */
    private List<Read> counted(Clause answer) {
        var number = answer.units().stream().filter(read -> read.isAmount()).findFirst();
        var units = new ArrayList<Read>();
        for (var read : asked.units()) {
            boolean here = read.is(Tie.HOW_MANY) && number.isPresent();
            if (here) {
                units.add(new Read(amount(number.get().many()), read.from(), read.to()));
            } else if (!isAsking(read) && !read.is(Tie.DO)) {
                units.add(read);
            }
        }
        boolean noun =
                asked.units().stream().anyMatch(read -> read.is(Tie.NOTE) || read.is(Tie.BEAT) || read.isCounted());
        units.addAll(stated(answer.units().stream()
                .filter(read -> number.filter(read::equals).isEmpty())
                .filter(read -> !isAmount(answer) || read.is(Tie.NOTE) && !noun || read.is(Constituent.Bars.class))
                .toList()));
        return units;
    }

    /** So many beats last, so many other things are counted. */
    private Constituent amount(int many) {
        return asked.has(Tie.BEAT) ? new Constituent.Lasting(Fraction.of(many, 1), false) : new Constituent.Count(many);
    }

    /** A list keeps its commas. */
    private static List<Read> withoutStop(List<Read> units) {
        return units.stream()
                .filter(read -> read.is(Tie.COMMA) || !isAsking(read))
                .toList();
    }

    private static List<Read> stated(List<Read> units) {
        return units.stream().filter(read -> !isAsking(read)).toList();
    }

    private static boolean isAsking(Read read) {
        return read.unit() instanceof Constituent.Small small && ASKING.contains(small.tie());
    }
}
