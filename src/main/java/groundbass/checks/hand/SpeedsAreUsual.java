package groundbass.checks.hand;

import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.Rule;
import groundbass.checks.hand.Pace.Window;
import groundbass.performance.Played;
import groundbass.remark.Severity;
import groundbass.text.Message;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Stream;

/** No technique goes faster than it usually does (limits and source at {@link Speed}). Neighbouring windows are one remark. */
final class SpeedsAreUsual implements Rule {
    private static final double TOLERANCE = 1.01;

    @Override
    public Stream<Finding> findings(Evidence evidence) {
        var findings = new ArrayList<Finding>();
        List<Window> run = new ArrayList<>();
        for (var window : Pace.of(evidence)) {
            if (!run.isEmpty() && !continues(run, window)) {
                findings.add(finding(evidence, run));
                run.clear();
            }
            if (isFast(window)) {
                run.add(window);
            }
        }
        if (!run.isEmpty()) {
            findings.add(finding(evidence, run));
        }
        return findings.stream();
    }

    private static boolean isFast(Window window) {
        return window.perSecond() > window.speed().fast() * TOLERANCE;
    }

    private static boolean continues(List<Window> run, Window window) {
        var last = run.get(run.size() - 1);
        return isFast(window) && last.speed() == window.speed() && isBeyond(last) == isBeyond(window);
    }

    private static boolean isBeyond(Window window) {
        return window.perSecond() > window.speed().most() * TOLERANCE;
    }

    private static Finding finding(Evidence evidence, List<Window> run) {
        var fastest = run.stream()
                .max((one, two) -> Double.compare(one.perSecond(), two.perSecond()))
                .orElseThrow();
        boolean beyond = isBeyond(fastest);
        var notes = notes(run);
        return Finding.of(
                evidence,
                beyond ? "speed-beyond-limit" : "speed-high",
                beyond ? Severity.UNWISE : Severity.WORTH_A_LOOK,
                notes,
                Message.of(fastest.speed().messageKey()),
                tenths(fastest.perSecond()),
                beyond ? fastest.speed().most() : fastest.speed().fast());
    }

    /** Each once, told apart by its place: its hash would go through the whole of its bar. */
    private static List<Played> notes(List<Window> run) {
        var notes = new TreeMap<Integer, Played>();
        run.stream().flatMap(window -> window.notes().stream()).forEach(note -> notes.put(note.index(), note));
        return List.copyOf(notes.values());
    }

    private static double tenths(double value) {
        return Math.round(10 * value) / 10.0;
    }
}
