package groundbass.engraving;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/**
 * One face of the text family: widths for laying out, the parsed font for embedding. Figures are lining ones, because
 * the family's default figures hang below the line, which looks wrong on a string of a tablature.
 */
final class TextFont {
    /** What stands in for a character that the family lacks. */
    private static final int FALLBACK = '?';

    private final TrueTypeFont font;
    private final CmapLookup characters;
    private final int upem;
    private final Map<Integer, Metric> metrics = new ConcurrentHashMap<>();

    /** Shares of the em; y downward. */
    private record Metric(double advance, double top, double bottom) {}

    private static final class Holder {
        private static final Map<Face, TextFont> FACES = new EnumMap<>(Face.class);

        static {
            for (var face : Face.values()) {
                FACES.put(face, new TextFont(face));
            }
        }
    }

    static TextFont of(Face face) {
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
    TrueTypeFont font() {
        return font;
    }

    /** The text with what the family cannot show replaced. */
    String showable(String text) {
        return text.codePoints()
                .map(c -> hasGlyph(c) ? c : FALLBACK)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
    }

    /** In ems. */
    double width(String text) {
        return text.codePoints().mapToDouble(c -> metric(c).advance()).sum();
    }

    /** In ems, around the baseline's left end. */
    Box box(String text) {
        double top = text.codePoints().mapToDouble(c -> metric(c).top()).min().orElse(0);
        double bottom =
                text.codePoints().mapToDouble(c -> metric(c).bottom()).max().orElse(0);
        return new Box(0, top, width(text), bottom);
    }

    private boolean hasGlyph(int codePoint) {
        return characters.getGlyphId(codePoint) != 0;
    }

    private Metric metric(int codePoint) {
        return metrics.computeIfAbsent(hasGlyph(codePoint) ? codePoint : FALLBACK, this::measure);
    }

    private synchronized Metric measure(int codePoint) {
        try {
            int id = characters.getGlyphId(codePoint);
            double advance = (double) font.getAdvanceWidth(id) / upem;
            var glyph = font.getGlyph().getGlyph(id);
            return glyph == null
                    ? new Metric(advance, 0, 0)
                    : new Metric(advance, -glyph.getYMaximum() / (double) upem, -glyph.getYMinimum() / (double) upem);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
