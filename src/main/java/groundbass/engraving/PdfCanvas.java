package groundbass.engraving;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.util.Matrix;

/** Draws one page of a PDF. The page's lower left corner is PDF's origin, so y is turned over here. */
public final class PdfCanvas implements Canvas, AutoCloseable {
    private static final double POINTS_PER_MILLIMETRE = 72 / 25.4;

    private final PDPageContentStream out;
    private final PdfResources resources;
    private final PdfTags tags;
    private final PDPage page;
    private final double height;
    private final double scale;

    PdfCanvas(PdfResources resources, PdfTags tags, PDPage page, Page layout) throws IOException {
        this.resources = resources;
        this.tags = tags;
        this.page = page;
        this.height = layout.height();
        this.scale = pointsPerSpace(layout);
        this.out = new PDPageContentStream(resources.document(), page);
    }

    static double pointsPerSpace(Page layout) {
        return layout.staffSpace() * POINTS_PER_MILLIMETRE;
    }

    @Override
    public void close() throws IOException {
        out.close();
    }

    @Override
    public void begin(Group group) {
        run(() -> tags.begin(out, page, group, rectangle(group.box())));
    }

    @Override
    public void end() {
        run(() -> tags.end(out));
    }

    @Override
    public void rect(Box box) {
        run(() -> {
            out.addRect(x(box.left()), y(box.bottom()), length(box.width()), length(box.height()));
            out.fill();
        });
    }

    @Override
    public void line(Shape.Stroke stroke) {
        polygon(stroke.filled());
    }

    @Override
    public void polygon(Shape.Polygon polygon) {
        run(() -> {
            moveTo(polygon.corners().get(0));
            for (var corner : polygon.corners().subList(1, polygon.corners().size())) {
                lineTo(corner);
            }
            out.closePath();
            out.fill();
        });
    }

    @Override
    public void curve(Shape.Curve curve) {
        var lens = curve.lens();
        run(() -> {
            moveTo(lens.get(0));
            curveTo(lens.subList(1, 4));
            lineTo(lens.get(4));
            curveTo(lens.subList(5, 8));
            out.closePath();
            out.fill();
        });
    }

    @Override
    public void glyph(Shape.Sign sign) {
        float size = length(sign.scale());
        run(() -> {
            out.saveGraphicsState();
            out.transform(
                    new Matrix(size, 0, 0, size, x(sign.at().x()), y(sign.at().y())));
            out.drawForm(resources.form(sign.glyph()));
            out.restoreGraphicsState();
        });
    }

    @Override
    public void text(Shape.Run run) {
        var showable = TextFont.of(run.face()).showable(run.text());
        run(() -> {
            out.beginText();
            out.setFont(resources.font(run.face()), length(run.size()));
            out.newLineAtOffset(x(run.left()), y(run.at().y()));
            out.showText(showable);
            out.endText();
            if (run.link().isPresent()) {
                tags.link(page, rectangle(run.box()), run.link().get(), showable);
            }
        });
    }

    private void moveTo(Point to) throws IOException {
        out.moveTo(x(to.x()), y(to.y()));
    }

    private void lineTo(Point to) throws IOException {
        out.lineTo(x(to.x()), y(to.y()));
    }

    private void curveTo(List<Point> points) throws IOException {
        var a = points.get(0);
        var b = points.get(1);
        var to = points.get(2);
        out.curveTo(x(a.x()), y(a.y()), x(b.x()), y(b.y()), x(to.x()), y(to.y()));
    }

    private Box rectangle(Box box) {
        return new Box(x(box.left()), y(box.bottom()), x(box.right()), y(box.top()));
    }

    private float x(double spaces) {
        return length(spaces);
    }

    private float y(double spaces) {
        return length(height - spaces);
    }

    /** Points, to a hundredth: finer than any press prints, and it keeps the file small. */
    private float length(double spaces) {
        return Math.round(spaces * scale * 100) / 100f;
    }

    /** What can only fail where PDFBox cannot write to memory. */
    private interface Step {
        void run() throws IOException;
    }

    private static void run(Step step) {
        try {
            step.run();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
