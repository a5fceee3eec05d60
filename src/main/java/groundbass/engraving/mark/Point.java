package groundbass.engraving.mark;

/** A place on a page, in staff spaces; y grows downward. */
public record Point(double x, double y) {
    public Point moved(double dx, double dy) {
        return new Point(x + dx, y + dy);
    }
}
