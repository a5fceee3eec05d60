package groundbass.catalog.upload;

import java.awt.geom.AffineTransform;
import java.nio.BufferUnderflowException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * How a camera was held: the values 1 to 8 of the tag Orientation (CIPA DC-008, Exif 2.32, section 4.6.4), in the order
 * of their numbers. A picture that loses its metadata has to be turned by it before.
 */
enum Orientation {
    UPRIGHT,
    MIRRORED,
    UPSIDE_DOWN,
    UPSIDE_DOWN_MIRRORED,
    LEFT_MIRRORED,
    TURNED_LEFT,
    RIGHT_MIRRORED,
    TURNED_RIGHT;

    private static final int TAG = 0x0112;
    private static final int APP1 = 0xe1;
    private static final int START_OF_SCAN = 0xda;
    private static final byte[] EXIF = "Exif\0\0".getBytes(StandardCharsets.US_ASCII);

    /** Of a JPEG file; upright where it does not say, or says it in no way that can be read. */
    static Orientation of(byte[] jpeg) {
        try {
            var in = ByteBuffer.wrap(jpeg);
            in.position(2);
            return search(in);
        } catch (BufferUnderflowException | IllegalArgumentException | IndexOutOfBoundsException e) {
            return UPRIGHT;
        }
    }

    /** From marker to marker (ITU-T T.81, annex B.1.1.4: a length that counts itself) up to the picture itself. */
    private static Orientation search(ByteBuffer in) {
        while (in.remaining() > 4 && (in.get() & 0xff) == 0xff) {
            int marker = in.get() & 0xff;
            int length = (in.getShort() & 0xffff) - 2;
            if (marker == START_OF_SCAN) {
                return UPRIGHT;
            }
            var segment = in.slice(in.position(), length);
            if (marker == APP1 && isExif(segment)) {
                return directory(segment.slice(EXIF.length, length - EXIF.length));
            }
            in.position(in.position() + length);
        }
        return UPRIGHT;
    }

    private static boolean isExif(ByteBuffer segment) {
        return segment.remaining() > EXIF.length
                && segment.slice(0, EXIF.length).equals(ByteBuffer.wrap(Arrays.copyOf(EXIF, EXIF.length)));
    }

    /** The first directory of a TIFF (TIFF 6.0, section 2): entries of twelve bytes. */
    private static Orientation directory(ByteBuffer tiff) {
        tiff.order(tiff.get(0) == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
        int first = tiff.getInt(4);
        int entries = tiff.getShort(first) & 0xffff;
        for (int i = 0; i < entries; i++) {
            int entry = first + 2 + 12 * i;
            if ((tiff.getShort(entry) & 0xffff) == TAG) {
                int value = tiff.getShort(entry + 8) & 0xffff;
                return value >= 1 && value <= values().length ? values()[value - 1] : UPRIGHT;
            }
        }
        return UPRIGHT;
    }

    /** Whether what was wide becomes high. */
    boolean isOnItsSide() {
        return ordinal() >= LEFT_MIRRORED.ordinal();
    }

    /**
     * What turns a picture so that it is seen as it was taken.
     *
     * @param width, height as stored
     */
    AffineTransform upright(double width, double height) {
        return switch (this) {
            case UPRIGHT -> new AffineTransform();
            case MIRRORED -> new AffineTransform(-1, 0, 0, 1, width, 0);
            case UPSIDE_DOWN -> new AffineTransform(-1, 0, 0, -1, width, height);
            case UPSIDE_DOWN_MIRRORED -> new AffineTransform(1, 0, 0, -1, 0, height);
            case LEFT_MIRRORED -> new AffineTransform(0, 1, 1, 0, 0, 0);
            case TURNED_LEFT -> new AffineTransform(0, 1, -1, 0, height, 0);
            case RIGHT_MIRRORED -> new AffineTransform(0, -1, -1, 0, height, width);
            case TURNED_RIGHT -> new AffineTransform(0, -1, 1, 0, 0, width);
        };
    }
}
