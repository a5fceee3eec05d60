package groundbass.script.thread;

import groundbass.script.checking.Right;
import groundbass.script.checking.Timeline.At;
import groundbass.script.checking.Verdict;
import java.util.List;

/**
 * What came of a clause.
 *
 * @param notes what it was about, for the next clause to lean on
 */
record Finding(Verdict verdict, List<At> notes) {
    static Finding agrees(List<At> notes) {
        return new Finding(Verdict.AGREES, notes);
    }

    static Finding wrong(Right right, List<At> notes) {
        return new Finding(new Verdict.Contradicts(right), notes);
    }

    static Finding open(List<At> notes) {
        return new Finding(Verdict.CANNOT_TELL, notes);
    }

    /** So in one reading, and not so in another. */
    static Finding mixed(List<At> notes) {
        return new Finding(Verdict.IN_PART, notes);
    }

    static Finding of(boolean agrees, Right right, List<At> notes) {
        return agrees ? agrees(notes) : wrong(right, notes);
    }

    boolean agrees() {
        return verdict instanceof Verdict.Agrees;
    }

    boolean contradicts() {
        return verdict instanceof Verdict.Contradicts;
    }
}
