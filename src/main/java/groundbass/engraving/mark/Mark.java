package groundbass.engraving.mark;

import groundbass.score.Passage;
import java.util.Optional;

/** One thing on a page: what it is, which notes it belongs to (if any), and its shape. */
public record Mark(Kind kind, Optional<Passage> owner, Shape shape) {
    public static Mark free(Kind kind, Shape shape) {
        return new Mark(kind, Optional.empty(), shape);
    }

    public static Mark of(Kind kind, Passage owner, Shape shape) {
        return new Mark(kind, Optional.of(owner), shape);
    }

    public Box box() {
        return shape.box();
    }

    public Mark moved(double dx, double dy) {
        return new Mark(kind, owner, shape.moved(dx, dy));
    }
}
