package groundbass.engraving.spacing;

import groundbass.engraving.mark.Align;
import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.mark.TextFont;
import groundbass.engraving.options.Sign;
import groundbass.engraving.options.TechniqueLetters;
import groundbass.engraving.options.TechniqueLetters.Letter;
import groundbass.engraving.options.TechniqueLetters.Letter.Spanned;
import groundbass.score.Note;
import groundbass.score.Passage;
import groundbass.score.Technique;
import groundbass.writing.Element.Chord;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Which technique letters stand where: at every note, or only where a technique begins, as the letters say. */
public final class TechniqueMarks {
    public static final double SIZE = 1.75;

    private final TechniqueLetters letters;
    private Optional<Technique> before = Optional.empty();

    private TechniqueMarks(TechniqueLetters letters) {
        this.letters = letters;
    }

    /**
     * The letters at one moment, lowest string first.
     *
     * @param held those that last over several notes, this one among them
     * @param string the lowest that is struck
     */
    public record At(Passage owner, List<Letter> letters, Set<Spanned> held, Set<Sign> signs, int string) {
        public double width() {
            return letters.stream().mapToDouble(TechniqueMarks::width).sum() + (letters.size() - 1) * BETWEEN;
        }
    }

    public static final double BETWEEN = 0.25;

    /** Bar by bar. */
    public static List<List<At>> of(List<List<Column>> bars, TechniqueLetters letters) {
        var marks = new TechniqueMarks(letters);
        return bars.stream().map(marks::ofBar).toList();
    }

    public static double width(Letter letter) {
        if (letter instanceof Letter.Drawn) {
            return MusicFont.bravura().width(Glyph.DOWN_STROKE) * STROKE_SCALE;
        }
        return TextFont.of(Face.BOLD).width(spelled(letter)) * SIZE;
    }

    private static final double STROKE_SCALE = 0.85;

    /** A letter or stroke as it is drawn, from its left end on the baseline. */
    public static List<Shape> shapes(Letter letter) {
        if (letter instanceof Letter.Drawn drawn) {
            return List.of(new Shape.Sign(stroke(drawn.stroke()), new Point(0, 0), STROKE_SCALE));
        }
        return List.of(new Shape.Run(spelled(letter), Face.BOLD, SIZE, new Point(0, 0), Align.START));
    }

    private static Glyph stroke(TechniqueLetters.Stroke stroke) {
        return switch (stroke) {
            case DOWN -> Glyph.DOWN_STROKE;
            case UP -> Glyph.UP_STROKE;
        };
    }

    private static String spelled(Letter letter) {
        return letter instanceof Letter.Text plain ? plain.text() : ((Spanned) letter).text();
    }

    private List<At> ofBar(List<Column> columns) {
        var found = new ArrayList<At>();
        for (var column : columns) {
            var shown = new LinkedHashSet<Letter>();
            var held = new LinkedHashSet<Spanned>();
            var signs = new LinkedHashSet<Sign>();
            var struck = column.cells().stream()
                    .filter(cell -> cell.element() instanceof Chord)
                    .flatMap(cell -> cell.heads().stream())
                    .filter(head -> !head.head().tiedFrom()
                            && head.head().note().pluck().isPresent())
                    .map(head -> head.head().note())
                    .toList();
            struck.forEach(note -> add(note.pluck().orElseThrow(), shown, held, signs));
            if (!struck.isEmpty()) {
                int string = struck.stream().mapToInt(Note::string).max().orElseThrow();
                found.add(new At(column.cells().get(0).owner(), List.copyOf(shown), held, signs, string));
            }
        }
        return found;
    }

    private void add(Technique pluck, Set<Letter> shown, Set<Spanned> held, Set<Sign> signs) {
        var letter = letters.of(pluck);
        if (letter instanceof Spanned spanned) {
            held.add(spanned);
            signs.add(Sign.of(pluck));
            before = Optional.of(pluck);
            return;
        }
        boolean begins = before.filter(pluck::equals).isEmpty();
        boolean silent = letter instanceof Letter.Text text && text.text().isEmpty();
        if (!silent && (letter.everyNote() || begins)) {
            shown.add(letter);
            signs.add(Sign.of(pluck));
        }
        before = Optional.of(pluck);
    }
}
