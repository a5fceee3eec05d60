package groundbass.linetext.edit;

import groundbass.linetext.assemble.Numbering;
import groundbass.linetext.problem.Problems;
import groundbass.linetext.source.Moment;
import groundbass.linetext.source.Splice;
import groundbass.linetext.typed.RawBar.Copied;
import groundbass.remark.Span;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Changes to whole bars: one more, one fewer, other chords. */
final class BarEdits {
    private static final Pattern CHORDS = Pattern.compile("\\s+over(\\s+(.*?))?(?=\\s+until\\s|\\s+as\\s|\\s*=|\\s*$)");
    private static final Pattern FIGURES = Pattern.compile("\\d+");

    private static final int COLUMN = 5;

    private final IndexedText text;
    private final List<Numbering.Number> numbers;

    BarEdits(IndexedText text) {
        this.text = text;
        this.numbers = text.bars().isEmpty()
                ? List.of()
                : new Numbering(new Problems(), text.line().header().meter()).numbers(text.bars());
    }

    List<Splice> add(int after) {
        if (text.bars().isEmpty()) {
            return List.of(first());
        }
        return text.indexOf(after).map(this::addBehind).orElse(List.of());
    }

    /** At the end of the text, an empty line behind the header. */
    private Splice first() {
        int last = text.source().lines().size();
        int at = text.endOfLine(last);
        String bar = ("bar 1\n" + silence(0) + "\n").replace("\n", text.lineEnd());
        if (text.source().lines().stream().allMatch(String::isBlank)) {
            return new Splice(at, at, bar);
        }
        String finish = text.isBlankLine(last) ? "" : text.lineEnd();
        String gap = text.isBlankLine(last) && text.isBlankLine(last - 1) ? "" : text.lineEnd();
        return new Splice(at, at, finish + gap + bar);
    }

    private List<Splice> addBehind(int index) {
        return insertBehind(index, List.of("\n" + silence(index)));
    }

    /** @param bars what stands behind {@code bar} and the number of each, its lines included */
    List<Splice> insertBehind(int index, List<String> bars) {
        int number = numbers.get(index).typed() + 1;
        boolean numbered = text.bars().get(index).head.number().isPresent() || !text.hasHead(index);
        int next = index + 1;
        boolean apart = next < text.bars().size()
                ? text.isBlankLine(text.lastLineWithSigns(index) + 1)
                : index == 0 || hasGapBefore(index);
        String more = IntStream.range(0, bars.size())
                .mapToObj(i -> (apart ? "\n" : "") + (numbered ? "bar " + (number + i) : "bar") + bars.get(i))
                .collect(Collectors.joining("\n"));
        var splices = new ArrayList<Splice>();
        splices.add(text.insertAfterLine(text.lastLineWithSigns(index), more.replace("\n", text.lineEnd())));
        for (int i = 0; i < text.bars().size(); i++) {
            renumber(i, i > index, number - 1, bars.size(), splices);
        }
        return splices;
    }

    /** The number of a bar as the text has it, or would. */
    int typed(int index) {
        return numbers.get(index).typed();
    }

    private boolean hasGapBefore(int index) {
        return text.isBlankLine(text.bars().get(index).head.span().line() - 1);
    }

    /** A rest for every beat, so that each count stands ready to be written at. */
    private String silence(int index) {
        var meter = text.inForce(index).meter();
        return meter.beatStarts().stream()
                .map(start -> Moment.at(start, meter).toString())
                .map(label -> text.bars().isEmpty()
                        ? label + " ".repeat(Math.max(2, COLUMN - label.length())) + "rest"
                        : new CountLayout(text, index).line(label, "rest"))
                .collect(Collectors.joining("\n"));
    }

    List<Splice> delete(int bar) {
        return text.indexOf(bar).map(this::deleteAt).orElse(List.of());
    }

    private List<Splice> deleteAt(int index) {
        var splices = new ArrayList<Splice>();
        int first = text.bars().get(index).head.span().line();
        int last = text.lastLine(index);
        boolean gapAfter = text.isBlankLine(last + 1);
        boolean gapBefore = first == 1 || text.isBlankLine(first - 1);
        splices.add(text.deleteLines(first, gapAfter && gapBefore ? last + 1 : last));
        int gone = numbers.get(index).typed();
        for (int i = 0; i < text.bars().size(); i++) {
            if (i != index && copies(i, gone)) {
                splices.add(writtenOut(i, text.inForce(i).number() - 1));
            } else if (i != index) {
                renumber(i, i > index, gone, -1, splices);
            }
        }
        return splices;
    }

    boolean copies(int index, int typed) {
        return text.bars()
                .get(index)
                .head
                .copied()
                .filter(copied -> copied.bar() == typed)
                .isPresent();
    }

    /** The bar without help of another, under this number. */
    Splice writtenOut(int index, int number) {
        int from = text.startOfLine(text.bars().get(index).head.span().line());
        int to = text.endOfLine(text.lastLine(index));
        return new Splice(from, to, WrittenOut.inPlace(text, index, number).replace("\n", text.lineEnd()));
    }

    /** Moves the number of a bar, and that of the bar it copies where that stands behind {@code pivot}. */
    private void renumber(int index, boolean later, int pivot, int by, List<Splice> splices) {
        var head = text.bars().get(index).head;
        head.number()
                .filter(number -> later)
                .ifPresent(number -> splices.add(text.replace(number.span(), String.valueOf(number.number() + by))));
        head.copied().filter(copied -> copied.bar() > pivot).ifPresent(copied -> splices.add(source(copied, by)));
    }

    private Splice source(Copied copied, int by) {
        var figure = FIGURES.matcher(text.text(copied.span()));
        if (!figure.find()) {
            throw new IllegalStateException("a copy names no bar: " + copied);
        }
        int from = text.start(copied.span()) + figure.start();
        return new Splice(from, from + figure.end() - figure.start(), String.valueOf(copied.bar() + by));
    }

    List<Splice> chords(int bar, String typed) {
        return text.indexOf(bar)
                .filter(text::hasHead)
                .map(index -> chords(text.bars().get(index).head.span(), LineEdit.oneLine(typed)))
                .orElse(List.of());
    }

    private List<Splice> chords(Span head, String chords) {
        var over = CHORDS.matcher(text.text(head));
        int start = text.start(head);
        if (!over.find()) {
            return chords.isEmpty()
                    ? List.of()
                    : List.of(new Splice(text.end(head), text.end(head), " over " + chords));
        }
        if (chords.isEmpty()) {
            return List.of(new Splice(start + over.start(), start + over.end(), ""));
        }
        return over.group(2) == null
                ? List.of(new Splice(start + over.end(), start + over.end(), " " + chords))
                : List.of(new Splice(start + over.start(2), start + over.end(2), chords));
    }

    /** What a bar's head says behind {@code over}; empty where it says nothing. */
    static Optional<String> chords(String head) {
        var over = CHORDS.matcher(head);
        return over.find() ? Optional.ofNullable(over.group(2)) : Optional.empty();
    }
}
