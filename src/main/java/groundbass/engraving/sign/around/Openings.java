package groundbass.engraving.sign.around;

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
import java.util.regex.Pattern;

/**
 * Over the bar where they begin, and tied to it: the tempo as a note and its number, the feel in words, and in a row
 * above them the section's name, however long it is (rule: section-and-tempo).
 */
public final class Openings implements Concern {
    private static final double SECTION = 2.5;
    private static final double SIZE = 2.0;
    private static final double GAP = 0.8;
    private static final double BETWEEN = 1.6;
    /** Chord names stand nearer to the staff, in a row of their own. */
    private static final double OVER_CHORDS = 2.6;

    private static final double NOTE_SCALE = 0.7;

    /** A letter, or a letter and a figure. */
    private static final Pattern REHEARSAL = Pattern.compile("[A-Z]\\d?");

    private static final double BOX_LINE = 0.16;
    private static final double BOX_ROOM = 0.45;

    @Override
    public void draw(Sketch sketch) {
        var sections = new Row(1.5);
        var tempos = new Row(1.5);
        double room = sketch.plan().width();
        for (var span : sketch.plan().bars()) {
            double left = span.first() ? 0 : span.left();
            var bar = sketch.written(span);
            var changes = bar.bar().changes();
            var section = new Opening(left, room);
            changes.section().ifPresent(section::section);
            section.addTo(sections);
            var opening = new Opening(left, room);
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
                    .ifPresent(to -> opening.slowing(sketch.options().words().slowingTo(to), span.end()));
            opening.addTo(tempos);
        }
        double limit = sketch.chordBaseline() - (sketch.chordBaseline() < 0 ? OVER_CHORDS : 0);
        tempos.placeAbove(sketch.upper(), GAP, limit);
        sections.placeAbove(sketch.upper(), GAP, limit);
    }

    /** Items side by side from the bar's left edge; one that would run over the end starts there too, in a further row. */
    private static final class Opening {
        private final List<Row.Item> items = new ArrayList<>();
        private final double left;
        private final double room;
        private double x;

        Opening(double left, double room) {
            this.left = left;
            this.room = room;
            this.x = left;
        }

        /** A letter by itself is one to rehearse by, in a box. */
        void section(String name) {
            var run = new Shape.Run(name, Face.BOLD, SECTION, new Point(0, 0), Align.START);
            add(Kind.SECTION, REHEARSAL.matcher(name).matches() ? boxed(run) : List.of(run));
        }

        private static List<Shape> boxed(Shape.Run letter) {
            var shapes = new ArrayList<Shape>();
            var text = letter.moved(BOX_ROOM, 0);
            shapes.add(text);
            double left = BOX_LINE / 2;
            double right = 2 * BOX_ROOM + letter.width() - BOX_LINE / 2;
            double top = text.box().top() - BOX_ROOM;
            var corners = List.of(
                    new Point(left, top), new Point(right, top), new Point(right, BOX_ROOM), new Point(left, BOX_ROOM));
            for (int i = 0; i < corners.size(); i++) {
                shapes.add(new Shape.Stroke(corners.get(i), corners.get((i + 1) % corners.size()), BOX_LINE));
            }
            return shapes;
        }

        /** With a dashed line to the end of its bar, short of what begins there (rule: slowing-line). */
        void slowing(String words, double end) {
            var run = new Shape.Run(words, Face.ITALIC, SIZE, new Point(0, 0), Align.START);
            double at = at(run.box().right());
            add(Kind.TEMPO, Dashes.open(words, Face.ITALIC, SIZE, 0, end - BETWEEN - at));
        }

        private double at(double width) {
            return x + width <= room ? x : Math.max(0, Math.min(left, room - width));
        }

        private void add(Kind kind, List<Shape> shapes) {
            double width = shapes.stream()
                    .mapToDouble(shape -> shape.box().right())
                    .max()
                    .orElse(0);
            double at = at(width);
            items.add(new Row.Item(
                    kind,
                    Optional.empty(),
                    shapes.stream().map(shape -> shape.moved(at, 0)).toList()));
            x = at + width + BETWEEN;
        }

        void feel(String words, Feel feel) {
            var run = new Shape.Run(words, Face.ITALIC, SIZE, new Point(0, 0), Align.START);
            var shapes = new ArrayList<Shape>(List.of(run));
            double at = run.box().right() + BETWEEN / 2;
            feel.swing()
                    .ifPresent(swing -> SwingSign.shapes(swing).forEach(shape -> shapes.add(shape.moved(at, -0.1))));
            add(Kind.FEEL, shapes);
        }

        void tempo(Tempo tempo) {
            var shapes = new ArrayList<Shape>();
            double at = 0;
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
            add(Kind.TEMPO, List.of(new Shape.Word(note + run.text(), List.copyOf(shapes))));
        }

        void addTo(Row row) {
            items.forEach(item -> row.add(item.kind(), item.owner(), item.shapes()));
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
