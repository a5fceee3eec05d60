package groundbass.engraving.sign.around;

import groundbass.engraving.mark.Align;
import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Paragraph;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Row;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.spacing.WordsRoom;
import groundbass.score.Direction.Words;
import groundbass.score.Passage;
import groundbass.score.Position;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The educator's own words over the staff. A text is one block that begins over its note and wraps to the room up to
 * the next text or the system's end (rule: words-over-staff).
 */
public final class WordsAbove implements Concern {
    private static final double GAP = 0.5;
    private static final double LINE = 2.1;

    /** About so many lines; a longer text stands over the next one. */
    private static final double MOST_LINES = 2.6;

    /** A text and where it begins along the system. */
    private record Block(String text, double x, Passage owner) {}

    @Override
    public void draw(Sketch sketch) {
        var blocks = blocks(sketch);
        double width = sketch.plan().width();
        var row = new Row(WordsRoom.BETWEEN);
        // the last first, so that of two that stand over one another the earlier is above
        for (int i = blocks.size() - 1; i >= 0; i--) {
            double limit = i + 1 < blocks.size() ? blocks.get(i + 1).x() - WordsRoom.BETWEEN : width;
            add(row, blocks.get(i), limit, width);
        }
        row.placeAbove(sketch.upper(), GAP);
    }

    private static List<Block> blocks(Sketch sketch) {
        var blocks = new ArrayList<Block>();
        for (var span : sketch.plan().bars()) {
            var bar = sketch.written(span).bar();
            for (var direction : bar.directions()) {
                if (direction instanceof Words words) {
                    var from = new Position(span.bar().number(), words.at());
                    var owner = new Passage(from, new Position(span.bar().number(), bar.to()));
                    blocks.add(new Block(words.text(), span.x(words.at()), owner));
                }
            }
        }
        return blocks;
    }

    private static void add(Row row, Block block, double limit, double width) {
        double least = Math.max(WordsRoom.NARROWEST, WordsRoom.width(block.text()) / MOST_LINES);
        double room = Math.min(width, Math.max(limit - block.x(), least));
        var lines = Paragraph.lines(block.text(), Face.ITALIC, WordsRoom.SIZE, room);
        double widest = lines.stream().mapToDouble(WordsRoom::width).max().orElse(0);
        double x = Math.max(0, Math.min(block.x(), width - widest));
        var shapes = new ArrayList<Shape>();
        for (int i = 0; i < lines.size(); i++) {
            var at = new Point(x, (i + 1 - lines.size()) * LINE);
            shapes.add(new Shape.Run(lines.get(i), Face.ITALIC, WordsRoom.SIZE, at, Align.START));
        }
        row.add(Kind.WORDS, Optional.of(block.owner()), shapes);
    }
}
