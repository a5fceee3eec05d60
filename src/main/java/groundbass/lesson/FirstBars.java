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
import java.util.Set;
import javax.imageio.ImageIO;

/** A line's first bars as music alone, to stand for it where there is little room. */
final class FirstBars {
    private static final int FEW = 2;
    /** What stands over the staff, and is told beside the picture or on the lesson's page. */
    private static final Set<Kind> OVER_THE_STAFF =
            Set.of(Kind.BAR_NUMBER, Kind.SECTION, Kind.TEMPO, Kind.FEEL, Kind.TEXT);

    private FirstBars() {}

    /** Few of them and nothing over the staff, for pictures that lists show small; otherwise as {@link #of}. */
    static LargestPage few(Line line, Messages messages, double width, double height, double largest) {
        return of(line, FEW, OVER_THE_STAFF, messages, width, height, largest);
    }

    /**
     * As large as they can stand in a frame.
     *
     * @param hidden what of the drawing is left out
     * @param width, height of the frame in pixels
     * @param largest pixels to a staff space that look well
     */
    static LargestPage of(
            Line line, int bars, Set<Kind> hidden, Messages messages, double width, double height, double largest) {
        var options = SheetOptions.of(Paper.A4, new PrintedWords(messages), Header.NONE, Footer.NONE)
                .withLegend(false);
        var written = Writing.of(beginning(line, bars));
        return LargestPage.of(spaces -> page(written, options, spaces, hidden), width, height, largest);
    }

    /** In the middle of a white picture of this size, in shades of grey: PNG. */
    static byte[] onPaper(LargestPage bars, int width, int height) {
        try {
            byte[] notes = SheetPng.of(bars.page(), bars.scale(), SheetPng.Ink.DARK);
            var music = ImageIO.read(new ByteArrayInputStream(notes));
            var picture = new BufferedImage(width, height, BufferedImage.TYPE_BYTE_GRAY);
            var graphics = picture.createGraphics();
            graphics.setColor(Color.WHITE);
            graphics.fillRect(0, 0, width, height);
            graphics.drawImage(music, (width - music.getWidth()) / 2, (height - music.getHeight()) / 2, null);
            graphics.dispose();
            var out = new ByteArrayOutputStream();
            ImageIO.write(picture, "png", out);
            return out.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The whole line, where its beginning cannot stand alone. */
    private static Line beginning(Line line, int bars) {
        int first = line.firstNumber();
        int last = first + Math.min(bars, line.bars().size()) - 1;
        return Extract.bars(line, first, last).orElse(line);
    }

    private static Page page(WrittenLine line, SheetOptions options, double spaces, Set<Kind> hidden) {
        var page = Layout.of(line, options.with(Paper.screen(spaces))).get(0);
        for (var kind : hidden) {
            page = page.without(kind);
        }
        return page;
    }
}
