package groundbass.linetext.edit;

import groundbass.linetext.problem.Problems;
import groundbass.linetext.read.Scanner;
import groundbass.linetext.source.Keyword;
import groundbass.linetext.source.Limits;
import groundbass.linetext.source.Splice;
import groundbass.remark.Span;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Changes to the settings before the first bar. */
final class HeaderEdits {
    private static final int COLUMN = 8;

    private final IndexedText text;
    private final List<Said> said;

    /** One line of the header, readable or not. */
    record Said(Keyword word, Span name, Span value) {}

    HeaderEdits(IndexedText text) {
        this.text = text;
        this.said = said(text);
    }

    /** The settings in the order of the text. */
    static List<Said> said(IndexedText text) {
        var found = new ArrayList<Said>();
        var source = text.source();
        int end = text.bars().isEmpty()
                ? source.lines().size()
                : text.bars().get(0).head.span().line() - 1;
        for (int number = 1; number <= end; number++) {
            setting(number, source.line(number)).ifPresent(found::add);
        }
        return List.copyOf(found);
    }

    private static Optional<Said> setting(int number, String line) {
        var scanner = new Scanner(number, line, new Problems());
        if (line.length() > Limits.LONGEST_LINE || scanner.isBlank() || scanner.startsWithDigit()) {
            return Optional.empty();
        }
        var first = scanner.word();
        var word = Keyword.of(first.text()).filter(known -> known.reach() != Keyword.Reach.BAR);
        var value = scanner.freeText().span();
        return word.map(known -> new Said(known, first.span(), value));
    }

    List<Splice> set(String name, String typed) {
        var word = Keyword.of(name).filter(known -> known.reach() != Keyword.Reach.BAR);
        if (word.isEmpty()) {
            return List.of();
        }
        String value = LineEdit.oneLine(typed);
        return said.stream()
                .filter(line -> line.word() == word.get())
                .findFirst()
                .map(line -> List.of(change(line, value)))
                .orElseGet(() -> value.isEmpty() ? List.of() : List.of(insert(word.get(), value)));
    }

    private Splice change(Said line, String value) {
        if (value.isEmpty()) {
            int number = line.name().line();
            return text.deleteLines(number, number);
        }
        String gap = line.value().length() == 0 ? " " : "";
        return text.replace(line.value(), gap + value);
    }

    /** Behind what usually stands before it, else at the top. */
    private Splice insert(Keyword word, String value) {
        int column = said.stream()
                .filter(line -> line.value().length() > 0)
                .map(line -> line.value().column() - line.name().column())
                .findFirst()
                .orElse(COLUMN);
        String name = word.toString();
        String line = name + " ".repeat(Math.max(1, column - name.length())) + value;
        return said.stream()
                .filter(other -> other.word().compareTo(word) < 0)
                .max(Comparator.comparingInt(other -> other.name().line()))
                .map(other -> text.insertAfterLine(other.name().line(), line))
                .orElseGet(() -> text.insertBeforeLine(1, line + emptyLine()));
    }

    /** A first setting keeps its distance from a bar. */
    private String emptyLine() {
        boolean tight = said.isEmpty() && !text.bars().isEmpty() && !text.isBlankLine(1);
        return tight ? text.lineEnd() : "";
    }
}
