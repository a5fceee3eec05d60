package groundbass.linetext.edit;

import groundbass.linetext.LineText;
import groundbass.linetext.source.Splice;
import groundbass.score.Shift;
import groundbass.score.Technique;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/** What is done with several bars: repeated behind themselves, brought from elsewhere, moved, struck otherwise, taken over. */
final class PassageEdits {
    /** What may stand before the number of the bar that is taken over. */
    private static final Pattern TAKEN = Pattern.compile("(?:=|as\\s)?\\s*(?:bar\\s*)?([0-9].*)");

    private final IndexedText text;
    private final BarEdits bars;

    PassageEdits(IndexedText text) {
        this.text = text;
        this.bars = new BarEdits(text);
    }

    List<Splice> repeat(int first, int last) {
        var from = text.indexOf(first);
        var to = text.indexOf(last);
        if (from.isEmpty() || to.isEmpty() || from.get() > to.get() || first == 0) {
            return List.of();
        }
        var again = IntStream.rangeClosed(from.get(), to.get())
                .mapToObj(index -> " = bar " + bars.typed(index))
                .toList();
        return bars.insertBehind(to.get(), again);
    }

    List<Splice> paste(int after, String source, int first, int last) {
        var index = text.indexOf(after);
        if (index.isEmpty()) {
            return List.of();
        }
        var passage =
                WrittenOut.passage(LineText.read(source).line(), first, last, text.inForce(index.get()), text.line());
        return passage.isEmpty() ? List.of() : bars.insertBehind(index.get(), passage);
    }

    List<Splice> move(int first, int last, Shift by) {
        var from = text.indexOf(first);
        var to = text.indexOf(last);
        return from.isEmpty() || to.isEmpty() || from.get() > to.get() || by.isNone()
                ? List.of()
                : new ShiftEdits(text, from.get(), to.get(), by).splices();
    }

    List<Splice> exchange(int first, int last, Technique from, Technique to) {
        var begin = text.indexOf(first);
        var end = text.indexOf(last);
        return begin.isEmpty() || end.isEmpty() || begin.get() > end.get()
                ? List.of()
                : new TechniqueEdits(text, begin.get(), end.get(), from, to).splices();
    }

    List<Splice> takeOver(int bar, String typed) {
        String from = LineEdit.oneLine(typed);
        return text.indexOf(bar)
                .filter(text::hasHead)
                .map(index -> from.isEmpty() ? onItsOwn(index) : taken(index, from))
                .orElse(List.of());
    }

    private List<Splice> onItsOwn(int index) {
        return text.bars().get(index).head.copied().isEmpty()
                ? List.of()
                : List.of(bars.writtenOut(index, bars.typed(index)));
    }

    private List<Splice> taken(int index, String typed) {
        var taken = TAKEN.matcher(typed);
        if (!taken.matches()) {
            return List.of();
        }
        var splices = new ArrayList<Splice>();
        splices.add(head(index, "= bar " + taken.group(1)));
        splices.addAll(withoutCounts(index));
        return splices;
    }

    private Splice head(int index, String says) {
        var head = text.bars().get(index).head;
        if (head.copied().isPresent()) {
            return text.replace(head.copied().get().span(), says);
        }
        int at = head.number()
                .map(number -> text.end(number.span()))
                .orElseGet(() -> text.start(head.span()) + "bar".length());
        return new Splice(at, at, " " + says);
    }

    /** Lines that stand together go together, so that the ends of lines are counted once. */
    private List<Splice> withoutCounts(int index) {
        var lines = text.bars().get(index).counts.stream()
                .map(count -> count.span().line())
                .distinct()
                .sorted()
                .toList();
        var splices = new ArrayList<Splice>();
        int from = 0;
        for (int i = 0; i < lines.size(); i++) {
            if (i + 1 == lines.size() || lines.get(i + 1) > lines.get(i) + 1) {
                splices.add(text.deleteLines(lines.get(from), lines.get(i)));
                from = i + 1;
            }
        }
        return splices;
    }
}
