package groundbass.engraving.spacing;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.score.Meter;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** Figures one over the other; the beats of an unusual grouping are added up in the upper row. */
public final class TimeSignature {
    /** Beside a plus and within it, so that it touches no figure (rule: groups-in-time-signature). */
    private static final double PLUS_GAP = 0.25;

    private static final double PLUS_SCALE = 0.8;

    private TimeSignature() {}

    static double width(Meter meter) {
        return Math.max(width(upper(meter)), width(String.valueOf(meter.unit())));
    }

    /** Around the middle of a staff at height {@code middle}, from {@code x}. */
    public static List<Shape> shapes(Meter meter, double x, double middle) {
        var shapes = new ArrayList<Shape>();
        double width = width(meter);
        row(shapes, upper(meter), x, width, middle - 1);
        row(shapes, String.valueOf(meter.unit()), x, width, middle + 1);
        return shapes;
    }

    /** Figures of a number in one row, from {@code x}. */
    public static List<Shape> figures(String number, double x, double middle) {
        var shapes = new ArrayList<Shape>();
        row(shapes, number, x, width(number), middle);
        return shapes;
    }

    private static String upper(Meter meter) {
        return meter.hasUsualBeats()
                ? String.valueOf(meter.counts())
                : meter.beats().stream().map(String::valueOf).collect(Collectors.joining("+"));
    }

    private static void row(List<Shape> shapes, String figures, double x, double width, double y) {
        double at = x + (width - width(figures)) / 2;
        for (char c : figures.toCharArray()) {
            shapes.add(new Shape.Sign(glyph(c), new Point(at + gap(c), y), scale(c)));
            at += width(c);
        }
    }

    public static double width(String figures) {
        return figures.chars().mapToDouble(c -> width((char) c)).sum();
    }

    private static double width(char c) {
        return MusicFont.bravura().width(glyph(c)) * scale(c) + 2 * gap(c);
    }

    private static double gap(char c) {
        return c == '+' ? PLUS_GAP : 0;
    }

    private static double scale(char c) {
        return c == '+' ? PLUS_SCALE : 1;
    }

    private static Glyph glyph(char c) {
        return c == '+' ? Glyph.TIME_PLUS : Glyph.timeFigure(Character.digit(c, 10));
    }
}
