package groundbass.web.view;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.QrCode;
import java.util.Locale;
import java.util.stream.Collectors;

/**
 * A QR code as the outline of a drawing.
 *
 * @param outline path data of SVG in a square of {@link #SIDE} units
 */
public record SquareCode(String outline) {
    public static final int SIDE = 1_000;

    public static SquareCode of(String text) {
        return new SquareCode(QrCode.of(text).shapes(new Box(0, 0, SIDE, SIDE)).stream()
                .map(SquareCode::rectangle)
                .collect(Collectors.joining()));
    }

    private static String rectangle(Shape shape) {
        var box = ((Shape.Rect) shape).box();
        return String.format(
                Locale.ROOT,
                "M%.1f %.1fh%.1fv%.1fh%.1fz",
                box.left(),
                box.top(),
                box.width(),
                box.height(),
                -box.width());
    }
}
