package groundbass.lesson;

import java.awt.Color;
import java.awt.RenderingHints;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.rendering.PDFRenderer;

/** The picture that a player shows for a lesson's files: the upper part of its sheet, square, in shades of grey. */
public final class Cover {
    private static final int SIZE = 500;

    private Cover() {}

    /** A PNG picture. */
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
