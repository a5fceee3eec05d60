package groundbass.script.thread.stage;

import groundbass.script.checking.Right;
import groundbass.script.checking.Timeline.At;
import groundbass.script.checking.Verdict;
import groundbass.script.grammar.Constituent;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What came of a clause.
 *
 * @param notes what it was about, for the next clause to lean on
 * @param about the first of the units that are wrong, where that is known
 * @param compared the bar that the one in hand was compared with
 */
public record Judged(Verdict verdict, List<At> notes, Optional<Constituent> about, OptionalInt compared) {
    public Judged(Verdict verdict, List<At> notes) {
        this(verdict, notes, Optional.empty(), OptionalInt.empty());
    }

    /** The same, said of one unit of the clause. */
    public Judged at(Constituent unit) {
        return new Judged(verdict, notes, Optional.of(unit), compared);
    }

    public Judged comparedWith(int bar) {
        return new Judged(verdict, notes, about, OptionalInt.of(bar));
    }

    public static Judged agrees(List<At> notes) {
        return new Judged(Verdict.AGREES, notes);
    }

    public static Judged wrong(Right right, List<At> notes) {
        return new Judged(new Verdict.Contradicts(right), notes);
    }

    public static Judged open(List<At> notes) {
        return new Judged(Verdict.CANNOT_TELL, notes);
    }

    /** So in one reading, and not so in another. */
    public static Judged mixed(List<At> notes) {
        return new Judged(Verdict.IN_PART, notes);
    }

    public static Judged of(boolean agrees, Right right, List<At> notes) {
        return agrees ? agrees(notes) : wrong(right, notes);
    }

    /** The same, of a clause of which something was not read. */
    public Judged partly() {
        return agrees() ? mixed(notes) : this;
    }

    /** The same, where another reading may have it otherwise: it is called wrong no longer. */
    public Judged doubted() {
        return contradicts() ? mixed(notes) : this;
    }

    /** Whether it says that something is so, or is not. */
    public boolean isSure() {
        return agrees() || contradicts();
    }

    public boolean agrees() {
        return verdict instanceof Verdict.Agrees;
    }

    public boolean contradicts() {
        return verdict instanceof Verdict.Contradicts;
    }
}
