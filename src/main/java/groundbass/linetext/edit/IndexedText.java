package groundbass.linetext.edit;

import groundbass.linetext.LineText;
import groundbass.linetext.assemble.BarExtent;
import groundbass.linetext.assemble.CountStretches;
import groundbass.linetext.assemble.CountStretches.Stretch;
import groundbass.linetext.problem.Problems;
import groundbass.linetext.read.TextReader;
import groundbass.linetext.read.TextReader.RawText;
import groundbass.linetext.source.Splice;
import groundbass.linetext.typed.CountLine;
import groundbass.linetext.typed.RawBar;
import groundbass.remark.Source;
import groundbass.remark.Span;
import groundbass.score.InForce;
import groundbass.score.Line;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A text beside all that was read of it, so that a change finds its place. */
final class IndexedText {
    private final String text;
    private final Source source;
    private final List<Integer> starts;
    private final RawText raw;
    private final Line line;
    private final List<InForce> inForce;

    IndexedText(String text) {
        this(text, LineText.read(text).line());
    }

    /** @param line what the text reads as */
    IndexedText(String text, Line line) {
        this.text = text;
        this.source = Source.of("", text);
        this.starts = starts(text, source);
        this.raw = new TextReader(source, new Problems()).read();
        this.line = line;
        this.inForce = line.inForce();
    }

    private static List<Integer> starts(String text, Source source) {
        var starts = new ArrayList<Integer>();
        int at = text.startsWith("\uFEFF") ? 1 : 0;
        for (var one : source.lines()) {
            starts.add(at);
            at += one.length();
            at += text.startsWith("\r\n", at) ? 2 : 1;
        }
        return starts;
    }

    String all() {
        return text;
    }

    Source source() {
        return source;
    }

    Line line() {
        return line;
    }

    List<RawBar> bars() {
        return raw.bars();
    }

    InForce inForce(int index) {
        return inForce.get(index);
    }

    List<InForce> inForce() {
        return inForce;
    }

    /** The index of the bar of this number, where the text has it. */
    Optional<Integer> indexOf(int number) {
        int index = line.indexOf(number);
        return index >= 0 && index < bars().size() ? Optional.of(index) : Optional.empty();
    }

    String lineEnd() {
        return text.contains("\r\n") ? "\r\n" : "\n";
    }

    int start(Span span) {
        return starts.get(span.line() - 1) + span.column() - 1;
    }

    int end(Span span) {
        return start(span) + span.length();
    }

    int startOfLine(int number) {
        return starts.get(number - 1);
    }

    int endOfLine(int number) {
        return starts.get(number - 1) + source.line(number).length();
    }

    /** Where the line after this one begins; the end of the text after the last. */
    int startAfter(int number) {
        return number < starts.size() ? starts.get(number) : text.length();
    }

    String text(Span span) {
        return text.substring(start(span), end(span));
    }

    boolean isBlankLine(int number) {
        return number >= 1 && number <= starts.size() && source.line(number).isBlank();
    }

    Splice replace(Span span, String with) {
        return new Splice(start(span), end(span), with);
    }

    Splice insertAfterLine(int number, String content) {
        int at = endOfLine(number);
        return new Splice(at, at, lineEnd() + content);
    }

    Splice insertBeforeLine(int number, String content) {
        int at = startOfLine(number);
        return new Splice(at, at, content + lineEnd());
    }

    /** The line of a text goes with its end. */
    Splice deleteLines(int first, int last) {
        boolean atEnd = last >= starts.size();
        int from = atEnd && first > 1 ? endOfLine(first - 1) : startOfLine(first);
        return new Splice(from, startAfter(last), "");
    }

    BarExtent extent(int index) {
        var bar = line.bars().get(index);
        var now = inForce.get(index);
        return new BarExtent(
                now.number(), now.meter(), now.key(), bar.from(), bar.to(), now.style(), bar.from(), false);
    }

    List<Stretch> stretches(int index) {
        return CountStretches.of(bars().get(index).counts, extent(index), new Problems());
    }

    /** What stands behind the counts of a line; a spot at its end where nothing does. */
    static Span events(CountLine count) {
        var whole = count.span();
        int end = whole.column() + whole.length();
        int start =
                count.events().isEmpty() ? end : count.events().get(0).span().column();
        return new Span(whole.line(), start, end - start);
    }

    /** Whether the bar has a line of its own that begins it. */
    boolean hasHead(int index) {
        var head = bars().get(index).head.span();
        return head.length() > 0 && !Character.isDigit(text(head).charAt(0));
    }

    /** The last line of text that this bar's counts or its head stand on. */
    int lastLine(int index) {
        var bar = bars().get(index);
        return bar.counts.stream()
                .mapToInt(count -> count.span().line())
                .reduce(bar.head.span().line(), Math::max);
    }

    /** The last line of text that belongs to a bar, the signs after it included. */
    int lastLineWithSigns(int index) {
        var signs = bars().get(index).before.signs;
        int last = lastLine(index);
        for (var sign : List.of(RawBar.Sign.END, RawBar.Sign.ENDING_END)) {
            last = Math.max(
                    last, Optional.ofNullable(signs.get(sign)).map(Span::line).orElse(0));
        }
        return last;
    }
}
