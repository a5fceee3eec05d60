package groundbass.engraving.pdf;

import groundbass.engraving.mark.Decimals;
import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.mark.TextFont;
import java.awt.geom.PathIterator;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.EnumMap;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDType0Font;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;

/** What the pages of one document share: a form per glyph, an embedded subset per face. */
final class PdfResources {
    private static final Map<Glyph, byte[]> OPERATORS = new ConcurrentHashMap<>();

    private final PDDocument document;
    private final PDResources shared = new PDResources();
    private final Map<Glyph, String> forms = new EnumMap<>(Glyph.class);
    private final Map<Face, String> names = new EnumMap<>(Face.class);
    private final Map<Face, PDType0Font> fonts = new EnumMap<>(Face.class);

    PdfResources(PDDocument document) {
        this.document = document;
    }

    /** Fonts and forms by their names; the same for every page. */
    PDResources shared() {
        return shared;
    }

    /** The name of a face, which is embedded in part. */
    String font(Face face) throws IOException {
        var name = names.get(face);
        if (name == null) {
            var font = PDType0Font.load(document, TextFont.of(face).font(), true);
            fonts.put(face, font);
            name = shared.add(font).getName();
            names.put(face, name);
        }
        return name;
    }

    /** The numbers of a text's glyphs, which become parts of the font that is embedded. Ask for the font first. */
    int[] glyphs(Face face, String text) {
        var metrics = TextFont.of(face);
        var font = fonts.get(face);
        return metrics.showable(text)
                .codePoints()
                .map(c -> {
                    font.addToSubset(c);
                    return metrics.glyph(c);
                })
                .toArray();
    }

    /** The name of a glyph's form. */
    String form(Glyph glyph) throws IOException {
        var name = forms.get(glyph);
        if (name == null) {
            name = shared.add(draw(glyph)).getName();
            forms.put(glyph, name);
        }
        return name;
    }

    /** Makes the fonts hold what has been asked for. */
    void finish() throws IOException {
        for (var font : fonts.values()) {
            font.subset();
        }
    }

    private PDFormXObject draw(Glyph glyph) throws IOException {
        var form = new PDFormXObject(document);
        var box = MusicFont.bravura().box(glyph).grown(0.05);
        form.setBBox(
                new PDRectangle((float) box.left(), (float) -box.bottom(), (float) box.width(), (float) box.height()));
        form.setResources(new PDResources());
        try (var out = form.getContentStream().createOutputStream(COSName.FLATE_DECODE)) {
            out.write(OPERATORS.computeIfAbsent(glyph, PdfResources::operators));
        }
        return form;
    }

    /** A glyph's outline as PDF path operators, y upward, in staff spaces. */
    private static byte[] operators(Glyph glyph) {
        var out = new StringBuilder();
        double[] c = new double[6];
        for (var each = MusicFont.bravura().outline(glyph).path().getPathIterator(null); !each.isDone(); each.next()) {
            switch (each.currentSegment(c)) {
                case PathIterator.SEG_MOVETO -> operator(out, c, 2, "m\n");
                case PathIterator.SEG_LINETO -> operator(out, c, 2, "l\n");
                case PathIterator.SEG_CUBICTO -> operator(out, c, 6, "c\n");
                case PathIterator.SEG_CLOSE -> out.append("h\n");
                default -> throw new IllegalStateException("outlines of this font are cubic");
            }
        }
        return out.append("f\n").toString().getBytes(StandardCharsets.US_ASCII);
    }

    private static void operator(StringBuilder out, double[] values, int count, String name) {
        for (int i = 0; i < count; i++) {
            Decimals.append(out, i % 2 == 0 ? values[i] : -values[i], 3);
            out.append(' ');
        }
        out.append(name);
    }
}
