package groundbass.engraving.sketch;

/** One thing that is drawn on a system. The order of concerns is from the staff outward: each clears what is there. */
@FunctionalInterface
public interface Concern {
    void draw(Sketch sketch);
}
