package groundbass.engraving;

import groundbass.engraving.TechniqueLetters.Letter;
import groundbass.score.Passage;
import groundbass.score.Technique;
import groundbass.writing.Element.Chord;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Which technique letters stand where: at every note, or only where a technique begins, as the letters say. */
final class TechniqueMarks {
    static final double SIZE = 1.75;

    private final TechniqueLetters letters;
    private Optional<Technique> before = Optional.empty();

    private TechniqueMarks(TechniqueLetters letters) {
        this.letters = letters;
    }

    /** The letters at one moment, lowest string first. */
    record At(Passage owner, List<Letter> letters, Set<Sign> signs) {
        double width() {
            return letters.stream().mapToDouble(TechniqueMarks::width).sum() + (letters.size() - 1) * BETWEEN;
        }
    }

    static final double BETWEEN = 0.25;

    /** Bar by bar. */
    static List<List<At>> of(List<List<Column>> bars, TechniqueLetters letters) {
        var marks = new TechniqueMarks(letters);
        return bars.stream().map(marks::ofBar).toList();
    }

    static double width(Letter letter) {
        return letter instanceof Letter.Text text
                ? TextFont.of(Face.BOLD).width(text.text()) * SIZE
                : MusicFont.bravura().width(Glyph.DOWN_STROKE) * STROKE_SCALE;
    }

    static final double STROKE_SCALE = 0.85;

    private List<At> ofBar(List<Column> columns) {
        var found = new ArrayList<At>();
        for (var column : columns) {
            var shown = new LinkedHashSet<Letter>();
            var signs = new LinkedHashSet<Sign>();
            column.cells().stream()
                    .filter(cell -> cell.element() instanceof Chord)
                    .flatMap(cell -> cell.heads().stream())
                    .filter(head -> !head.head().tiedFrom())
                    .forEach(head -> head.head().note().pluck().ifPresent(pluck -> add(pluck, shown, signs)));
            if (!shown.isEmpty()) {
                found.add(new At(column.cells().get(0).owner(), List.copyOf(shown), signs));
            }
        }
        return found;
    }

    private void add(Technique pluck, Set<Letter> shown, Set<Sign> signs) {
        var letter = letters.of(pluck);
        boolean begins = before.filter(pluck::equals).isEmpty();
        boolean silent = letter instanceof Letter.Text text && text.text().isEmpty();
        if (!silent && (letter.everyNote() || begins)) {
            shown.add(letter);
            signs.add(Sign.of(pluck));
        }
        before = Optional.of(pluck);
    }
}
