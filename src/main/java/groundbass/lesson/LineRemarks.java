package groundbass.lesson;

import groundbass.checks.Checks;
import groundbass.checks.finding.Finding;
import groundbass.linetext.Reading;
import groundbass.linetext.assemble.Origins;
import groundbass.remark.Remark;
import groundbass.remark.Severity;
import groundbass.remark.Span;
import groundbass.text.Message;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * All that is to be said of the text of a line: what of it cannot be read, then what a teacher would remark on in what
 * can. Whoever tells an educator of a line, on a page or at the command line, tells this list.
 */
public final class LineRemarks {
    /** How many remarks on notes are listed; more of them help nobody. */
    private static final int MOST = 50;

    private LineRemarks() {}

    /** In the order of the text, mistakes first. */
    public static List<Remark> of(Reading reading) {
        var all = Checks.of(reading.line());
        var remarks = gravest(all).stream()
                .map(finding -> remark(finding, reading.origins()))
                .toList();
        var more = all.size() > MOST ? Optional.of(more(all.size() - MOST, remarks)) : Optional.<Remark>empty();
        return Stream.of(reading.problems().stream(), remarks.stream(), more.stream())
                .flatMap(remark -> remark)
                .toList();
    }

    /** Where there are too many, the lightest are left out, so that none which blocks is. */
    private static List<Finding> gravest(List<Finding> all) {
        var kept = all.stream()
                .sorted(Comparator.comparing(Finding::severity))
                .limit(MOST)
                .toList();
        Set<Finding> set =
                Collections.newSetFromMap(new IdentityHashMap<>()); // a finding's hash goes through all of its bars
        set.addAll(kept);
        return all.stream().filter(set::contains).toList();
    }

    private static Remark more(int number, List<Remark> before) {
        var span = before.get(before.size() - 1).span();
        return new Remark(
                Severity.WORTH_A_LOOK,
                "more-remarks",
                span,
                Optional.empty(),
                Message.of("remark.more", number),
                List.of());
    }

    private static Remark remark(Finding finding, Origins origins) {
        return new Remark(
                finding.severity(),
                finding.code(),
                span(finding, origins),
                Optional.of(finding.passage()),
                finding.reason(),
                List.copyOf(finding.repairs()));
    }

    /** Its notes, as far as they stand in one line of the text with the first of them; else the event where it begins. */
    private static Span span(Finding finding, Origins origins) {
        var notes = finding.notes().stream()
                .flatMap(note ->
                        origins.note(note.position().bar(), note.position().at(), note.string()).stream())
                .toList();
        if (notes.isEmpty()) {
            return origins.at(finding.position());
        }
        return notes.stream()
                .filter(span -> span.line() == notes.get(0).line())
                .sorted()
                .reduce(Span::to)
                .orElseThrow();
    }
}
