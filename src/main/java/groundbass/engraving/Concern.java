package groundbass.engraving;

/** One thing that is drawn on a system. The order of concerns is from the staff outward: each clears what is there. */
@FunctionalInterface
interface Concern {
    void draw(Sketch sketch);
}
