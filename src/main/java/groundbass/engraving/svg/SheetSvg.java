package groundbass.engraving.svg;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Page;
import java.util.Optional;

/** Writes one page as one SVG drawing. */
public final class SheetSvg {
    private SheetSvg() {}

    /**
     * @param idPrefix what ids in the drawing begin with; must differ among the drawings of one web page
     * @param language of the words, a BCP 47 tag
     * @param description the music in words, or where those can be found
     */
    public static String of(Page page, String idPrefix, String language, String title, String description) {
        var canvas = new SvgCanvas(idPrefix);
        page.drawOn(canvas);
        return canvas.document(new Box(0, 0, page.width(), page.height()), language, title, description);
    }

    /** A page whose events are told one by one, so that somebody can go through them. */
    public static String of(
            Page page, String idPrefix, String language, String title, String description, EventWords words) {
        var canvas = new SvgCanvas(idPrefix, Optional.of(words), Optional.empty());
        page.drawOn(canvas);
        return canvas.document(new Box(0, 0, page.width(), page.height()), language, title, description);
    }

    /** A page with its fonts, for a file that stands alone. */
    public static String alone(Page page, String language, String title, String description, EventWords words) {
        var canvas = new SvgCanvas("", Optional.of(words), Optional.of(new SvgFonts()));
        page.drawOn(canvas);
        return canvas.document(new Box(0, 0, page.width(), page.height()), language, title, description);
    }

    /** One system (or other part) of a page alone, in its own box with a margin around it. */
    public static String of(Page.Part part, String idPrefix, String language, String title, String description) {
        var canvas = new SvgCanvas(idPrefix);
        part.drawOn(canvas);
        return canvas.document(part.group().box().grown(1), language, title, description);
    }

    /** One part of a page as wide as the page, so that parts under one another keep one size. */
    public static String of(
            Page page, Page.Part part, String idPrefix, String language, String title, String description) {
        var canvas = new SvgCanvas(idPrefix);
        part.drawOn(canvas);
        var box = part.group().box();
        return canvas.document(new Box(0, box.top() - 1, page.width(), box.bottom() + 1), language, title, description);
    }
}
