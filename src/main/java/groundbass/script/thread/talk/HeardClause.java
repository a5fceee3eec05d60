package groundbass.script.thread.talk;

import groundbass.score.Position;
import groundbass.script.checking.Verdict;
import java.util.Optional;

/**
 * A clause of a talk.
 *
 * @param from offset of its first character, or of what in it is wrong
 * @param to offset after its last
 * @param verdict empty where it was not understood
 * @param musical whether it speaks of the line at all, as far as can be seen
 * @param asked whether it asks and does not say, or only compares with something that was said
 */
public record HeardClause(
        int from, int to, Optional<Verdict> verdict, boolean musical, boolean asked, Optional<Position> position) {
    boolean isWrong() {
        return verdict.filter(Verdict.Contradicts.class::isInstance).isPresent();
    }

    boolean overlaps(HeardClause other) {
        return from < other.to && other.from < to;
    }

    /** The same, called wrong no longer. */
    HeardClause doubted() {
        return isWrong() ? new HeardClause(from, to, Optional.of(Verdict.CANNOT_TELL), musical, asked, position) : this;
    }

    /** The same, meant no longer. */
    HeardClause untold() {
        return new HeardClause(from, to, Optional.empty(), musical, asked, position);
    }
}
