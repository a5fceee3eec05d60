package groundbass.script.thread.whole;

import groundbass.script.grammar.Clause;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.grammar.Read;
import groundbass.script.thread.stage.Memory;
import groundbass.script.thread.stage.Stage;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** A bar of which no more than its number is said. */
public record NumberedBar(Memory memory, Stage stage) {
    /** Words before what a clause speaks of. */
    private static final Set<Tie> LEADING = Set.of(Tie.AND, Tie.SO, Tie.COMMA, Tie.THEN, Tie.BUT, Tie.STOP, Tie.YES);

    /** "And six, that's ...": the number of the next bar, or of the one in hand where it has no such beat, is that bar. */
    public Clause of(Clause clause) {
        var units = clause.units();
        int first = 0;
        while (first < units.size() && isLead(units.get(first))) {
            first++;
        }
        if (first == units.size() || !isBar(first, units)) {
            return clause;
        }
        var bars = new ArrayList<>(units);
        bars.set(first, bar(units.get(first)));
        boolean other = first + 2 < units.size()
                && units.get(first + 1).is(Tie.BE)
                && units.get(first + 2).is(Constituent.Number.class); // "six is three again"
        if (other) {
            bars.set(first + 2, bar(units.get(first + 2)));
        }
        boolean resumed = first + 3 < units.size()
                && units.get(first + 1).is(Tie.COMMA)
                && (units.get(first + 2).is(Tie.THAT) || units.get(first + 2).is(Tie.IT))
                && units.get(first + 3).is(Tie.BE);
        if (resumed) {
            bars.subList(first + 1, first + 3).clear();
        }
        return new Clause(bars);
    }

    private static boolean isLead(Read read) {
        return read.unit() instanceof Constituent.Small small && LEADING.contains(small.tie());
    }

    private static Read bar(Read number) {
        return new Read(new Constituent.Bars(List.of(value(number.unit()))), number.from(), number.to());
    }

    private static int value(Constituent unit) {
        return unit instanceof Constituent.Number number
                ? number.value()
                : ((Constituent.Beats) unit).numbers().get(0);
    }

    private boolean isBar(int at, List<Read> units) {
        var unit = units.get(at).unit();
        boolean beat =
                unit instanceof Constituent.Beats beats && beats.numbers().size() == 1;
        boolean known = memory.bar().filter(stage.timeline()::has).isPresent();
        if (!beat && !(unit instanceof Constituent.Number) || !known) {
            return false;
        }
        int value = value(unit);
        int bar = memory.bar().get();
        boolean far = value > stage.beats(bar).size();
        boolean near = stage.timeline().has(value) && (value == bar + 1 || value == bar && far);
        if (beat) {
            return near && far;
        }
        boolean onward = !far && memory.beat().orElse(value) < value; // after beat two, "three" is a beat
        if (onward) {
            return false;
        }
        var next = at + 1 < units.size() ? units.get(at + 1) : null;
        boolean alone = next == null || next.is(Tie.STOP) && at + 2 == units.size();
        boolean led = next != null
                && (next.is(Tie.COMMA)
                        || next.is(Tie.COLON)
                        || next.is(Constituent.Unknown.class)
                        || next.is(Tie.THEN)
                        || far && (next.is(Tie.START) || next.is(Tie.END) || next.is(Tie.BE)));
        return near && (alone || led);
    }
}
