package groundbass.script.grammar;

import groundbass.script.grammar.Constituent.Tie;
import java.util.ArrayList;
import java.util.List;

/** Takes out what a speaker takes back: "on the D string, sorry, the A string" is on the A string, "a third, no, a fifth" a fifth. */
final class Corrections {
    private static final List<Class<? extends Constituent>> AMOUNTS =
            List.of(Constituent.Number.class, Constituent.Count.class, Constituent.TempoNamed.class);

    private Corrections() {}

    static List<Read> made(List<Read> units) {
        var kept = new ArrayList<Read>();
        for (int i = 0; i < units.size(); i++) {
            int after = takesBack(units, i) ? next(units, i + 1) : units.size();
            int taken = after < units.size() ? last(kept, units.get(after).unit()) : -1;
            if (taken >= 0) {
                var before = kept.get(taken);
                kept.subList(taken, kept.size()).clear();
                kept.add(alike(before, units.get(after)));
                i = after;
            } else {
                kept.add(units.get(i));
            }
        }
        return List.copyOf(kept);
    }

    /** "Sorry", or a "no" between commas with one thing behind it, and no verb. */
    private static boolean takesBack(List<Read> units, int i) {
        if (units.get(i).is(Tie.SORRY)) {
            return true;
        }
        boolean apart = units.get(i).is(Tie.NO)
                && i > 1
                && i + 2 < units.size()
                && units.get(i - 1).is(Tie.COMMA)
                && units.get(i + 1).is(Tie.COMMA);
        int next = apart ? next(units, i + 1) : units.size();
        return next < units.size() && units.subList(i + 2, next).stream().allMatch(Corrections::isLead);
    }

    private static boolean isLead(Read read) {
        return read.is(Tie.THE)
                || read.is(Tie.ON)
                || read.is(Tie.IN)
                || read.is(Tie.AT)
                || read.is(Tie.COMMA)
                || read.is(Tie.SORRY);
    }

    /** What is said instead; a mere number is of what the one before was of. */
    private static Read alike(Read before, Read after) {
        boolean tempo = before.is(Constituent.TempoNamed.class) && after.unit() instanceof Constituent.Number;
        return tempo
                ? new Read(
                        new Constituent.TempoNamed(((Constituent.Number) after.unit()).value()),
                        after.from(),
                        after.to())
                : after;
    }

    /** The next unit with a meaning of its own. */
    private static int next(List<Read> units, int from) {
        int at = from;
        while (at < units.size() && units.get(at).unit() instanceof Constituent.Small) {
            at++;
        }
        return at;
    }

    /** Index of the last unit of a kind. */
    private static int last(List<Read> units, Constituent kind) {
        for (int i = units.size() - 1; i >= 0; i--) {
            boolean same = units.get(i).unit().getClass() == kind.getClass()
                    || isAmount(kind) && isAmount(units.get(i).unit());
            if (same) {
                return i;
            }
        }
        return -1;
    }

    private static boolean isAmount(Constituent unit) {
        return AMOUNTS.contains(unit.getClass());
    }
}
