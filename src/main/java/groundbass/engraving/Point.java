package groundbass.engraving;

/** A place on a page, in staff spaces; y grows downward. */
public record Point(double x, double y) {
    Point moved(double dx, double dy) {
        return new Point(x + dx, y + dy);
    }
}
