package groundbass.checks.slip;

import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.Repairs;
import groundbass.checks.finding.Rule;
import groundbass.performance.Played;
import groundbass.remark.Severity;
import groundbass.score.NoteAt;
import groundbass.score.Place.Fretted;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A note that stands at one place where everything speaks for another: the same figure elsewhere, chord and key, the notes
 * around it, and how easily the one is typed for the other (rule: slip-weights).
 */
final class SlipsStandOut implements Rule {
    private static final int MOST_IN_A_BAR = 2;
    private static final Comparator<Suspicion> STRONGEST =
            Comparator.comparingDouble(Suspicion::weight).reversed();

    @Override
    public Stream<Finding> findings(Evidence evidence) {
        var roots = new RootHabit(evidence);
        var strong = Stream.concat(new KinSuspicions(evidence, roots).all(), alone(evidence, roots))
                .filter(Suspicion::isStrong)
                .sorted(STRONGEST)
                .toList();
        return suspects(strong).stream()
                .collect(Collectors.groupingBy(
                        each -> each.note().at().position().bar()))
                .values()
                .stream()
                .filter(inBar -> inBar.size() <= MOST_IN_A_BAR)
                .flatMap(List::stream)
                .map(each -> finding(evidence, each));
    }

    /** Each note once, and none that has testified: of two that differ, one is wrong. */
    private static List<Suspicion> suspects(List<Suspicion> strongestFirst) {
        var heard = new HashSet<NoteAt>();
        var suspects = new ArrayList<Suspicion>();
        for (var each : strongestFirst) {
            if (heard.add(each.note().at())) {
                heard.addAll(each.witnesses());
                suspects.add(each);
            }
        }
        return suspects;
    }

    /** Without kin, only where the place that was likely meant suits the note much better. */
    private static Stream<Suspicion> alone(Evidence evidence, RootHabit roots) {
        return evidence.notes().stream()
                .filter(note -> note.note().place() instanceof Fretted
                        && note.note().ornaments().harmonic().isEmpty())
                .flatMap(note -> alone(evidence, note, new PlaceSense(evidence, note, roots.holdsFor(note))));
    }

    private static Stream<Suspicion> alone(Evidence evidence, Played note, PlaceSense sense) {
        var header = evidence.line().header();
        var written = (Fretted) note.note().place();
        double reasons =
                sense.reason() + (MeantVariation.isLastOfBar(evidence, note.at()) ? MeantVariation.LAST_NOTE : 0);
        return Misprint.meant(written, header.tuning().size(), header.frets())
                .filter(place -> !sense.isSamePitch(place))
                .map(place -> Suspicion.alone(
                        note,
                        place,
                        sense.harmony(place) + sense.neighbourhood(place) + Misprint.ease(written, place) - reasons));
    }

    private static Finding finding(Evidence evidence, Suspicion suspicion) {
        var note = suspicion.note();
        String written = evidence.typed(note.note().place());
        String meant = evidence.typed(suspicion.meant());
        var finding = suspicion
                .bar()
                .map(bar -> Finding.of(
                        evidence, "bar-nearly-repeats", Severity.WORTH_A_LOOK, List.of(note), written, meant, bar))
                .orElseGet(() -> Finding.of(
                        evidence, "place-in-question", Severity.WORTH_A_LOOK, List.of(note), written, meant));
        return finding.with(Repairs.place(evidence, note, suspicion.meant()));
    }
}
