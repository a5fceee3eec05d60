package groundbass.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.engraving.png.SheetPng.Ink;
import groundbass.score.Extract;
import groundbass.score.Line;
import groundbass.score.RandomLines;
import groundbass.text.Messages;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Locale;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Frames of 1920 x 1080 and 3840 x 2160 pixels: ITU-R BT.709 and BT.2020. */
class VideoPicturesTest {
    private static final VideoPictures PICTURES = new VideoPictures(Messages.of(Locale.ENGLISH));
    private static final Line LINE = RandomLines.line(5, 16);

    private static BufferedImage picture(Line line, VideoFrame frame) throws IOException {
        return ImageIO.read(new ByteArrayInputStream(PICTURES.png(line, frame, Ink.LIGHT)));
    }

    @ParameterizedTest
    @CsvSource({"3, 3, HD", "3, 4, HD", "1, 16, HD", "3, 4, UHD"})
    void passagesFitTheSafePartOfTheirFrame(int first, int last, VideoFrame frame) throws IOException {
        var picture = picture(Extract.bars(LINE, first, last).orElseThrow(), frame);
        int width = frame == VideoFrame.HD ? 1920 : 3840;
        int height = frame == VideoFrame.HD ? 1080 : 2160;
        assertThat(picture.getWidth()).isBetween(width / 4, width * 9 / 10 + 1);
        assertThat(picture.getHeight()).isBetween(height / 8, height * 9 / 10 + 1);
        assertThat(picture.getColorModel().hasAlpha()).isTrue();
    }

    @Test
    void theLargerFrameHasTheSamePictureTwiceAsLarge() throws IOException {
        var bar = Extract.bars(LINE, 3, 3).orElseThrow();
        assertThat(picture(bar, VideoFrame.UHD).getWidth())
                .isCloseTo(2 * picture(bar, VideoFrame.HD).getWidth(), org.assertj.core.data.Offset.offset(2));
    }

    @Test
    void aSystemOfTheSheetCanBeAskedFor() {
        int bars = 0;
        int number = 1;
        for (var system = PICTURES.system(LINE, 1); system.isPresent(); system = PICTURES.system(LINE, ++number)) {
            bars += system.get().bars().size();
        }
        assertThat(bars).isEqualTo(16);
        assertThat(PICTURES.system(LINE, 0)).isEmpty();
    }
}
