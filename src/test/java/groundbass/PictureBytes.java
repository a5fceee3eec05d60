package groundbass;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import javax.imageio.ImageIO;

/** Pictures as files, for tests of what is done with them. */
public final class PictureBytes {
    private PictureBytes() {}

    /** Red on the left, blue on the right. */
    public static byte[] of(String format, int width, int height) {
        var picture = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
        var graphics = picture.createGraphics();
        graphics.setColor(Color.RED);
        graphics.fillRect(0, 0, width / 2, height);
        graphics.setColor(Color.BLUE);
        graphics.fillRect(width / 2, 0, width - width / 2, height);
        graphics.dispose();
        return written(format, picture);
    }

    public static byte[] png() {
        return of("png", 40, 20);
    }

    public static byte[] written(String format, BufferedImage picture) {
        var out = new ByteArrayOutputStream();
        try {
            ImageIO.write(picture, format, out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    /**
     * The same JPEG with a block of Exif behind its beginning (CIPA DC-008, section 4.7.2): how the camera was held, and
     * who held it.
     *
     * @param orientation 1 to 8
     */
    public static byte[] withExif(byte[] jpeg, int orientation, String artist) {
        byte[] name = (artist + "\0").getBytes(StandardCharsets.US_ASCII);
        int directory = 8 + 2 + 2 * 12 + 4;
        var block = ByteBuffer.allocate(4 + 6 + directory + name.length);
        block.putShort((short) 0xffe1).putShort((short) (block.capacity() - 2));
        block.put("Exif\0\0MM\0*".getBytes(StandardCharsets.US_ASCII)).putInt(8).putShort((short) 2);
        block.putShort((short) 0x0112)
                .putShort((short) 3)
                .putInt(1)
                .putShort((short) orientation)
                .putShort((short) 0);
        block.putShort((short) 0x013b).putShort((short) 2).putInt(name.length).putInt(directory);
        block.putInt(0).put(name);
        return ByteBuffer.allocate(jpeg.length + block.capacity())
                .put(jpeg, 0, 2)
                .put(block.array())
                .put(jpeg, 2, jpeg.length - 2)
                .array();
    }
}
