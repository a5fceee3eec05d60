package groundbass.catalog.upload;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.PictureBytes;
import groundbass.form.FieldProblem;
import groundbass.form.Outcome;
import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;
import java.util.concurrent.CompletableFuture;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PictureContentTest {
    private static PictureContent made(byte[] sent) {
        return PictureContent.of(sent).result().orElseThrow();
    }

    private static BufferedImage seen(PictureContent made) throws IOException {
        return ImageIO.read(new ByteArrayInputStream(made.bytes()));
    }

    /** CIPA DC-008, section 4.6.4: where the first row and the first column of what is stored are seen. */
    @ParameterizedTest
    @CsvSource({
        "1, 40, 20, LEFT",
        "2, 40, 20, RIGHT",
        "3, 40, 20, RIGHT",
        "4, 40, 20, LEFT",
        "5, 20, 40, TOP",
        "6, 20, 40, TOP",
        "7, 20, 40, BOTTOM",
        "8, 20, 40, BOTTOM"
    })
    void aPhotographIsSeenAsItWasTakenAndSaysNoMoreThanThat(int orientation, int width, int height, String red)
            throws IOException {
        byte[] sent = PictureBytes.withExif(PictureBytes.of("jpeg", 40, 20), orientation, "Somebody of the quay");
        var made = made(sent);
        assertThat(made.format()).isEqualTo(PictureFormat.JPEG);
        var seen = seen(made);
        assertThat(seen.getWidth()).isEqualTo(made.width()).isEqualTo(width);
        assertThat(seen.getHeight()).isEqualTo(made.height()).isEqualTo(height);
        boolean wide = red.equals("LEFT") || red.equals("RIGHT");
        boolean first = red.equals("LEFT") || red.equals("TOP");
        int across = wide ? (first ? 5 : width - 6) : width / 2;
        int down = wide ? height / 2 : first ? 5 : height - 6;
        var there = new Color(seen.getRGB(across, down));
        assertThat(there.getRed()).as("red at " + red).isGreaterThan(200);
        assertThat(there.getBlue()).isLessThan(60);
        assertThat(new String(sent, StandardCharsets.ISO_8859_1)).contains("Somebody", "Exif");
        assertThat(new String(made.bytes(), StandardCharsets.ISO_8859_1)).doesNotContain("Somebody", "Exif");
    }

    /** PNG (Third Edition), section 11.3.3.2: a chunk of text, with its checksum left as it is not read. */
    @Test
    void aDrawingKeepsItsFormAndLosesItsWords() {
        byte[] png = PictureBytes.png();
        int header = 8 + 25;
        byte[] text = "tEXtAuthor\0Somebody".getBytes(StandardCharsets.US_ASCII);
        var crc = new java.util.zip.CRC32();
        crc.update(text);
        byte[] sent = ByteBuffer.allocate(png.length + 8 + text.length)
                .put(png, 0, header)
                .putInt(text.length - 4)
                .put(text)
                .putInt((int) crc.getValue())
                .put(png, header, png.length - header)
                .array();
        var made = made(sent);
        assertThat(made.format()).isEqualTo(PictureFormat.PNG);
        assertThat(new String(made.bytes(), StandardCharsets.ISO_8859_1)).doesNotContain("Somebody");
        assertThat(PictureContent.isMade(made.bytes(), PictureFormat.PNG)).isTrue();
        assertThat(PictureContent.isMade(made.bytes(), PictureFormat.JPEG)).isFalse();
    }

    @Test
    void whatIsLargerThanAPageIsMadeSmallerAndClearGroundBecomesWhite() throws IOException {
        var clear = new BufferedImage(4_000, 1_000, BufferedImage.TYPE_INT_ARGB);
        byte[] sent = PictureBytes.written("png", clear);
        var made = made(sent);
        assertThat(made.width()).isEqualTo(PictureContent.LONGEST);
        assertThat(made.height()).isEqualTo(PictureContent.LONGEST / 4);
        assertThat(new Color(seen(made).getRGB(9, 9))).isEqualTo(Color.WHITE);
        assertThat(PictureContent.isMade(sent, PictureFormat.PNG)).isFalse();
    }

    /** A photograph that somebody sent as PNG: noise is what a camera adds to everything. */
    @Test
    void aHeavyPngBecomesAJpeg() {
        var noise = new BufferedImage(600, 600, BufferedImage.TYPE_INT_RGB);
        var random = new Random(7);
        for (int i = 0; i < 360_000; i++) {
            noise.setRGB(i % 600, i / 600, random.nextInt(1 << 24));
        }
        assertThat(made(PictureBytes.written("png", noise)).format()).isEqualTo(PictureFormat.JPEG);
    }

    @Test
    void whatIsNoPictureOrBrokenOrHugeIsRefusedWithWhatToDo() {
        assertThat(problem(PictureContent.of("GIF89a and more".getBytes(StandardCharsets.US_ASCII))))
                .isEqualTo("catalog.picture.none");
        assertThat(problem(PictureContent.of(new byte[0]))).isEqualTo("catalog.picture.none");
        byte[] png = PictureBytes.png();
        assertThat(problem(PictureContent.of(Arrays.copyOf(png, png.length / 2))))
                .isEqualTo("catalog.picture.unreadable");
        // PNG (Third Edition), section 11.2.1: width and height, four bytes each, in the first chunk; nothing behind
        // them
        // has to be as large, and nothing of it may be laid out before that is asked
        byte[] huge = ByteBuffer.wrap(png.clone())
                .putInt(16, 30_000)
                .putInt(20, 30_000)
                .array();
        assertThat(problem(PictureContent.of(huge))).isEqualTo("catalog.picture.pixels");
        byte[] wide =
                ByteBuffer.wrap(png.clone()).putInt(16, 20_001).putInt(20, 1).array();
        assertThat(problem(PictureContent.of(wide))).isEqualTo("catalog.picture.side");
        // the same section: 16 bits for each of red, green, blue and alpha; every second pixel of that takes 82 MB
        byte[] deep = ByteBuffer.wrap(png.clone())
                .putInt(16, 6_399)
                .putInt(20, 6_399)
                .put(24, (byte) 16)
                .put(25, (byte) 6)
                .array();
        assertThat(problem(PictureContent.of(deep))).isEqualTo("catalog.picture.depth");
    }

    /** Three bytes for a pixel of a photograph: however large it may be, it takes no more than 48 MB. */
    @ParameterizedTest
    @CsvSource({"3200, 3200, 1", "3201, 10, 2", "6399, 6399, 2", "6400, 6400, 2", "7000, 7000, 3", "20000, 2500, 7"})
    void ofAVeryLargePictureNotEveryPixelIsRead(int width, int height, int step) {
        var measure = new PictureMeasure(width, height, 3);
        assertThat(measure.step()).isEqualTo(step);
        assertThat(measure.problem()).isEmpty();
    }

    @Test
    @Timeout(60)
    void onePictureIsReadAtATime() throws InterruptedException {
        PictureContent.READING.acquire();
        var made = CompletableFuture.supplyAsync(() -> made(PictureBytes.png()));
        while (!PictureContent.READING.hasQueuedThreads()) {
            Thread.onSpinWait();
        }
        assertThat(made).isNotDone();
        PictureContent.READING.release();
        assertThat(made.join().width()).isEqualTo(40);
        assertThat(PictureContent.READING.availablePermits()).isEqualTo(1);
    }

    private static String problem(Outcome<PictureContent> outcome) {
        return outcome.problems().stream().map(FieldProblem::key).findFirst().orElse("none");
    }
}
