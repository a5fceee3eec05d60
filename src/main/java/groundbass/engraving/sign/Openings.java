package groundbass.engraving.sign;

import groundbass.engraving.mark.Align;
import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Row;
import groundbass.engraving.sketch.Sketch;
import groundbass.score.Feel;
import groundbass.score.Fraction;
import groundbass.score.Tempo;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Over the bar where they begin: the section's name, the tempo as a note and its number, and the feel in words. */
final class Openings implements Concern {
    private static final double SECTION = 2.5;
    private static final double SIZE = 2.0;
    private static final double GAP = 0.8;
    private static final double BETWEEN = 1.6;
    private static final double NOTE_SCALE = 0.7;

    @Override
    public void draw(Sketch sketch) {
        var row = new Row(1.5);
        for (var span : sketch.plan().bars()) {
            var opening = new Opening(span.first() ? 0 : span.left());
            var bar = sketch.written(span);
            var changes = bar.bar().changes();
            changes.section().ifPresent(name -> opening.text(Kind.SECTION, name, Face.BOLD, SECTION));
            if (span.index() == 0 || changes.tempo().isPresent()) {
                opening.tempo(bar.inForce().tempo());
            }
            boolean feltAlready = span.index() == 0 && bar.inForce().feel().equals(Feel.STRAIGHT);
            if (!feltAlready && (span.index() == 0 || changes.feel().isPresent())) {
                opening.feel(
                        sketch.options().words().feel(bar.inForce().feel()),
                        bar.inForce().feel());
            }
            changes.slowingTo()
                    .ifPresent(to ->
                            opening.text(Kind.TEMPO, sketch.options().words().slowingTo(to), Face.ITALIC, SIZE));
            opening.addTo(row, sketch.plan().width());
        }
        row.placeAbove(sketch.upper(), GAP, sketch.chordBaseline());
    }

    /** Items side by side on one baseline. */
    private static final class Opening {
        private final List<Row.Item> items = new ArrayList<>();
        private double x;

        Opening(double x) {
            this.x = x;
        }

        void text(Kind kind, String text, Face face, double size) {
            var run = new Shape.Run(text, face, size, new Point(x, 0), Align.START);
            items.add(new Row.Item(kind, Optional.empty(), List.of(run)));
            x = run.box().right() + BETWEEN;
        }

        void feel(String words, Feel feel) {
            var run = new Shape.Run(words, Face.ITALIC, SIZE, new Point(x, 0), Align.START);
            var shapes = new ArrayList<Shape>(List.of(run));
            double at = run.box().right() + BETWEEN / 2;
            feel.swing()
                    .ifPresent(swing -> SwingSign.shapes(swing).forEach(shape -> shapes.add(shape.moved(at, -0.1))));
            items.add(new Row.Item(Kind.FEEL, Optional.empty(), shapes));
            x = shapes.stream().mapToDouble(shape -> shape.box().right()).max().orElse(x) + BETWEEN;
        }

        void tempo(Tempo tempo) {
            var shapes = new ArrayList<Shape>();
            double at = x;
            for (var glyph : beat(tempo.beat())) {
                var sign = new Shape.Sign(glyph, new Point(at, -0.1), NOTE_SCALE);
                shapes.add(sign);
                at = sign.box().right() + 0.25;
            }
            String beat = shapes.isEmpty() ? tempo.beat() + " " : "";
            var run = new Shape.Run(
                    beat + "= " + tempo.perMinute(), Face.MEDIUM, SIZE, new Point(at + 0.3, 0), Align.START);
            shapes.add(run);
            String note = shapes.size() > 1 ? spelled(tempo.beat()) + " " : "";
            items.add(new Row.Item(
                    Kind.TEMPO, Optional.empty(), List.of(new Shape.Word(note + run.text(), List.copyOf(shapes)))));
            x = run.box().right() + BETWEEN;
        }

        /** Moves everything left where it would run over the end. */
        void addTo(Row row, double width) {
            if (items.isEmpty()) {
                return;
            }
            double over =
                    Math.max(0, Math.min(x - BETWEEN - width, items.get(0).box().left()));
            for (var item : items) {
                row.add(
                        item.kind(),
                        item.owner(),
                        item.shapes().stream()
                                .map(shape -> shape.moved(-over, 0))
                                .toList());
            }
        }

        /** Unicode's own notes, a dot where the length is dotted. */
        private static String spelled(Fraction beat) {
            var glyphs = beat(beat);
            String note =
                    switch (glyphs.get(0)) {
                        case MET_HALF -> "\uD834\uDD5E";
                        case MET_QUARTER -> "\u2669";
                        case MET_8 -> "\u266A";
                        default -> "\uD834\uDD61";
                    };
            return glyphs.size() > 1 ? note + "." : note;
        }

        private static List<Glyph> beat(Fraction beat) {
            for (var glyph : List.of(Glyph.MET_HALF, Glyph.MET_QUARTER, Glyph.MET_8, Glyph.MET_16)) {
                var length = length(glyph);
                if (beat.equals(length)) {
                    return List.of(glyph);
                }
                if (beat.equals(length.times(Fraction.of(3, 2)))) {
                    return List.of(glyph, Glyph.MET_DOT);
                }
            }
            return List.of();
        }

        private static Fraction length(Glyph glyph) {
            return Fraction.of(
                    1, glyph == Glyph.MET_HALF ? 2 : glyph == Glyph.MET_QUARTER ? 4 : glyph == Glyph.MET_8 ? 8 : 16);
        }
    }
}
