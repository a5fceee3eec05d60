package groundbass.engraving.png;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Canvas;
import groundbass.engraving.mark.Group;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.mark.TextFont;
import java.awt.AlphaComposite;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;

/** Draws in the pixels of a picture; text as outlines, so that no font of the machine is asked for. */
final class PictureCanvas implements Canvas {
    private final Graphics2D out;

    /** @param out in staff spaces, in the colour of the ink */
    PictureCanvas(Graphics2D out) {
        this.out = out;
        out.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        out.setRenderingHint(RenderingHints.KEY_RENDERING, RenderingHints.VALUE_RENDER_QUALITY);
        out.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    }

    @Override
    public void begin(Group group) {}

    @Override
    public void end() {}

    @Override
    public void rect(Box box) {
        out.fill(new Rectangle2D.Double(box.left(), box.top(), box.width(), box.height()));
    }

    @Override
    public void line(Shape.Stroke stroke) {
        polygon(stroke.filled());
    }

    @Override
    public void polygon(Shape.Polygon polygon) {
        var path = from(polygon.corners().get(0));
        polygon.corners().stream().skip(1).forEach(corner -> path.lineTo(corner.x(), corner.y()));
        path.closePath();
        out.fill(path);
    }

    @Override
    public void curve(Shape.Curve curve) {
        var lens = curve.lens();
        var path = from(lens.get(0));
        curve(path, lens.subList(1, 4));
        path.lineTo(lens.get(4).x(), lens.get(4).y());
        curve(path, lens.subList(5, 8));
        path.closePath();
        out.fill(path);
    }

    @Override
    public void glyph(Shape.Sign sign) {
        var place =
                AffineTransform.getTranslateInstance(sign.at().x(), sign.at().y());
        place.scale(sign.scale(), sign.scale());
        fill(MusicFont.bravura().outline(sign.glyph()).path(), place);
    }

    @Override
    public void text(Shape.Run run) {
        var font = TextFont.of(run.face());
        var place = AffineTransform.getTranslateInstance(run.left(), run.at().y());
        place.scale(run.size(), run.size());
        var composite = out.getComposite();
        if (run.pale()) {
            out.setComposite(AlphaComposite.getInstance(AlphaComposite.SRC_OVER, (float) Shape.Run.PALE));
        }
        run.text().codePoints().forEach(character -> {
            fill(font.outline(character), place);
            place.translate(font.width(Character.toString(character)), 0);
        });
        out.setComposite(composite);
    }

    private void fill(Path2D path, AffineTransform place) {
        out.fill(path.createTransformedShape(place));
    }

    private static Path2D from(Point at) {
        var path = new Path2D.Double(Path2D.WIND_NON_ZERO);
        path.moveTo(at.x(), at.y());
        return path;
    }

    private static void curve(Path2D path, List<Point> points) {
        var a = points.get(0);
        var b = points.get(1);
        var to = points.get(2);
        path.curveTo(a.x(), a.y(), b.x(), b.y(), to.x(), to.y());
    }
}
