package groundbass.engraving;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** A QR code as filled rectangles, one for each run of dark modules in a row. */
final class QrCode {
    private QrCode() {}

    /** Fills the box's width; the paper around it is its quiet zone. */
    static List<Shape> shapes(String text, Box box) {
        var code = encode(text);
        double module = box.width() / code.getWidth();
        var shapes = new ArrayList<Shape>();
        for (int row = 0; row < code.getHeight(); row++) {
            for (int from = 0; from < code.getWidth(); from++) {
                int to = from;
                while (to < code.getWidth() && code.get(to, row)) {
                    to++;
                }
                if (to > from) {
                    double top = box.top() + row * module;
                    shapes.add(new Shape.Rect(
                            new Box(box.left() + from * module, top, box.left() + to * module, top + module)));
                    from = to;
                }
            }
        }
        return shapes;
    }

    private static BitMatrix encode(String text) {
        Map<EncodeHintType, Object> hints = Map.of(
                EncodeHintType.MARGIN,
                0,
                EncodeHintType.CHARACTER_SET,
                StandardCharsets.UTF_8.name(),
                EncodeHintType.ERROR_CORRECTION,
                ErrorCorrectionLevel.M);
        try {
            return new QRCodeWriter().encode(text, BarcodeFormat.QR_CODE, 0, 0, hints);
        } catch (WriterException e) {
            throw new IllegalArgumentException("an address too long for a QR code: " + text.length(), e);
        }
    }
}
