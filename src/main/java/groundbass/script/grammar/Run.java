package groundbass.script.grammar;

import groundbass.script.lexicon.WordOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;

/** The units of a sentence, or of talk that nobody cut into sentences, and where clauses begin in it. */
public final class Run {
    private final List<Read> units;
    private final boolean unpunctuated;
    private final Set<Integer> cuts;
    private final Strain strain;
    private final Openings openings;

    Run(List<Read> units, boolean unpunctuated, WordOrder order) {
        this.units = List.copyOf(units);
        this.unpunctuated = unpunctuated;
        this.cuts = new TreeSet<>(Splitter.cuts(this.units, unpunctuated, order));
        this.strain = new Strain(this.units);
        this.openings = new Openings(this.units, order);
    }

    /** The clauses between the likely cuts. */
    public List<Clause> clauses() {
        var clauses = new ArrayList<Clause>();
        int from = 0;
        for (int to : cuts) {
            clause(from, to).ifPresent(clauses::add);
            from = to;
        }
        clause(from, units.size()).ifPresent(clauses::add);
        return clauses;
    }

    /** Of the units in an interval; empty where none of them means anything. */
    public Optional<Clause> clause(int from, int to) {
        return ClosedClause.of(units.subList(from, to), unpunctuated);
    }

    /** Whether what stands before and behind an index says that a clause ends there. */
    public boolean isLikely(int at) {
        return at == 0 || at == units.size() || cuts.contains(at);
    }

    /** Whether the words at an index say by themselves that a clause begins there. */
    public boolean isPlain(int at) {
        return isLikely(at) || openings.isAt(at);
    }

    /** Indexes at which a clause can begin, likely or not; the first is 0, the last the number of units. */
    public List<Integer> joints() {
        SortedSet<Integer> joints = new TreeSet<>(cuts);
        joints.add(0);
        joints.add(units.size());
        for (int i = 1; i < units.size(); i++) {
            if (Joints.isAt(i, units)) {
                joints.add(i);
            }
        }
        return List.copyOf(joints);
    }

    /** How little an interval looks like a clause: 0 where nothing speaks against it. */
    public double strain(int from, int to) {
        return strain.inside(from, to);
    }

    /** How little an index looks like the end of a clause. */
    public double strain(int at) {
        return strain.cut(at);
    }
}
