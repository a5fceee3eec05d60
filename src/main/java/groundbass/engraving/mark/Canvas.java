package groundbass.engraving.mark;

/**
 * Where laid-out pages are drawn; lengths are staff spaces, y grows downward. Every colour is the reader's own ink.
 * Not thread-safe.
 */
public interface Canvas {
    /** What follows, up to the matching {@link #end}, belongs together. */
    void begin(Group group);

    void end();

    void rect(Box box);

    void line(Shape.Stroke stroke);

    void polygon(Shape.Polygon polygon);

    void curve(Shape.Curve curve);

    void glyph(Shape.Sign sign);

    void text(Shape.Run run);

    /** Draws the parts; a canvas that keeps text says the word as well. */
    default void word(Shape.Word word) {
        word.parts().forEach(part -> part.drawOn(this));
    }
}
