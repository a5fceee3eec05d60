package groundbass.script.reading;

import groundbass.score.Fraction;
import groundbass.script.claims.Described;
import groundbass.script.claims.Where;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What is said of one stretch of the line. Grows as the sentence is read. */
final class Segment {
    private Where where;
    private final List<Group> groups = new ArrayList<>();
    private final List<Quiet> quiets = new ArrayList<>();
    private int placedAt = -1;

    /** A rest that was spoken of; later where something else comes before it. */
    record Quiet(Optional<Fraction> length, boolean later, int from, int to) {}

    Segment(Where where) {
        this.where = where;
    }

    Where where() {
        return where;
    }

    void place(Where newWhere) {
        where = newWhere;
        if (placedAt < 0) {
            placedAt = groups.size();
        }
    }

    /** Whether the place was said before the notes. */
    boolean isPlacedFirst() {
        return placedAt == 0;
    }

    List<Group> groups() {
        return groups;
    }

    List<Quiet> quiets() {
        return quiets;
    }

    boolean isEmpty() {
        return groups.isEmpty() && quiets.isEmpty();
    }

    Optional<Group> last() {
        return groups.isEmpty() ? Optional.empty() : Optional.of(groups.get(groups.size() - 1));
    }

    /** How many notes were spoken of. */
    int notes() {
        return groups.stream()
                .filter(group -> !group.isAway())
                .flatMap(group -> group.notes().stream())
                .mapToInt(Described::many)
                .sum();
    }

    /** Moves the groups from this one on into another segment. */
    void moveFrom(int index, Segment other) {
        other.groups.addAll(groups.subList(index, groups.size()));
        groups.subList(index, groups.size()).clear();
    }
}
