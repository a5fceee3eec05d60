package groundbass.engraving.png;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Mark;
import groundbass.engraving.mark.Page;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import javax.imageio.ImageIO;

/** Writes a page's music as a picture with nothing behind the ink, to be laid over a video. */
public final class SheetPng {
    private static final double AROUND = 0.5;

    /** What it is drawn with. */
    public enum Ink {
        /** For light pictures. */
        DARK(new Color(0x11, 0x11, 0x11)),
        /** For dark pictures. */
        LIGHT(Color.WHITE);

        private final Color colour;

        Ink(Color colour) {
            this.colour = colour;
        }
    }

    private SheetPng() {}

    /** What a page's marks cover and a little more, in staff spaces. */
    public static Box content(Page page) {
        return page.marks().stream()
                .map(Mark::box)
                .reduce(Box::union)
                .orElseThrow()
                .grown(AROUND);
    }

    /** @param scale pixels to a staff space */
    public static byte[] of(Page page, double scale, Ink ink) {
        var box = content(page);
        int width = (int) Math.ceil(box.width() * scale);
        int height = (int) Math.ceil(box.height() * scale);
        var image = new BufferedImage(width, height, BufferedImage.TYPE_INT_ARGB);
        var graphics = image.createGraphics();
        try {
            graphics.setColor(ink.colour);
            graphics.scale(scale, scale);
            graphics.translate(-box.left(), -box.top());
            page.drawOn(new PictureCanvas(graphics));
        } finally {
            graphics.dispose();
        }
        return bytes(image);
    }

    private static byte[] bytes(BufferedImage image) {
        var out = new ByteArrayOutputStream();
        try {
            ImageIO.write(image, "png", out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }
}
