package groundbass.walkthrough;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

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

    /** A step that tells the notes of an edit. */
    private record Match(int step, int edit, int likeness, int barsAway) {}

    /** Gives each edit to a step that tells the same notes, those first that are most like where they were written. */
    public static Retelling of(List<Step> told, Collection<Edit> edits) {
        var wanted = List.copyOf(edits);
        Map<Integer, Edit> given = new HashMap<>();
        Set<Integer> placed = new HashSet<>();
        for (var match : matches(told, wanted)) {
            if (!given.containsKey(match.step()) && placed.add(match.edit())) {
                given.put(match.step(), wanted.get(match.edit()));
            }
        }
        return new Retelling(
                IntStream.range(0, told.size())
                        .mapToObj(i -> new Retold(told.get(i), Optional.ofNullable(given.get(i))))
                        .toList(),
                IntStream.range(0, wanted.size())
                        .filter(i -> !placed.contains(i))
                        .mapToObj(wanted::get)
                        .toList());
    }

    private static List<Match> matches(List<Step> told, List<Edit> edits) {
        var matches = new ArrayList<Match>();
        for (int edit = 0; edit < edits.size(); edit++) {
            var anchor = edits.get(edit).anchor();
            for (int step = 0; step < told.size(); step++) {
                var here = told.get(step);
                if (here.anchor().own().equals(anchor.own())) {
                    int away = Math.abs(
                            here.passage().from().bar() - edits.get(edit).bar());
                    matches.add(new Match(step, edit, here.anchor().likeness(anchor), away));
                }
            }
        }
        matches.sort(Comparator.comparingInt(Match::likeness).reversed().thenComparingInt(Match::barsAway));
        return matches;
    }

    /** The steps as they are read. */
    public List<Step> read() {
        return steps.stream().map(Retold::step).toList();
    }
}
