package groundbass.script;

import groundbass.score.Position;
import groundbass.script.checking.Verdict;
import java.util.Optional;

/**
 * A statement found in a script.
 *
 * @param from offset of its first character
 * @param to offset after its last
 * @param position where in the line it is about, if that is known
 */
public record Statement(int from, int to, Verdict verdict, Optional<Position> position) {
    public Statement {
        if (from < 0 || from >= to) {
            throw new IllegalArgumentException("a statement has characters: " + from + " to " + to);
        }
    }

    public boolean agrees() {
        return verdict instanceof Verdict.Agrees;
    }

    /** Whether what was read of it agrees, while it says more. */
    public boolean isReadInPart() {
        return verdict instanceof Verdict.InPart;
    }

    public boolean contradicts() {
        return verdict instanceof Verdict.Contradicts;
    }
}
