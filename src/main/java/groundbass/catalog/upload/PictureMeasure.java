package groundbass.catalog.upload;

import groundbass.form.FieldProblem;
import java.awt.image.DataBuffer;
import java.io.IOException;
import java.util.Optional;
import javax.imageio.IIOException;
import javax.imageio.ImageReader;

/**
 * What it takes to read a picture, known before any of it is laid out in memory.
 *
 * @param width, height in pixels
 * @param pixel bytes of one pixel, as the reader lays it out
 */
record PictureMeasure(int width, int height, long pixel) {
    /** Of what is sent; a camera of today has half as many. */
    static final long MOST_PIXELS = 50_000_000;

    /** Of a side, in pixels. */
    static final int LONGEST_SIDE = 20_000;

    /** No side is longer than this once it is read, in pixels. */
    static final int LONGEST_READ = 2 * PictureContent.LONGEST;

    /** Bytes of what is laid out: a heap of 256 MB has room for it beside its copy and all else. */
    static final long MOST_BYTES = 48_000_000;

    private static final String FIELD = "picture";
    private static final int MILLION = 1_000_000;

    /** @throws IOException where the reader finds no picture that it can lay out */
    static PictureMeasure of(ImageReader reader) throws IOException {
        var types = reader.getImageTypes(0);
        if (!types.hasNext()) {
            throw new IIOException("a picture in no colours that can be read");
        }
        var layout = types.next().getSampleModel(); // the first is the one that is read into
        long bits = (long) layout.getNumDataElements() * DataBuffer.getDataTypeSize(layout.getDataType());
        return new PictureMeasure(reader.getWidth(0), reader.getHeight(0), Math.max(1, bits / Byte.SIZE));
    }

    /** Of so many pixels, across and down, only the first is read. */
    int step() {
        return Math.max(1, up(Math.max(width, height), LONGEST_READ));
    }

    /** What it takes in memory once it is read. */
    long bytes() {
        return (long) up(width, step()) * up(height, step()) * pixel;
    }

    private static int up(int dividend, int divisor) {
        return (int) Math.ceil((double) dividend / divisor);
    }

    /** What keeps it from being read, and what to do. */
    Optional<FieldProblem> problem() {
        if ((long) width * height > MOST_PIXELS) {
            return Optional.of(FieldProblem.of(FIELD, "catalog.picture.pixels", MOST_PIXELS / MILLION));
        }
        if (Math.max(width, height) > LONGEST_SIDE) {
            return Optional.of(FieldProblem.of(FIELD, "catalog.picture.side", LONGEST_SIDE));
        }
        return bytes() > MOST_BYTES ? Optional.of(FieldProblem.of(FIELD, "catalog.picture.depth")) : Optional.empty();
    }
}
