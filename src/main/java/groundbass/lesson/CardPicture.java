package groundbass.lesson;

import groundbass.engraving.png.SheetPng;
import groundbass.score.Line;
import groundbass.text.Messages;
import java.awt.Transparency;
import java.awt.image.BufferedImage;
import java.awt.image.DataBuffer;
import java.awt.image.IndexColorModel;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;

/**
 * The picture of a lesson in lists: its first bars with nothing behind the ink, so that they stand on the page's own
 * ground. A list has many of them, so each is small: half as many pixels again as it takes on a page, in few steps from
 * ground to ink.
 */
public final class CardPicture {
    private static final int WIDTH = 540;
    private static final int HEIGHT = 180;
    private static final double LARGEST_SPACE = 10.5;
    private static final int STEPS = 8;
    private static final int BITS = 4; // of a pixel: PNG has 1, 2, 4 and 8 (W3C PNG, section 11.2.1)
    private static final int OPAQUE = 0xFF;
    private static final int ALPHA = 24;

    private final LargestPage bars;

    private CardPicture(LargestPage bars) {
        this.bars = bars;
    }

    /** Lays the bars out, which takes much longer than drawing them. */
    public static CardPicture of(Line line, Messages messages) {
        return new CardPicture(FirstBars.few(line, messages, WIDTH, HEIGHT, LARGEST_SPACE));
    }

    /** A PNG picture. */
    public byte[] in(SheetPng.Ink ink) {
        try {
            var drawn = ImageIO.read(new ByteArrayInputStream(SheetPng.of(bars.page(), bars.scale(), ink)));
            var out = new ByteArrayOutputStream();
            ImageIO.write(inFewSteps(drawn), "png", out);
            return out.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static BufferedImage inFewSteps(BufferedImage drawn) {
        var steps = new BufferedImage(
                drawn.getWidth(), drawn.getHeight(), BufferedImage.TYPE_BYTE_BINARY, stepsOf(colour(drawn)));
        for (int y = 0; y < drawn.getHeight(); y++) {
            for (int x = 0; x < drawn.getWidth(); x++) {
                double ink = (drawn.getRGB(x, y) >>> ALPHA) / (double) OPAQUE;
                steps.getRaster().setSample(x, y, 0, (int) Math.round(ink * (STEPS - 1)));
            }
        }
        return steps;
    }

    /** Of the ink, as red, green and blue. */
    private static int colour(BufferedImage drawn) {
        return IntStream.range(0, drawn.getWidth() * drawn.getHeight())
                .map(i -> drawn.getRGB(i % drawn.getWidth(), i / drawn.getWidth()))
                .filter(pixel -> pixel >>> ALPHA == OPAQUE)
                .findFirst()
                .orElse(0);
    }

    /** From nothing to the whole ink. */
    private static IndexColorModel stepsOf(int colour) {
        int[] steps = IntStream.range(0, STEPS)
                .map(step -> step * OPAQUE / (STEPS - 1) << ALPHA | colour & ~(OPAQUE << ALPHA))
                .toArray();
        return new IndexColorModel(BITS, STEPS, steps, 0, true, Transparency.TRANSLUCENT, DataBuffer.TYPE_BYTE);
    }
}
