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
        var bounds = path.getBounds2D();
        return new Outline(path, new Box(bounds.getMinX(), bounds.getMinY(), bounds.getMaxX(), bounds.getMaxY()));
    }
}
