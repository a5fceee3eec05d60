package groundbass.publishing;

import groundbass.checks.Checks;
import groundbass.checks.Finding;
import groundbass.checks.Severity;
import groundbass.document.LineSource;
import groundbass.linetext.Reading;
import groundbass.linetext.problem.Problem;
import groundbass.publishing.Remark.Weight;
import groundbass.score.Bar;
import groundbass.score.Count;
import groundbass.score.Line;
import groundbass.text.Message;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** What is to be said of one line before it goes out: its mistakes, or where it has none, what proofreading finds. */
final class LineRemarks {
    private static final int MOST = 50;

    private LineRemarks() {}

    /** An empty text is the revision's to complain of. A text with mistakes is not judged yet. */
    static List<Remark> of(String field, LineSource source, Reading reading) {
        if (source.isBlank()) {
            return List.of();
        }
        if (reading.hasErrors()) {
            return reading.problems().stream()
                    .filter(problem -> problem.severity() == groundbass.linetext.problem.Severity.ERROR)
                    .limit(MOST)
                    .map(problem -> mistake(field, problem))
                    .toList();
        }
        return Checks.of(reading.line()).stream()
                .limit(MOST)
                .map(finding -> remark(field, reading.line(), finding))
                .toList();
    }

    private static Remark mistake(String field, Problem problem) {
        var span = problem.span();
        var message = Message.of("publishing.problem.line", span.line(), span.column(), problem.sentence());
        return new Remark(Weight.BLOCKS, field, message, problem.toString());
    }

    private static Remark remark(String field, Line line, Finding finding) {
        int bar = finding.position().bar();
        var reason = finding.reason();
        var message = Count.at(
                        finding.position().at(),
                        line.inForce().get(line.indexOf(bar)).meter())
                .map(count -> Message.of("publishing.remark.count", bar, count.toString(), reason))
                .orElseGet(() -> Message.of("publishing.remark.bar", bar, reason));
        return new Remark(weight(finding.severity()), field, message, finding.code() + bars(line, finding));
    }

    private static Weight weight(Severity severity) {
        return switch (severity) {
            case IMPOSSIBLE -> Weight.BLOCKS;
            case UNWISE -> Weight.ASKS;
            case WORTH_A_LOOK -> Weight.MENTIONS;
        };
    }

    /** The notes of the bars that it speaks of: what was accepted of them holds as long as they stay as they are. */
    private static String bars(Line line, Finding finding) {
        int first = line.indexOf(finding.passage().from().bar());
        int last =
                Math.min(line.indexOf(finding.passage().to().bar()), line.bars().size() - 1);
        return IntStream.rangeClosed(first, last)
                .mapToObj(line.bars()::get)
                .map(Bar::notes)
                .map(List::toString)
                .collect(Collectors.joining("\n"));
    }
}
