package groundbass.engraving.png;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Page;
import groundbass.engraving.options.Paper;
import groundbass.engraving.png.SheetPng.Ink;
import groundbass.engraving.sheet.Layout;
import groundbass.engraving.sign.TestWords;
import groundbass.score.RandomLines;
import groundbass.writing.Writing;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;

class SheetPngTest {
    private static final double SCALE = 16;

    private static Page page() {
        return Layout.of(Writing.of(RandomLines.line(5, 4)), TestWords.options(Paper.screen(90)))
                .get(0);
    }

    private static BufferedImage picture(Page page, Ink ink) throws IOException {
        return ImageIO.read(new ByteArrayInputStream(SheetPng.of(page, SCALE, ink)));
    }

    private static int alpha(int pixel) {
        return pixel >>> 24;
    }

    /** The most ink in a box of the page. */
    private static int ink(BufferedImage picture, Box content, Box box) {
        int most = 0;
        for (int y = at(box.top() - content.top()); y <= at(box.bottom() - content.top()); y++) {
            for (int x = at(box.left() - content.left()); x <= at(box.right() - content.left()); x++) {
                most = Math.max(most, alpha(picture.getRGB(x, y)));
            }
        }
        return most;
    }

    private static int at(double spaces) {
        return (int) (spaces * SCALE);
    }

    @Test
    void thereIsInkWhereverThereIsAMark() throws IOException {
        var page = page();
        var picture = picture(page, Ink.DARK);
        var content = SheetPng.content(page);
        for (var mark : page.marks()) {
            assertThat(ink(picture, content, mark.box())).as("%s", mark).isGreaterThan(60);
        }
    }

    @Test
    void whatIsNoInkIsTransparent() throws IOException {
        var picture = picture(page(), Ink.LIGHT);
        long bare = 0;
        for (int y = 0; y < picture.getHeight(); y++) {
            for (int x = 0; x < picture.getWidth(); x++) {
                int pixel = picture.getRGB(x, y);
                bare += alpha(pixel) == 0 ? 1 : 0;
                assertThat(alpha(pixel) < 255 || (pixel & 0xFFFFFF) == 0xFFFFFF)
                        .as("all full ink is white")
                        .isTrue();
            }
        }
        assertThat(bare).isGreaterThan(picture.getWidth() * picture.getHeight() / 2L);
        assertThat(alpha(picture.getRGB(0, 0))).isZero();
    }

    @Test
    void thePictureIsAsLargeAsItsMusic() throws IOException {
        var content = SheetPng.content(page());
        assertThat(picture(page(), Ink.DARK).getWidth()).isEqualTo((int) Math.ceil(content.width() * SCALE));
        assertThat(picture(page(), Ink.DARK).getHeight()).isEqualTo((int) Math.ceil(content.height() * SCALE));
    }
}
