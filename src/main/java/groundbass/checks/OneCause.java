package groundbass.checks;

import groundbass.checks.finding.Finding;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Says once what several rules notice of one slip: the rule that knows what was meant speaks for the others. */
final class OneCause {
    /** Who speaks for whom about the same stretch. */
    private static final Map<String, Set<String>> SPEAKS_FOR = Map.of(
            "bar-nearly-repeats", Set.of("note-outside-chord", "note-outside-key", "place-in-question"),
            "place-in-question", Set.of("note-outside-chord", "note-outside-key"),
            "chord-in-question", Set.of("note-outside-chord", "place-in-question"));

    private OneCause() {}

    static List<Finding> of(List<Finding> findings) {
        var said = new HashSet<List<Object>>();
        return findings.stream()
                .filter(finding -> findings.stream().noneMatch(other -> speaksFor(other, finding)))
                .filter(finding -> said.add(List.of(finding.code(), finding.passage())))
                .toList();
    }

    private static boolean speaksFor(Finding one, Finding other) {
        return SPEAKS_FOR.getOrDefault(one.code(), Set.of()).contains(other.code())
                && one.passage().overlaps(other.passage());
    }
}
