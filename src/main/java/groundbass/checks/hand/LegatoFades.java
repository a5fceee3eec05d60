package groundbass.checks.hand;

import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.Rule;
import groundbass.performance.Played;
import groundbass.remark.Severity;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Without a new stroke a string fades: three hammers or pulls in a row are few and soft (rule: legato-fades). */
final class LegatoFades implements Rule {
    private static final int MANY = 3;

    @Override
    public Stream<Finding> findings(Evidence evidence) {
        return evidence.notes().stream()
                .filter(note -> isUnstruck(note)
                        && evidence.before(note).filter(LegatoFades::isUnstruck).isEmpty())
                .map(first -> chain(evidence, first))
                .filter(chain -> chain.size() >= MANY && !isBackAndForth(chain))
                .map(chain -> Finding.of(evidence, "legato-fades", Severity.WORTH_A_LOOK, chain, chain.size()));
    }

    private static boolean isUnstruck(Played note) {
        return note.note().pluck().isEmpty();
    }

    private static List<Played> chain(Evidence evidence, Played first) {
        var chain = new ArrayList<Played>();
        var next = Optional.of(first);
        while (next.filter(LegatoFades::isUnstruck).isPresent()) {
            chain.add(next.get());
            next = evidence.after(next.get());
        }
        return chain;
    }

    /** A trill keeps its string going. */
    private static boolean isBackAndForth(List<Played> chain) {
        return chain.stream().map(note -> note.note().place()).distinct().count() <= 2;
    }
}
