package groundbass.engraving.svg;

import groundbass.engraving.mark.Align;
import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Canvas;
import groundbass.engraving.mark.Decimals;
import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Group;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.mark.Xml;
import groundbass.score.Passage;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;

/**
 * Draws as SVG with presentation attributes only, which a strict content security policy allows, in the colour of the
 * text around it; a drawing that stands alone has its fonts in a style sheet as well. Each glyph is one symbol; straight and curved shapes in a row share one path.
 */
final class SvgCanvas implements Canvas {
    /** The family is served by the site; the others are what a reader without it is likely to have. */
    private static final String FAMILY = "Alegreya Sans, Segoe UI, Helvetica Neue, Arial, sans-serif";

    /** From this length on a text keeps its width in a reader's other font, so that it runs into nothing. */
    private static final int LONG = 4;

    private final String idPrefix;
    private final Optional<EventWords> words;
    private final Optional<SvgFonts> fonts;
    private final StringBuilder body = new StringBuilder(1 << 15);
    private final StringBuilder path = new StringBuilder();
    private int systems;
    private final Set<Glyph> used = EnumSet.noneOf(Glyph.class);

    /** @param idPrefix what the symbols' ids begin with, so that several drawings can stand in one page */
    public SvgCanvas(String idPrefix) {
        this(idPrefix, Optional.empty(), Optional.empty());
    }

    /**
     * @param words of the events; with them each event is a picture of its own to somebody who has the page read out,
     *     and letters that are drawn are not read besides
     * @param fonts to set into the drawing
     */
    SvgCanvas(String idPrefix, Optional<EventWords> words, Optional<SvgFonts> fonts) {
        this.idPrefix = idPrefix;
        this.words = words;
        this.fonts = fonts;
    }

    /** The whole drawing: what has been drawn, inside a box of this size. */
    String document(Box view, String language, String title, String description) {
        flush();
        var out = new StringBuilder(body.length() + (1 << 15));
        out.append("<svg xmlns=\"http://www.w3.org/2000/svg\" role=\"");
        out.append(words.isPresent() ? "group" : "img").append("\" fill=\"currentColor\" lang=\"");
        out.append(Xml.attribute(language)).append("\" viewBox=\"");
        number(out, view.left()).append(' ');
        number(out, view.top()).append(' ');
        number(out, view.width()).append(' ');
        number(out, view.height()).append("\" font-family=\"").append(FAMILY);
        out.append("\" font-variant=\"lining-nums\" aria-labelledby=\"")
                .append(idPrefix)
                .append("title ");
        out.append(idPrefix).append("desc\"><title id=\"").append(idPrefix).append("title\">");
        out.append(Xml.text(title))
                .append("</title><desc id=\"")
                .append(idPrefix)
                .append("desc\">");
        out.append(Xml.text(description)).append("</desc><defs>");
        fonts.ifPresent(faces -> out.append(faces.style()));
        used.forEach(glyph -> symbol(out, glyph));
        return out.append("</defs>").append(body).append("</svg>").toString();
    }

    @Override
    public void begin(Group group) {
        flush();
        switch (group.role()) {
            case EVENT -> event(group);
            case SYSTEM -> system(group);
            case ANNOTATION -> passage("annotation", group);
            case TITLE, HEADING, SUBHEADING, PARAGRAPH, ITEM, LINK, FURNITURE -> body.append("<g>");
        }
    }

    @Override
    public void end() {
        flush();
        body.append("</g>");
    }

    @Override
    public void rect(Box box) {
        SvgPaths.rect(path, box);
    }

    @Override
    public void line(Shape.Stroke stroke) {
        polygon(stroke.filled());
    }

    @Override
    public void polygon(Shape.Polygon polygon) {
        SvgPaths.polygon(path, polygon.corners());
    }

    @Override
    public void curve(Shape.Curve curve) {
        SvgPaths.lens(path, curve.lens());
    }

    @Override
    public void glyph(Shape.Sign sign) {
        flush();
        used.add(sign.glyph());
        body.append("<use href=\"#").append(id(sign.glyph())).append('"');
        if (sign.scale() == 1) {
            place(sign.at());
        } else {
            body.append(" transform=\"translate(");
            number(body, sign.at().x()).append(' ');
            number(body, sign.at().y()).append(") scale(");
            number(body, sign.scale()).append(")\"");
        }
        body.append("/>");
    }

    @Override
    public void text(Shape.Run run) {
        flush();
        fonts.ifPresent(faces -> faces.show(run));
        run.link()
                .ifPresent(link ->
                        body.append("<a href=\"").append(Xml.attribute(link)).append("\">"));
        body.append(words.isPresent() && run.link().isEmpty() ? "<text aria-hidden=\"true\"" : "<text");
        place(run.at());
        number(body.append(" font-size=\""), run.size()).append('"');
        body.append(face(run.face())).append(anchor(run.align()));
        if (run.pale()) {
            number(body.append(" fill-opacity=\""), Shape.Run.PALE).append('"');
        }
        if (run.text().length() >= LONG) {
            number(body.append(" textLength=\""), run.width()).append("\" lengthAdjust=\"spacingAndGlyphs\"");
        }
        body.append('>');
        body.append(Xml.text(run.text())).append("</text>");
        run.link().ifPresent(link -> body.append("</a>"));
    }

    private void flush() {
        if (!path.isEmpty()) {
            body.append("<path d=\"").append(path).append("\"/>");
            path.setLength(0);
        }
    }

    private void event(Group group) {
        open("event", group);
        if (words.isPresent() && group.passage().isPresent()) {
            var passage = group.passage().get();
            words.get().count(passage).ifPresent(count -> body.append(" data-count=\"")
                    .append(Xml.attribute(count))
                    .append('"'));
            body.append(" role=\"img\" aria-label=\"");
            body.append(Xml.attribute(words.get().words(passage))).append('"');
        }
        body.append('>');
    }

    /** How high it stands is said as well, for whoever prints or shows systems one by one. */
    private void system(Group group) {
        open("system", group);
        if (words.isPresent() && group.passage().isPresent()) {
            body.append(" role=\"group\" aria-label=\"");
            body.append(Xml.attribute(words.get().bars(group.passage().get()))).append('"');
        }
        body.append(" id=\"").append(idPrefix).append("system-").append(++systems);
        number(body.append("\" data-top=\""), group.box().top());
        number(body.append("\" data-height=\""), group.box().height()).append("\">");
    }

    private void passage(String name, Group group) {
        open(name, group);
        body.append('>');
    }

    private void open(String name, Group group) {
        body.append("<g class=\"").append(name).append('"');
        group.passage().ifPresent(this::passage);
    }

    private void passage(Passage passage) {
        body.append(" data-bar=\"").append(passage.from().bar());
        body.append("\" data-at=\"").append(passage.from().at());
        body.append("\" data-to-bar=\"").append(passage.to().bar());
        body.append("\" data-to=\"").append(passage.to().at()).append('"');
    }

    private void place(Point at) {
        number(body.append(" x=\""), at.x());
        number(body.append("\" y=\""), at.y()).append('"');
    }

    private void symbol(StringBuilder out, Glyph glyph) {
        out.append("<symbol overflow=\"visible\" id=\"").append(id(glyph)).append("\"><path d=\"");
        out.append(SvgPaths.glyph(glyph)).append("\"/></symbol>");
    }

    private String id(Glyph glyph) {
        return idPrefix + Integer.toHexString(glyph.codePoint());
    }

    private static StringBuilder number(StringBuilder out, double value) {
        Decimals.append(out, value, 2);
        return out;
    }

    private static String face(Face face) {
        return switch (face) {
            case REGULAR -> "";
            case MEDIUM -> " font-weight=\"500\"";
            case BOLD -> " font-weight=\"700\"";
            case ITALIC -> " font-style=\"italic\"";
        };
    }

    private static String anchor(Align align) {
        return switch (align) {
            case START -> "";
            case MIDDLE -> " text-anchor=\"middle\"";
            case END -> " text-anchor=\"end\"";
        };
    }
}
