package groundbass.walkthrough;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A walkthrough with an educator's sentences in place of some of the program's.
 *
 * @param steps every step, in order
 * @param lost  edits whose notes are no longer in the line as they were, in the order given
 */
public record Retelling(List<Retold> steps, List<Edit> lost) {
    /**
     * A sentence of the educator's.
     *
     * @param bar the bar in which its step stood when it was written; chooses where neighbours do not
     */
    public record Edit(Anchor anchor, int bar, String sentence) {}

    /** A step as the program tells it, and what the educator says instead. */
    public record Retold(Step told, Optional<Edit> edit) {
        /** The step as it is read. */
        public Step step() {
            return edit.map(given -> told.saying(given.sentence())).orElse(told);
        }
    }

    public Retelling {
        steps = List.copyOf(steps);
        lost = List.copyOf(lost);
    }

    /** Gives each edit to the step that tells the same notes; of several, to the one most like where it was written. */
    public static Retelling of(List<Step> told, Collection<Edit> edits) {
        Map<Integer, Edit> given = new LinkedHashMap<>();
        var lost = new ArrayList<Edit>();
        for (var edit : edits) {
            place(told, edit, given).ifPresentOrElse(place -> given.put(place, edit), () -> lost.add(edit));
        }
        var steps = new ArrayList<Retold>();
        for (int i = 0; i < told.size(); i++) {
            steps.add(new Retold(told.get(i), Optional.ofNullable(given.get(i))));
        }
        return new Retelling(steps, lost);
    }

    /** The steps as they are read. */
    public List<Step> read() {
        return steps.stream().map(Retold::step).toList();
    }

    private static Optional<Integer> place(List<Step> told, Edit edit, Map<Integer, Edit> taken) {
        var places = new ArrayList<Integer>();
        for (int i = 0; i < told.size(); i++) {
            if (told.get(i).anchor().own().equals(edit.anchor().own()) && !taken.containsKey(i)) {
                places.add(i);
            }
        }
        return places.stream()
                .min(Comparator.<Integer>comparingInt(i -> -told.get(i).anchor().likeness(edit.anchor()))
                        .thenComparingInt(
                                i -> Math.abs(told.get(i).passage().from().bar() - edit.bar())));
    }
}
