package groundbass.lesson;

import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Page;
import groundbass.engraving.options.Paper;
import groundbass.engraving.options.SheetOptions;
import groundbass.engraving.options.SheetOptions.Footer;
import groundbass.engraving.options.SheetOptions.Header;
import groundbass.engraving.png.SheetPng;
import groundbass.engraving.sheet.Layout;
import groundbass.score.Extract;
import groundbass.score.Line;
import groundbass.text.Messages;
import groundbass.writing.Writing;
import groundbass.writing.WrittenLine;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
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
        var options = SheetOptions.of(Paper.A4, new PrintedWords(messages), Header.NONE, Footer.NONE)
                .withLegend(false);
        var written = Writing.of(beginning(line));
        var best = LargestPage.of(
                spaces -> page(written, options, spaces), WIDTH - 2 * AROUND, HEIGHT - 2 * AROUND, LARGEST_SPACE);
        try {
            return onPaper(SheetPng.of(best.page(), best.scale(), SheetPng.Ink.DARK));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The whole line, where its beginning cannot stand alone. */
    private static Line beginning(Line line) {
        int first = line.firstNumber();
        int last = first + Math.min(BARS, line.bars().size()) - 1;
        return Extract.bars(line, first, last).orElse(line);
    }

    private static Page page(WrittenLine line, SheetOptions options, double spaces) {
        return Layout.of(line, options.with(Paper.screen(spaces))).get(0).without(Kind.BAR_NUMBER);
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
