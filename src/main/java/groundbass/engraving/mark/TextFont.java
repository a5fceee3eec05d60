package groundbass.engraving.mark;

import java.awt.geom.AffineTransform;
import java.awt.geom.Path2D;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.SortedSet;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TTFSubsetter;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/**
 * One face of the text family: widths for laying out, the parsed font for embedding. Figures are lining ones, because
 * the family's default figures hang below the line, which looks wrong on a string of a tablature.
 */
public final class TextFont {
    /** What stands in for a character that the family lacks. */
    private static final int FALLBACK = '?';

    /** The characters before this one, the Latin ones, are found without hashing. */
    private static final int FIRST_RARE = 0x250;

    private final TrueTypeFont font;
    private final CmapLookup characters;
    private final int upem;
    private final Metric[] common = new Metric[FIRST_RARE];
    private final Map<Integer, Metric> rare = new ConcurrentHashMap<>();

    /** A glyph and what it covers in shares of the em; y downward. */
    private record Metric(int glyph, double advance, double top, double bottom) {}

    private static final class Holder {
        private static final Map<Face, TextFont> FACES = new EnumMap<>(Face.class);

        static {
            for (var face : Face.values()) {
                FACES.put(face, new TextFont(face));
            }
        }
    }

    public static TextFont of(Face face) {
        return Holder.FACES.get(face);
    }

    private TextFont(Face face) {
        try (var in = Objects.requireNonNull(TextFont.class.getResourceAsStream(face.resource()))) {
            font = new TTFParser().parse(new RandomAccessReadBuffer(in));
            font.enableGsubFeature("lnum");
            font.setEnableGsub(false); // no ligatures: widths are summed character by character
            characters = font.getUnicodeCmapLookup();
            upem = font.getUnitsPerEm();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The parsed font; PDFBox only reads it. */
    public TrueTypeFont font() {
        return font;
    }

    /**
     * The font with these characters alone, as a TrueType file; figures are lining ones without a feature.
     *
     * @param codePoints in their order, so that the same ones give the same bytes
     */
    public synchronized byte[] subset(SortedSet<Integer> codePoints) {
        var out = new ByteArrayOutputStream();
        try {
            var subsetter = new TTFSubsetter(font);
            codePoints.stream().filter(this::hasGlyph).forEach(subsetter::add);
            subsetter.writeToStream(out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    /** The text with what the family cannot show replaced. */
    public String showable(String text) {
        return text.codePoints()
                .map(c -> hasGlyph(c) ? c : FALLBACK)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
    }

    /** The number of a character's glyph in the font. */
    public int glyph(int codePoint) {
        return metric(codePoint).glyph();
    }

    /** A character's outline, y downward, in ems. */
    public synchronized Path2D outline(int codePoint) {
        try {
            var glyph = font.getGlyph().getGlyph(glyph(codePoint));
            var path = new Path2D.Double(Path2D.WIND_NON_ZERO);
            if (glyph != null) {
                path.append(
                        glyph.getPath().getPathIterator(AffineTransform.getScaleInstance(1.0 / upem, -1.0 / upem)),
                        false);
            }
            return path;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** In ems. */
    public double width(String text) {
        double width = 0;
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            width += metric(text.codePointAt(i)).advance();
        }
        return width;
    }

    /** In ems, around the baseline's left end. */
    public Box box(String text) {
        double top = Double.POSITIVE_INFINITY;
        double bottom = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            var metric = metric(text.codePointAt(i));
            top = Math.min(top, metric.top());
            bottom = Math.max(bottom, metric.bottom());
        }
        return text.isEmpty() ? new Box(0, 0, 0, 0) : new Box(0, top, width(text), bottom);
    }

    private boolean hasGlyph(int codePoint) {
        return characters.getGlyphId(codePoint) != 0;
    }

    private Metric metric(int codePoint) {
        if (codePoint >= FIRST_RARE) {
            return rare.computeIfAbsent(codePoint, this::measure);
        }
        var known = common[codePoint];
        if (known == null) {
            known = measure(codePoint); // twice by two threads does no harm: both find the same
            common[codePoint] = known;
        }
        return known;
    }

    private synchronized Metric measure(int codePoint) {
        try {
            int id = characters.getGlyphId(hasGlyph(codePoint) ? codePoint : FALLBACK);
            double advance = (double) font.getAdvanceWidth(id) / upem;
            var glyph = font.getGlyph().getGlyph(id);
            return glyph == null
                    ? new Metric(id, advance, 0, 0)
                    : new Metric(
                            id, advance, -glyph.getYMaximum() / (double) upem, -glyph.getYMinimum() / (double) upem);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
