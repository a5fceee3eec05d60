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

/**
 * "And four's a rest": a number by itself, of which something is said that is of notes, is a beat of the bar in hand; so is
 * the number after that of the beat in hand.
 *
 * @param asked whether something was just asked, so that a number may be the answer
 */
public record NumberedBeat(Memory memory, Stage stage, boolean asked) {
    private static final Set<Tie> LEADING = Set.of(Tie.AND, Tie.SO, Tie.THEN, Tie.BUT, Tie.COMMA);
    private static final Set<Class<? extends Constituent>> OF_NOTES = Set.of(
            Constituent.Silence.class,
            Constituent.Triplet.class,
            Constituent.Value.class,
            Constituent.Dead.class,
            Constituent.Name.class,
            Constituent.Played.class);

    /** The clause itself where no number is one. */
    public Clause of(Clause clause) {
        var units = clause.units();
        int at = 0;
        while (at < units.size() && isLead(units.get(at))) {
            at++;
        }
        boolean said = at + 2 < units.size()
                && units.get(at + 1).is(Tie.BE)
                && OF_NOTES.contains(units.get(at + 2).unit().getClass());
        boolean beat = (said || !asked && isNext(units, at))
                && units.get(at).unit() instanceof Constituent.Number number
                && isBeat(number.value());
        if (!beat) {
            return clause;
        }
        var number = units.get(at);
        int value = ((Constituent.Number) number.unit()).value();
        var timed = new ArrayList<>(units);
        timed.set(at, new Read(new Constituent.Beats(List.of(value)), number.from(), number.to()));
        return new Clause(timed);
    }

    /** "Now wait, two is empty". */
    private static boolean isLead(Read read) {
        return read.is(Constituent.Unknown.class)
                || read.unit() instanceof Constituent.Small small && LEADING.contains(small.tie());
    }

    /** "Then three, nothing", after beat two was spoken of. */
    private boolean isNext(List<Read> units, int at) {
        boolean next = at < units.size()
                && units.get(at).unit() instanceof Constituent.Number number
                && memory.beat().orElse(0) == number.value() - 1
                && memory.beat().isPresent();
        boolean apart = at + 1 >= units.size()
                || units.get(at + 1).is(Tie.COMMA)
                || units.get(at + 1).is(Tie.COLON)
                || units.get(at + 1).is(Tie.STOP);
        return next && apart;
    }

    private boolean isBeat(int value) {
        return memory.bar()
                .filter(stage.timeline()::has)
                .filter(bar -> value >= 1 && value <= stage.beats(bar).size())
                .isPresent();
    }
}
