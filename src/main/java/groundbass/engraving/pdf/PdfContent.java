package groundbass.engraving.pdf;

import groundbass.engraving.mark.Decimals;
import java.nio.charset.StandardCharsets;

/**
 * The operators of one page's content (ISO 32000-1, annex A), written one after another. Lengths are points, to a
 * hundredth: finer than any press prints, and it keeps the file small.
 */
final class PdfContent {
    private static final String HEX = "0123456789ABCDEF";

    private final StringBuilder out = new StringBuilder(1 << 15);

    byte[] bytes() {
        return out.toString().getBytes(StandardCharsets.US_ASCII);
    }

    void moveTo(double x, double y) {
        numbers(x, y).append("m\n");
    }

    void lineTo(double x, double y) {
        numbers(x, y).append("l\n");
    }

    void curveTo(double... sixNumbers) {
        numbers(sixNumbers).append("c\n");
    }

    void fill() {
        out.append("f\n"); // closes what is open
    }

    void rectangle(double left, double bottom, double width, double height) {
        numbers(left, bottom, width, height).append("re f\n");
    }

    /** Draws a form with its origin at a point, larger or smaller by {@code scale}. */
    void form(String name, double scale, double x, double y) {
        out.append("q ");
        numbers(scale, 0, 0, scale, x, y).append("cm /").append(name).append(" Do Q\n");
    }

    void font(String name, double size) {
        out.append('/').append(name).append(' ');
        numbers(size).append("Tf\n");
    }

    /** Shows glyphs by their numbers in the font. */
    void text(double x, double y, int[] glyphs) {
        out.append("BT ");
        numbers(x, y).append("Td <");
        for (int glyph : glyphs) {
            hex(glyph);
        }
        out.append("> Tj ET\n");
    }

    /** What follows is filled with a grey: 0 is black, 1 is white. */
    void grey(double level) {
        numbers(level).append("g\n");
    }

    void beginArtifact() {
        out.append("/Artifact BMC\n");
    }

    void beginTagged(String type, int id) {
        out.append('/').append(type).append(" <</MCID ").append(id).append(">> BDC\n");
    }

    /** What follows reads as this text. */
    void beginSpelled(String text) {
        out.append("/Span <</ActualText <FEFF");
        text.chars().forEach(this::hex);
        out.append(">>> BDC\n");
    }

    void endMarked() {
        out.append("EMC\n");
    }

    private StringBuilder numbers(double... values) {
        for (double value : values) {
            Decimals.append(out, value, 2);
            out.append(' ');
        }
        return out;
    }

    private void hex(int sixteenBits) {
        for (int shift = 12; shift >= 0; shift -= 4) {
            out.append(HEX.charAt(sixteenBits >> shift & 0xF));
        }
    }
}
