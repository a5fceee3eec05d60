package groundbass.script.grammar;

import groundbass.script.grammar.Constituent.Tie;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Units of a sentence that are put into another order, or into plainer words. Beyond its ends there is nothing. */
abstract class Rewriting {
    final List<Read> units;

    Rewriting(List<Read> units) {
        this.units = new ArrayList<>(units);
    }

    boolean isUnit(int i, Class<? extends Constituent> kind) {
        return i >= 0 && i < units.size() && units.get(i).is(kind);
    }

    /** A tie where another unit stood. */
    static Read small(Tie tie, Read at) {
        return new Read(new Constituent.Small(tie), at.from(), at.to());
    }

    boolean isEnd(int i) {
        return isTie(i, Tie.STOP) || isTie(i, Tie.ASK) || isTie(i, Tie.COLON) || isTie(i, Tie.SEMICOLON);
    }

    boolean isTie(int i, Tie tie) {
        return i >= 0 && i < units.size() && units.get(i).is(tie);
    }

    boolean isAny(int i, Set<Tie> ties) {
        return i >= 0 && i < units.size() && isAny(units.get(i), ties);
    }

    static boolean isAny(Read read, Set<Tie> ties) {
        return read.unit() instanceof Constituent.Small small && ties.contains(small.tie());
    }
}
