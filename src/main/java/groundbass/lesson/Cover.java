package groundbass.lesson;

import groundbass.score.Line;
import groundbass.text.Messages;
import java.awt.Color;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.rendering.PDFRenderer;

/** The picture that a player shows for a lesson's files: square, in shades of grey. */
public final class Cover {
    private static final int SIZE = 500;
    private static final int AROUND = 30;
    private static final double LARGEST_SPACE = 30;

    private Cover() {}

    /** The first bars as large as they can be, since lists show it small: a PNG picture. */
    public static byte[] of(Line line, Messages messages) {
        int room = SIZE - 2 * AROUND;
        return FirstBars.onPaper(FirstBars.few(line, messages, room, room, LARGEST_SPACE), SIZE, SIZE);
    }

    /** The upper part of its sheet, which releases of earlier programs have: a PNG picture. */
    public static byte[] of(byte[] sheet) throws IOException {
        try (var document = Loader.loadPDF(sheet)) {
            var renderer = new PDFRenderer(document);
            float scale = SIZE / document.getPage(0).getMediaBox().getWidth();
            var page = renderer.renderImage(0, scale);
            var square = new BufferedImage(SIZE, SIZE, BufferedImage.TYPE_BYTE_GRAY);
            var graphics = square.createGraphics();
            graphics.setRenderingHint(RenderingHints.KEY_RENDERING, RenderingHints.VALUE_RENDER_QUALITY);
            graphics.setColor(Color.WHITE);
            graphics.fillRect(0, 0, SIZE, SIZE);
            graphics.drawImage(page, 0, 0, null);
            graphics.dispose();
            var out = new ByteArrayOutputStream();
            ImageIO.write(square, "png", out);
            return out.toByteArray();
        }
    }
}
