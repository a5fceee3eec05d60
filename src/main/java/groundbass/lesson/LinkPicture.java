package groundbass.lesson;

import groundbass.engraving.mark.Kind;
import groundbass.engraving.png.SheetPng;
import groundbass.score.Line;
import groundbass.text.Messages;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Set;
import javax.imageio.ImageIO;

/** The picture beside a link to a lesson: its first bars on paper. */
public final class LinkPicture {
    private static final int WIDTH = 1200;
    private static final int HEIGHT = 630;
    /** Cards cut their pictures off a little differently (common practice, no source). */
    private static final int AROUND = 60;

    private static final double LARGEST_SPACE = 30;
    private static final int BARS = 4;
    private static final Color PAPER = Color.WHITE;

    private LinkPicture() {}

    /** A PNG picture. */
    public static byte[] of(Line line, Messages messages) {
        var best = FirstBars.of(
                line, BARS, Set.of(Kind.BAR_NUMBER), messages, WIDTH - 2 * AROUND, HEIGHT - 2 * AROUND, LARGEST_SPACE);
        try {
            return onPaper(SheetPng.of(best.page(), best.scale(), SheetPng.Ink.DARK));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static byte[] onPaper(byte[] notes) throws IOException {
        var music = ImageIO.read(new ByteArrayInputStream(notes));
        var picture = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_BYTE_GRAY);
        var graphics = picture.createGraphics();
        graphics.setColor(PAPER);
        graphics.fillRect(0, 0, WIDTH, HEIGHT);
        graphics.drawImage(music, (WIDTH - music.getWidth()) / 2, (HEIGHT - music.getHeight()) / 2, null);
        graphics.dispose();
        var out = new ByteArrayOutputStream();
        ImageIO.write(picture, "png", out);
        return out.toByteArray();
    }
}
