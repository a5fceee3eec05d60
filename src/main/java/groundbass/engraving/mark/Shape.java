package groundbass.engraving.mark;

import java.util.List;
import java.util.Optional;

/** What a canvas can draw, in staff spaces. */
public sealed interface Shape {
    /** What the shape covers; of text, what its font says of it. */
    Box box();

    /** Boxes that together cover the shape more closely than one. */
    default List<Box> pieces() {
        return List.of(box());
    }

    Shape moved(double dx, double dy);

    void drawOn(Canvas canvas);

    /** A filled upright rectangle. */
    record Rect(Box box) implements Shape {
        @Override
        public Rect moved(double dx, double dy) {
            return new Rect(box.moved(dx, dy));
        }

        @Override
        public void drawOn(Canvas canvas) {
            canvas.rect(box);
        }
    }

    /** A straight line with square ends. */
    record Stroke(Point from, Point to, double thickness) implements Shape {
        @Override
        public Box box() {
            return Box.around(from, thickness / 2).union(Box.around(to, thickness / 2));
        }

        /** A level or an upright line is one piece. */
        @Override
        public List<Box> pieces() {
            boolean straight = from.x() == to.x() || from.y() == to.y();
            return straight ? List.of(box()) : Pieces.between(from, to, thickness / 2);
        }

        /** The rectangle that the stroke fills. */
        public Polygon filled() {
            double length = Math.max(1e-6, Math.hypot(to.x() - from.x(), to.y() - from.y()));
            double nx = -(to.y() - from.y()) / length * thickness / 2;
            double ny = (to.x() - from.x()) / length * thickness / 2;
            return new Polygon(List.of(from.moved(nx, ny), to.moved(nx, ny), to.moved(-nx, -ny), from.moved(-nx, -ny)));
        }

        @Override
        public Stroke moved(double dx, double dy) {
            return new Stroke(from.moved(dx, dy), to.moved(dx, dy), thickness);
        }

        @Override
        public void drawOn(Canvas canvas) {
            canvas.line(this);
        }
    }

    /** A filled polygon. */
    record Polygon(List<Point> corners) implements Shape {
        public Polygon {
            corners = List.copyOf(corners);
        }

        @Override
        public Box box() {
            var box = Box.around(corners.get(0), 0);
            for (var corner : corners) {
                box = box.union(Box.around(corner, 0));
            }
            return box;
        }

        /** A beam, whose corners go round from its upper or lower left, is no rectangle where it slopes. */
        @Override
        public List<Box> pieces() {
            return corners.size() == 4 ? Pieces.between(corners) : List.of(box());
        }

        @Override
        public Polygon moved(double dx, double dy) {
            return new Polygon(
                    corners.stream().map(corner -> corner.moved(dx, dy)).toList());
        }

        @Override
        public void drawOn(Canvas canvas) {
            canvas.polygon(this);
        }
    }

    /** A cubic curve, thin at its ends and thick in its middle: ties and slurs. */
    record Curve(Point from, Point first, Point second, Point to, double ends, double middle) implements Shape {
        /** Whether it arches upward. */
        public boolean isAbove() {
            return first.y() - from.y() + second.y() - to.y() < 0;
        }

        /** The curve's own reach, not that of its control points. */
        @Override
        public Box box() {
            var box = Box.around(from, 0).union(Box.around(to, 0));
            for (int step = 1; step < 8; step++) {
                box = box.union(Box.around(at(step / 8.0), 0));
            }
            return box.grown(middle / 2);
        }

        @Override
        public List<Box> pieces() {
            return Pieces.along(Pieces.ofCurve(this), this::at, middle / 2);
        }

        /** Where its pieces begin and end along the staff; a lifted curve has them at the same places. */
        public double[] cuts() {
            var cuts = new double[Pieces.ofCurve(this) + 1];
            for (int i = 0; i < cuts.length; i++) {
                cuts[i] = x((double) i / (cuts.length - 1));
            }
            return cuts;
        }

        /**
         * Whether one of its pieces overlaps a box. No piece is made for that, since many arches are tried for one slur.
         *
         * @param cuts its own, or those of the curve that it was lifted from
         */
        public boolean overlaps(Box box, double[] cuts) {
            double reach = middle / 2;
            for (int i = 1; i < cuts.length; i++) {
                boolean beside = Math.max(cuts[i - 1], cuts[i]) + reach > box.left()
                        && Math.min(cuts[i - 1], cuts[i]) - reach < box.right();
                if (beside) {
                    double before = y((double) (i - 1) / (cuts.length - 1));
                    double after = y((double) i / (cuts.length - 1));
                    if (Math.min(before, after) - reach < box.bottom() && Math.max(before, after) + reach > box.top()) {
                        return true;
                    }
                }
            }
            return false;
        }

        /**
         * The outline to fill: four points of one cubic, then four of the other, back to the start. In its middle a
         * cubic has a quarter of its ends' distance and three quarters of its control points'.
         */
        public List<Point> lens() {
            double length = Math.max(1e-6, Math.hypot(to.x() - from.x(), to.y() - from.y()));
            double nx = -(to.y() - from.y()) / length;
            double ny = (to.x() - from.x()) / length;
            double end = ends / 2;
            double out = (middle / 2 - end / 4) / 0.75;
            return List.of(
                    from.moved(nx * end, ny * end),
                    first.moved(nx * out, ny * out),
                    second.moved(nx * out, ny * out),
                    to.moved(nx * end, ny * end),
                    to.moved(-nx * end, -ny * end),
                    second.moved(-nx * out, -ny * out),
                    first.moved(-nx * out, -ny * out),
                    from.moved(-nx * end, -ny * end));
        }

        /** The same ends under a higher (or, if positive, lower) arch. */
        public Curve lifted(double dy) {
            return new Curve(from, first.moved(0, dy), second.moved(0, dy), to, ends, middle);
        }

        public Point at(double t) {
            return new Point(x(t), y(t));
        }

        private double x(double t) {
            return cubic(t, from.x(), first.x(), second.x(), to.x());
        }

        private double y(double t) {
            return cubic(t, from.y(), first.y(), second.y(), to.y());
        }

        private static double cubic(double t, double from, double first, double second, double to) {
            double s = 1 - t;
            return s * s * s * from + 3 * s * s * t * first + 3 * s * t * t * second + t * t * t * to;
        }

        @Override
        public Curve moved(double dx, double dy) {
            return new Curve(
                    from.moved(dx, dy), first.moved(dx, dy), second.moved(dx, dy), to.moved(dx, dy), ends, middle);
        }

        @Override
        public void drawOn(Canvas canvas) {
            canvas.curve(this);
        }
    }

    /** A glyph of the music font with its origin at a point. */
    record Sign(Glyph glyph, Point at, double scale) implements Shape {
        @Override
        public Box box() {
            return MusicFont.bravura().box(glyph).scaled(scale).moved(at.x(), at.y());
        }

        @Override
        public Sign moved(double dx, double dy) {
            return new Sign(glyph, at.moved(dx, dy), scale);
        }

        @Override
        public void drawOn(Canvas canvas) {
            canvas.glyph(this);
        }
    }

    /**
     * Shapes that read as one word, such as a chord name with raised figures and drawn accidentals.
     *
     * @param text what somebody who copies, searches or hears it gets
     */
    record Word(String text, List<Shape> parts) implements Shape {
        public Word {
            parts = List.copyOf(parts);
        }

        @Override
        public Box box() {
            return parts.stream().map(Shape::box).reduce(Box::union).orElseThrow();
        }

        @Override
        public Word moved(double dx, double dy) {
            return new Word(text, parts.stream().map(part -> part.moved(dx, dy)).toList());
        }

        @Override
        public void drawOn(Canvas canvas) {
            canvas.word(this);
        }
    }

    /**
     * A run of text.
     *
     * @param size of the em
     * @param at the baseline's left end, middle or right end, as {@code align} says
     * @param link the address that the run leads to
     * @param pale whether it stands behind the music: a help that is not part of it
     */
    record Run(String text, Face face, double size, Point at, Align align, Optional<String> link, boolean pale)
            implements Shape {
        /** How dark pale ink is, of 1. */
        public static final double PALE = 0.6;

        public Run(String text, Face face, double size, Point at, Align align) {
            this(text, face, size, at, align, Optional.empty());
        }

        public Run(String text, Face face, double size, Point at, Align align, Optional<String> link) {
            this(text, face, size, at, align, link, false);
        }

        /** The same in pale ink. */
        public Run inPale() {
            return new Run(text, face, size, at, align, link, true);
        }

        public double width() {
            return TextFont.of(face).width(text) * size;
        }

        public double left() {
            return at.x() - align.share() * width();
        }

        @Override
        public Box box() {
            return TextFont.of(face).box(text).scaled(size).moved(left(), at.y());
        }

        @Override
        public Run moved(double dx, double dy) {
            return new Run(text, face, size, at.moved(dx, dy), align, link, pale);
        }

        @Override
        public void drawOn(Canvas canvas) {
            canvas.text(this);
        }
    }
}
