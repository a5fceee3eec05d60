package groundbass.engraving.sign;

import groundbass.engraving.mark.Align;
import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Paragraph;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.mark.TextFont;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Row;
import groundbass.engraving.sketch.Sketch;
import groundbass.score.Direction.Words;
import groundbass.score.Passage;
import groundbass.score.Position;

/** The educator's own words over the staff; what would run over the system's end moves left. */
final class WordsAbove implements Concern {
    private static final double SIZE = 1.9;
    private static final double GAP = 0.5;

    @Override
    public void draw(Sketch sketch) {
        var row = new Row(0.8);
        for (var span : sketch.plan().bars()) {
            var bar = sketch.written(span).bar();
            for (var direction : bar.directions()) {
                if (direction instanceof Words words) {
                    var from = new Position(span.bar().number(), words.at());
                    var owner = new Passage(from, new Position(span.bar().number(), bar.to()));
                    lines(sketch, row, words.text(), span.x(words.at()), owner);
                }
            }
        }
        row.placeAbove(sketch.upper(), GAP);
    }

    private static void lines(Sketch sketch, Row row, String text, double x, Passage owner) {
        double room = sketch.plan().width();
        var lines = Paragraph.lines(text, Face.ITALIC, SIZE, room);
        for (int i = lines.size() - 1; i >= 0; i--) {
            double width = TextFont.of(Face.ITALIC).width(lines.get(i)) * SIZE;
            var at = new Point(Math.max(0, Math.min(x, room - width)), 0);
            row.add(Kind.WORDS, owner, new Shape.Run(lines.get(i), Face.ITALIC, SIZE, at, Align.START));
        }
    }
}
