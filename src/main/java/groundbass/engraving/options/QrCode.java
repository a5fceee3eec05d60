package groundbass.engraving.options;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Shape;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The way to a page: its address, and the same as a QR code, which is encoded once however many pages show it. */
public final class QrCode {
    private final String address;
    private final BitMatrix modules;

    private QrCode(String address, BitMatrix modules) {
        this.address = address;
        this.modules = modules;
    }

    /** @throws IllegalArgumentException where the address is too long for any QR code */
    public static QrCode of(String address) {
        return new QrCode(address, encode(address));
    }

    public String address() {
        return address;
    }

    /** Filled rectangles, one for each run of dark modules in a row. They fill the box's width; the paper around it is the quiet zone. */
    public List<Shape> shapes(Box box) {
        double module = box.width() / modules.getWidth();
        var shapes = new ArrayList<Shape>();
        for (int row = 0; row < modules.getHeight(); row++) {
            for (int from = 0; from < modules.getWidth(); from++) {
                int to = from;
                while (to < modules.getWidth() && modules.get(to, row)) {
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

    @Override
    public boolean equals(Object that) {
        return that instanceof QrCode other && address.equals(other.address);
    }

    @Override
    public int hashCode() {
        return address.hashCode();
    }

    @Override
    public String toString() {
        return address;
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
