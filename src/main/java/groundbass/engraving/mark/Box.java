package groundbass.engraving.mark;

/** An upright rectangle in staff spaces; y grows downward. */
public record Box(double left, double top, double right, double bottom) {
    public static Box around(Point at, double reach) {
        return new Box(at.x() - reach, at.y() - reach, at.x() + reach, at.y() + reach);
    }

    public double width() {
        return right - left;
    }

    public double height() {
        return bottom - top;
    }

    public double middle() {
        return (left + right) / 2;
    }

    public Box moved(double dx, double dy) {
        return new Box(left + dx, top + dy, right + dx, bottom + dy);
    }

    public Box grown(double by) {
        return new Box(left - by, top - by, right + by, bottom + by);
    }

    public Box scaled(double factor) {
        return new Box(left * factor, top * factor, right * factor, bottom * factor);
    }

    public Box union(Box that) {
        return new Box(
                Math.min(left, that.left),
                Math.min(top, that.top),
                Math.max(right, that.right),
                Math.max(bottom, that.bottom));
    }

    /** Whether the two share more than an edge. */
    public boolean overlaps(Box that) {
        return left < that.right && that.left < right && top < that.bottom && that.top < bottom;
    }

    public boolean contains(Box that) {
        return left <= that.left && top <= that.top && right >= that.right && bottom >= that.bottom;
    }
}
