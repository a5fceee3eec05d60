package groundbass.linetext.edit;

import groundbass.linetext.source.Splice;
import groundbass.linetext.typed.CountLine;
import groundbass.linetext.typed.CountLine.Target;
import groundbass.linetext.typed.RawBar;
import groundbass.score.Count;
import groundbass.score.Fraction;
import groundbass.score.Meter;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** How the count lines of a bar are typed, so that new ones stand like those beside them. */
final class CountLayout {
    private static final int COLUMN = 5;
    private static final int LEAST_GAP = 2;

    private final IndexedText text;
    private final RawBar bar;
    private final int index;
    private final Meter meter;

    CountLayout(IndexedText text, int index) {
        this.text = text;
        this.index = index;
        this.bar = text.bars().get(index);
        this.meter = text.inForce(index).meter();
    }

    /** A whole line of text: indented and with its events in the column of its neighbours. */
    String line(String label, String events) {
        var model = model();
        String indent = model.map(count -> text.source()
                        .line(count.span().line())
                        .substring(0, count.span().column() - 1))
                .orElse("");
        int column = model.map(count ->
                        IndexedText.events(count).column() - count.span().column())
                .orElse(COLUMN);
        return indent + label + " ".repeat(Math.max(LEAST_GAP, column - label.length())) + events;
    }

    /** A count line of this bar, else the last one of an earlier bar. */
    private Optional<CountLine> model() {
        var earlier = text.bars().subList(0, index).stream()
                .flatMap(other -> other.counts.stream())
                .reduce((first, last) -> last);
        return Stream.concat(bar.counts.stream(), earlier.stream())
                .filter(count -> !count.events().isEmpty())
                .findFirst();
    }

    Splice write(CountLine count, String events) {
        var where = IndexedText.events(count);
        return text.replace(where, where.length() == 0 ? "  " + events : events);
    }

    /** In the order of time, among the lines that are there. */
    Splice insert(String label, Fraction at, String events) {
        String line = line(label, events);
        var before = bar.counts.stream()
                .filter(count -> !count.targets().isEmpty())
                .filter(count -> count.targets().get(0).from().offset(meter).isBefore(at))
                .reduce((first, last) -> last);
        if (before.isPresent()) {
            return text.insertAfterLine(before.get().span().line(), line);
        }
        int head = bar.head.span().line();
        return text.hasHead(index) ? text.insertAfterLine(head, line) : text.insertBeforeLine(head, line);
    }

    Splice insertBehind(CountLine count, String label, String events) {
        return text.insertAfterLine(count.span().line(), line(label, events));
    }

    /** Several lines in the place of one; a comment behind that one stays behind the first. */
    List<Splice> replaceLine(CountLine count, List<String> lines) {
        var first = new Splice(text.startOfLine(count.span().line()), text.end(count.span()), lines.get(0));
        if (lines.size() == 1) {
            return List.of(first);
        }
        int end = text.endOfLine(count.span().line());
        String more = lines.stream().skip(1).map(line -> text.lineEnd() + line).collect(Collectors.joining());
        return List.of(first, new Splice(end, end, more));
    }

    /** Other counts before the same events, which keep their column where there is room. */
    Splice relabel(CountLine count, String label) {
        var from = text.start(count.span());
        int events = text.start(IndexedText.events(count));
        boolean roomy = events - from >= label.length() + LEAST_GAP;
        String gap = " ".repeat(roomy ? events - from - label.length() : LEAST_GAP);
        return new Splice(from, events, label + gap);
    }

    /** One of several counts that share a figure goes. */
    Splice withoutTarget(CountLine count, Count at) {
        var targets = count.targets();
        int found = targets.stream().map(Target::from).toList().indexOf(at);
        var span = targets.get(found).span();
        boolean last = found + 1 == targets.size();
        int from = last ? text.end(targets.get(found - 1).span()) : text.start(span);
        int to = last ? text.end(span) : text.start(targets.get(found + 1).span());
        return new Splice(from, to, "");
    }
}
