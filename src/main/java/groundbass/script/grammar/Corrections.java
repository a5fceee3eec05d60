package groundbass.script.grammar;

import groundbass.script.grammar.Constituent.Tie;
import java.util.ArrayList;
import java.util.List;

/** Takes out what a speaker takes back: "on the D string, sorry, the A string" is on the A string. */
final class Corrections {
    private Corrections() {}

    static List<Read> made(List<Read> units) {
        var kept = new ArrayList<Read>();
        for (int i = 0; i < units.size(); i++) {
            int after = units.get(i).is(Tie.SORRY) ? next(units, i + 1) : units.size();
            int taken =
                    after < units.size() ? last(kept, units.get(after).unit().getClass()) : -1;
            if (taken >= 0) {
                kept.subList(taken, kept.size()).clear();
                i = after - 1;
            } else {
                kept.add(units.get(i));
            }
        }
        return List.copyOf(kept);
    }

    /** The next unit with a meaning of its own. */
    private static int next(List<Read> units, int from) {
        int at = from;
        while (at < units.size() && units.get(at).unit() instanceof Constituent.Small) {
            at++;
        }
        return at;
    }

    private static int last(List<Read> units, Class<?> kind) {
        for (int i = units.size() - 1; i >= 0; i--) {
            if (kind.isInstance(units.get(i).unit())) {
                return i;
            }
        }
        return -1;
    }
}
