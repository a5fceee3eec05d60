package groundbass.engraving;

import groundbass.score.Passage;
import groundbass.score.Position;
import java.util.List;
import java.util.Optional;

/** Chord names over the staff, where they begin. */
final class ChordNames implements Concern {
    private static final double GAP = 0.7;

    @Override
    public void draw(Sketch sketch) {
        var row = new Row(0.4);
        for (var span : sketch.plan().bars()) {
            var bar = sketch.written(span).bar();
            for (var chord : bar.chords()) {
                double x = span.x(chord.at());
                var from = new Position(span.bar().number(), chord.at());
                var to = new Position(span.bar().number(), bar.to());
                List<Shape> shapes = ChordName.shapes(chord.chord()).stream()
                        .map(shape -> shape.moved(x, 0))
                        .toList();
                row.add(Kind.CHORD_NAME, Optional.of(new Passage(from, to)), shapes);
            }
        }
        sketch.chordBaseline(row.placeAbove(sketch.upper(), GAP));
    }
}
