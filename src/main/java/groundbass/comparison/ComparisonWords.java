package groundbass.comparison;

import groundbass.comparison.Change.Changed;
import groundbass.comparison.Change.Difference;
import groundbass.comparison.Change.Inserted;
import groundbass.comparison.Change.Removed;
import groundbass.text.Message;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;

/** Says what differs between two lines: a clause for each change, such as {@code bar 5: count 3 (pitch)}. */
public final class ComparisonWords {
    /** That something at the head of a line differs. */
    public static final Message HEAD = Message.of("compare.head");

    private static final int MOST_COUNTS = 4;

    private ComparisonWords() {}

    /**
     * The clauses in order, without a capital or a stop; none where the lines are the same.
     *
     * @param most how many there are at most; where there are more, the last says how many are left out
     */
    public static List<Message> of(LineComparison comparison, int most) {
        var clauses = new ArrayList<Message>();
        if (comparison.head()) {
            clauses.add(HEAD);
        }
        comparison.changes().forEach(change -> clauses.add(clause(change)));
        if (clauses.size() <= most) {
            return List.copyOf(clauses);
        }
        var shown = new ArrayList<>(clauses.subList(0, most - 1));
        shown.add(Message.of("compare.more", clauses.size() - shown.size()));
        return List.copyOf(shown);
    }

    /** One of the clauses: what one change is. */
    public static Message clause(Change change) {
        if (change instanceof Inserted inserted) {
            return bars("compare.inserted", inserted.first(), inserted.last());
        }
        if (change instanceof Removed removed) {
            return bars("compare.removed", removed.first(), removed.last());
        }
        return changed((Changed) change);
    }

    private static Message bars(String key, int first, int last) {
        return first == last ? Message.of(key + ".one", first) : Message.of(key, first, last);
    }

    private static Message changed(Changed bar) {
        var parts = bar.differences().size() > MOST_COUNTS ? wholeBar(bar) : byCount(bar);
        return bar.before() == bar.after()
                ? Message.of("compare.changed", bar.after(), parts)
                : Message.of("compare.changed.moved", bar.after(), bar.before(), parts);
    }

    /** Where too many counts differ to name each, only in what. */
    private static Message wholeBar(Changed bar) {
        var all = EnumSet.noneOf(Aspect.class);
        bar.differences().forEach(difference -> all.addAll(difference.aspects()));
        return names(all);
    }

    private static Message byCount(Changed bar) {
        return joined(bar.differences().stream().map(ComparisonWords::part).toList());
    }

    private static Message part(Difference difference) {
        var names = names(difference.aspects());
        return difference
                .at()
                .map(count -> Message.of("compare.count", count.toString(), names))
                .orElse(names);
    }

    private static Message names(Collection<Aspect> aspects) {
        return joined(
                aspects.stream().map(aspect -> Message.of(aspect.messageKey())).toList());
    }

    private static Message joined(List<Message> parts) {
        return parts.stream()
                .reduce((one, next) -> Message.of("compare.list", one, next))
                .orElseThrow();
    }
}
