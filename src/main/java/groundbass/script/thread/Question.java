package groundbass.script.thread;

import groundbass.score.Fraction;
import groundbass.script.grammar.Clause;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.grammar.Read;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** A question that the speaker answers at once: both together say something. */
record Question(Clause asked) {
    private static final Set<Tie> ASKING = Set.of(Tie.ASK, Tie.WHAT, Tie.WHICH, Tie.COMMA, Tie.HOW_MANY, Tie.YES);
    private static final Set<Tie> VERBS = Set.of(Tie.HAVE, Tie.PLAY, Tie.START, Tie.END, Tie.HOLD);

    /** So many units an answer may have. */
    private static final int SHORT = 7;

    /** The statement that question and answer make; empty where the next clause is no answer, or denies. */
    Optional<Clause> answered(Clause next) {
        boolean fragment = next.units().stream()
                .noneMatch(read -> read.unit() instanceof Constituent.Small small && VERBS.contains(small.tie())
                        || read.is(Tie.BE) && read != next.units().get(0));
        boolean amount = next.units().size() <= 3 && next.has(Constituent.Number.class); // "There are two"
        boolean denied = next.has(Tie.NO) || next.has(Tie.NOT) || next.has(Tie.ASK) || next.has(Tie.MAYBE);
        boolean answers =
                next.has(Tie.YES) || amount || fragment && next.units().size() <= SHORT;
        if (denied || !answers) {
            return Optional.empty();
        }
        return Optional.of(new Clause(asked.has(Tie.HOW_MANY) ? counted(next) : joined(next.units())));
    }

    private List<Read> joined(List<Read> answer) {
        var which = which();
        if (which.isPresent()) {
            var units = new ArrayList<>(stated(answer));
            units.addAll(stated(which.get()));
            return units;
        }
        var units = new ArrayList<>(stated(asked.units()));
        units.addAll(stated(answer));
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
        var number = answer.units().stream()
                .filter(read -> read.is(Constituent.Number.class) || read.is(Constituent.Count.class))
                .findFirst();
        var units = new ArrayList<Read>();
        for (var read : asked.units()) {
            boolean here = read.is(Tie.HOW_MANY) && number.isPresent();
            if (here) {
                units.add(new Read(amount(many(number.get().unit())), read.from(), read.to()));
            } else if (!isAsking(read)) {
                units.add(read);
            }
        }
        units.addAll(stated(answer.units().stream()
                .filter(read -> number.filter(read::equals).isEmpty())
                .toList()));
        return units;
    }

    /** So many beats last, so many other things are counted. */
    private Constituent amount(int many) {
        return asked.has(Tie.BEAT) ? new Constituent.Lasting(Fraction.of(many, 1), false) : new Constituent.Count(many);
    }

    private static int many(Constituent unit) {
        return unit instanceof Constituent.Number number ? number.value() : ((Constituent.Count) unit).many();
    }

    private static List<Read> stated(List<Read> units) {
        return units.stream().filter(read -> !isAsking(read)).toList();
    }

    private static boolean isAsking(Read read) {
        return read.unit() instanceof Constituent.Small small && ASKING.contains(small.tie());
    }
}
