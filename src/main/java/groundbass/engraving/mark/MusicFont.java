package groundbass.engraving.mark;

import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import org.apache.fontbox.ttf.OTFParser;
import org.apache.fontbox.ttf.OpenTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/** The outlines of the music font, read once. Immutable and thread-safe. */
public final class MusicFont {
    private static final String RESOURCE = "bravura.otf";

    /** Four staff spaces to the em (SMuFL), a thousand units to the em. */
    private static final double UNITS_PER_SPACE = 250;

    /** How far straight pieces may lie beside a curve, in staff spaces. */
    private static final double FLATNESS = 0.0005;

    private final Map<Glyph, Outline> outlines = new EnumMap<>(Glyph.class);

    /** A glyph's path in staff spaces, y downward, and what it covers. */
    public record Outline(Path2D path, Box box) {}

    private static final class Holder {
        private static final MusicFont BRAVURA = new MusicFont();
    }

    public static MusicFont bravura() {
        return Holder.BRAVURA;
    }

    private MusicFont() {
        try (var in = Objects.requireNonNull(MusicFont.class.getResourceAsStream(RESOURCE));
                var buffer = new RandomAccessReadBuffer(in);
                var font = new OTFParser().parse(buffer)) {
            for (var glyph : Glyph.values()) {
                outlines.put(glyph, read(font, glyph));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public Outline outline(Glyph glyph) {
        return outlines.get(glyph);
    }

    /** What a glyph covers around its origin. */
    public Box box(Glyph glyph) {
        return outlines.get(glyph).box();
    }

    public double width(Glyph glyph) {
        return box(glyph).right();
    }

    private static Outline read(OpenTypeFont font, Glyph glyph) throws IOException {
        int id = font.getUnicodeCmapLookup().getGlyphId(glyph.codePoint());
        if (id == 0) {
            throw new IllegalStateException("the music font has no " + glyph);
        }
        var path = new Path2D.Double(
                font.getCFF().getFont().getType2CharString(id).getPath(),
                AffineTransform.getScaleInstance(1 / UNITS_PER_SPACE, -1 / UNITS_PER_SPACE));
        return new Outline(path, covered(path));
    }

    /**
     * What is inked. A path's own bounds hold the points that steer its curves as well, which lie outside them; later
     * versions of Java leave these out, so that the same line would be laid out otherwise there.
     */
    private static Box covered(Path2D path) {
        var bounds = new Path2D.Double();
        bounds.append(path.getPathIterator(null, FLATNESS), false);
        var box = bounds.getBounds2D();
        return new Box(box.getMinX(), box.getMinY(), box.getMaxX(), box.getMaxY());
    }
}
