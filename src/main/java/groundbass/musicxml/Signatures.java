package groundbass.musicxml;

import groundbass.score.InForce;
import groundbass.score.Meter;
import groundbass.score.Tuning;
import groundbass.theory.Key;
import groundbass.theory.NoteName;
import groundbass.writing.WrittenBar;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The attributes of a bar: at the head of the line all of them, later what changes. The tablature shows neither key nor
 * time (rule: tab-no-signatures), shares its music with the staff above, and is written like it an octave above what
 * sounds (rule: bass-written-high).
 */
final class Signatures {
    /** The lines of a tablature on whose upper part the clef's sign may stand. */
    private static final int HIGHEST_CLEF_LINE = 5;

    private static final int LOWEST_OCTAVE = 0;

    private final List<WrittenBar> bars;
    private final Divisions divisions;
    private final Tuning tuning;

    Signatures(List<WrittenBar> bars, Divisions divisions, Tuning tuning) {
        this.bars = bars;
        this.divisions = divisions;
        this.tuning = tuning;
    }

    Optional<Node> of(int index) {
        var children = new ArrayList<Node>();
        if (divisions.changesAt(index)) {
            children.add(Node.text("divisions", divisions.of(index)));
        }
        if (index == 0 || !inForce(index).key().equals(inForce(index - 1).key())) {
            children.addAll(onBoth(key(inForce(index).key())));
        }
        if (index == 0 || !inForce(index).meter().equals(inForce(index - 1).meter())) {
            children.addAll(onBoth(time(inForce(index).meter())));
        }
        if (index == 0) {
            children.addAll(staves());
        }
        return children.isEmpty() ? Optional.empty() : Optional.of(Node.of("attributes", children));
    }

    private InForce inForce(int index) {
        return bars.get(index).inForce();
    }

    private static List<Node> onBoth(Node sign) {
        return List.of(
                sign.with("number", Staff.NOTATION.number()),
                sign.with("number", Staff.TABLATURE.number()).with("print-object", "no"));
    }

    private static Node key(Key key) {
        return Node.of("key", Node.text("fifths", key.fifths()), Node.text("mode", key.mode()));
    }

    private static Node time(Meter meter) {
        String beats = meter.hasUsualBeats()
                ? String.valueOf(meter.counts())
                : meter.beats().stream().map(String::valueOf).collect(Collectors.joining("+"));
        return Node.of("time", Node.text("beats", beats), Node.text("beat-type", meter.unit()));
    }

    private List<Node> staves() {
        int strings = tuning.size();
        var details = new ArrayList<Node>();
        details.add(Node.text("staff-type", "alternate"));
        details.add(Node.text("staff-lines", strings));
        for (int line = 1; line <= strings; line++) {
            details.add(tuning(line, strings + 1 - line));
        }
        return List.of(
                Node.text("staves", Staff.values().length),
                clef(Staff.NOTATION, "F", 4),
                clef(Staff.TABLATURE, "TAB", Math.min(strings, HIGHEST_CLEF_LINE)),
                Node.of("staff-details", details).with("number", Staff.TABLATURE.number()),
                Node.of(
                        "transpose",
                        Node.text("diatonic", 0),
                        Node.text("chromatic", 0),
                        Node.text("octave-change", -1)));
    }

    private static Node clef(Staff staff, String sign, int line) {
        return Node.of("clef", Node.text("sign", sign), Node.text("line", line)).with("number", staff.number());
    }

    /** Lines count from the lowest, strings from the highest. */
    private Node tuning(int line, int string) {
        var open = tuning.string(string).pitch();
        var children = new ArrayList<Node>();
        children.add(Node.text("tuning-step", open.name().letter()));
        children.addAll(alter("tuning-alter", open.name()));
        children.add(Node.text("tuning-octave", Math.max(LOWEST_OCTAVE, open.octave())));
        return Node.of("staff-tuning", children).with("line", line);
    }

    static List<Node> alter(String name, NoteName note) {
        return note.alteration() == 0 ? List.of() : List.of(Node.text(name, note.alteration()));
    }
}
