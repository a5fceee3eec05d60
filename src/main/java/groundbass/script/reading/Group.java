package groundbass.script.reading;

import groundbass.script.claims.Described;
import groundbass.script.claims.Said;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;

/** Notes that are spoken of together. Grows as the sentence is read. */
final class Group {
    private final List<Described> notes = new ArrayList<>(List.of(Described.NOTHING));
    private final boolean away;
    private boolean path;
    private int from = Integer.MAX_VALUE;
    private int to;

    /** @param away whether it is only a landmark, so that it need not be where the rest is */
    Group(boolean away) {
        this.away = away;
    }

    List<Described> notes() {
        return List.copyOf(notes);
    }

    int size() {
        return notes.size();
    }

    boolean isAway() {
        return away;
    }

    boolean isPath() {
        return path;
    }

    int from() {
        return from;
    }

    int to() {
        return to;
    }

    boolean isEmpty() {
        return notes.stream().allMatch(Described.NOTHING::equals);
    }

    boolean all(Predicate<Described> test) {
        return notes.stream().allMatch(test);
    }

    boolean any(Predicate<Described> test) {
        return notes.stream().anyMatch(test);
    }

    Group spanning(Said said) {
        from = Math.min(from, said.from());
        to = Math.max(to, said.to());
        return this;
    }

    /** Each note leads to the next; how they are reached is not said of the first. */
    void asPath() {
        path = true;
        if (notes.size() > 1) {
            notes.set(0, notes.get(0).unstruck());
        }
    }

    /** So many notes instead of one; what was said of the one is said of each. */
    void spread(int many) {
        if (notes.size() == 1 && many > 1) {
            var one = notes.get(0);
            var each = one.many() == many ? one.times(1) : one;
            notes.clear();
            notes.addAll(Collections.nCopies(many, each));
        }
    }

    void change(UnaryOperator<Described> change) {
        notes.replaceAll(change);
    }

    /** All notes, but of a path only those that are reached. */
    void changeReached(UnaryOperator<Described> change) {
        for (int i = path && notes.size() > 1 ? 1 : 0; i < notes.size(); i++) {
            notes.set(i, change.apply(notes.get(i)));
        }
    }

    void change(int index, UnaryOperator<Described> change) {
        notes.set(index, change.apply(notes.get(index)));
    }
}
