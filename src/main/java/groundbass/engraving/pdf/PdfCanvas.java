package groundbass.engraving.pdf;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Canvas;
import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Group;
import groundbass.engraving.mark.Page;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import java.io.IOException;
import java.io.UncheckedIOException;

/** Draws one page of a PDF. The page's lower left corner is PDF's origin, so y is turned over here. */
final class PdfCanvas implements Canvas {
    private static final double POINTS_PER_MILLIMETRE = 72 / 25.4;

    private final PdfContent out = new PdfContent();
    private final PdfResources resources;
    private final PdfTags tags;
    private final double height;
    private final double scale;
    private Face face;
    private double size;

    PdfCanvas(PdfResources resources, PdfTags tags, Page layout) {
        this.resources = resources;
        this.tags = tags;
        this.height = layout.height();
        this.scale = pointsPerSpace(layout);
    }

    static double pointsPerSpace(Page layout) {
        return layout.staffSpace() * POINTS_PER_MILLIMETRE;
    }

    /** What has been drawn, as PDF operators. */
    byte[] content() {
        return out.bytes();
    }

    @Override
    public void begin(Group group) {
        tags.begin(out, group, rectangle(group.box()));
    }

    @Override
    public void end() {
        tags.end(out);
    }

    @Override
    public void rect(Box box) {
        out.rectangle(x(box.left()), y(box.bottom()), box.width() * scale, box.height() * scale);
    }

    @Override
    public void line(Shape.Stroke stroke) {
        polygon(stroke.filled());
    }

    @Override
    public void polygon(Shape.Polygon polygon) {
        var corners = polygon.corners();
        out.moveTo(x(corners.get(0).x()), y(corners.get(0).y()));
        corners.subList(1, corners.size()).forEach(this::lineTo);
        out.fill();
    }

    @Override
    public void curve(Shape.Curve curve) {
        var lens = curve.lens();
        out.moveTo(x(lens.get(0).x()), y(lens.get(0).y()));
        curveTo(lens.get(1), lens.get(2), lens.get(3));
        lineTo(lens.get(4));
        curveTo(lens.get(5), lens.get(6), lens.get(7));
        out.fill();
    }

    @Override
    public void glyph(Shape.Sign sign) {
        var at = sign.at();
        out.form(form(sign.glyph()), sign.scale() * scale, x(at.x()), y(at.y()));
    }

    @Override
    public void text(Shape.Run run) {
        double points = run.size() * scale;
        if (run.face() != face || points != size) {
            face = run.face();
            size = points;
            out.font(font(face), size);
        }
        if (run.pale()) {
            out.grey(1 - Shape.Run.PALE);
        }
        out.text(x(run.left()), y(run.at().y()), resources.glyphs(face, run.text()));
        if (run.pale()) {
            out.grey(0);
        }
        run.link().ifPresent(link -> tags.link(rectangle(run.box()), link, run.text()));
    }

    /** Copied and searched as one word, whatever it is drawn of (ISO 32000-1, 14.9.4). */
    @Override
    public void word(Shape.Word word) {
        boolean spelled = !word.text().isEmpty();
        if (spelled) {
            out.beginSpelled(word.text());
        }
        Canvas.super.word(word);
        if (spelled) {
            out.endMarked();
        }
    }

    private String form(Glyph glyph) {
        try {
            return resources.form(glyph);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private String font(Face face) {
        try {
            return resources.font(face);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void lineTo(Point to) {
        out.lineTo(x(to.x()), y(to.y()));
    }

    private void curveTo(Point a, Point b, Point to) {
        out.curveTo(x(a.x()), y(a.y()), x(b.x()), y(b.y()), x(to.x()), y(to.y()));
    }

    private Box rectangle(Box box) {
        return new Box(x(box.left()), y(box.bottom()), x(box.right()), y(box.top()));
    }

    private double x(double spaces) {
        return spaces * scale;
    }

    private double y(double spaces) {
        return (height - spaces) * scale;
    }
}
