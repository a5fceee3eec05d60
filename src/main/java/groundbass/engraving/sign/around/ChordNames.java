package groundbass.engraving.sign.around;

import groundbass.engraving.mark.Kind;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Row;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.spacing.ChordName;
import groundbass.score.Passage;
import groundbass.score.Position;

/** Chord names over the staff, where they begin; one that would run over the system's end moves left. */
public final class ChordNames implements Concern {
    private static final double GAP = 0.7;

    @Override
    public void draw(Sketch sketch) {
        var row = new Row(0.4);
        for (var span : sketch.plan().bars()) {
            var bar = sketch.written(span).bar();
            for (var chord : bar.chords()) {
                double room = sketch.plan().width() - ChordName.width(chord.chord());
                double x = Math.min(span.x(chord.at()), Math.max(0, room));
                var from = new Position(span.bar().number(), chord.at());
                var to = new Position(span.bar().number(), bar.to());
                row.add(
                        Kind.CHORD_NAME,
                        new Passage(from, to),
                        ChordName.word(chord.chord()).moved(x, 0));
            }
        }
        sketch.chordBaseline(row.placeAbove(sketch.upper(), GAP));
    }
}
