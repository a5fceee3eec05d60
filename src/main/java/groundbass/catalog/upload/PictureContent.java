package groundbass.catalog.upload;

import groundbass.form.Outcome;
import java.awt.Color;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.concurrent.Semaphore;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageReader;
import javax.imageio.ImageWriteParam;
import javax.imageio.stream.MemoryCacheImageInputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/**
 * A picture made anew from what was sent: upright, no larger than a page shows it, on white, and with nothing in it but
 * what is seen. Where and with what it was taken, and whatever else a file may carry, stays behind.
 *
 * @param width, height in pixels
 */
record PictureContent(PictureFormat format, int width, int height, byte[] bytes) {
    /** The longest side of what is kept, in pixels: twice the measure of a page, for fine screens. */
    static final int LONGEST = 1_600;

    /** Whoever reads a picture holds it: two at once would need twice the memory. */
    static final Semaphore READING = new Semaphore(1, true);

    private static final String FIELD = "picture";
    /** A drawing stays a PNG, whose edges are sharp; a photograph sent as PNG would be heavy. */
    private static final int HEAVY = 600_000;

    private static final float QUALITY = 0.85f;

    /** @return refused with what to do, where it is no picture, or too large a one to be read */
    static Outcome<PictureContent> of(byte[] sent) {
        var format = PictureFormat.of(sent);
        if (format.isEmpty()) {
            return Outcome.refused(FIELD, "catalog.picture.none");
        }
        READING.acquireUninterruptibly();
        try {
            return read(sent, format.get());
        } finally {
            READING.release();
        }
    }

    private static Outcome<PictureContent> read(byte[] sent, PictureFormat format) {
        var reader = ImageIO.getImageReadersByFormatName(format.value()).next();
        try (var in = new MemoryCacheImageInputStream(new ByteArrayInputStream(sent))) {
            reader.setInput(in, true, true);
            var measure = PictureMeasure.of(reader);
            var problem = measure.problem();
            if (problem.isPresent()) {
                return Outcome.refused(List.of(problem.get()));
            }
            var orientation = format == PictureFormat.JPEG ? Orientation.of(sent) : Orientation.UPRIGHT;
            return Outcome.done(written(format, upright(read(reader, measure.step()), orientation)));
        } catch (IOException | RuntimeException e) { // decoders throw what they like at a file that is broken
            return Outcome.refused(FIELD, "catalog.picture.unreadable");
        } finally {
            reader.dispose();
        }
    }

    /** Whether bytes are such as {@link #of} makes: they can be read to their end, and are no larger. */
    static boolean isMade(byte[] content, PictureFormat format) {
        return PictureFormat.of(content).filter(format::equals).isPresent()
                && of(content).result().filter(made -> isAsLarge(made, content)).isPresent();
    }

    private static boolean isAsLarge(PictureContent made, byte[] content) {
        try (var in = new MemoryCacheImageInputStream(new ByteArrayInputStream(content))) {
            var reader = ImageIO.getImageReaders(in).next();
            reader.setInput(in);
            return reader.getWidth(0) == made.width() && reader.getHeight(0) == made.height();
        } catch (IOException e) {
            return false;
        }
    }

    /** Of a very large picture only one pixel in each {@code step}, so that the memory that it takes is bounded. */
    private static BufferedImage read(ImageReader reader, int step) throws IOException {
        var param = reader.getDefaultReadParam();
        param.setSourceSubsampling(step, step, 0, 0);
        return reader.read(0, param);
    }

    private static BufferedImage upright(BufferedImage read, Orientation orientation) {
        double scale = Math.min(1, (double) LONGEST / Math.max(read.getWidth(), read.getHeight()));
        int across = (int) Math.max(1, Math.round(read.getWidth() * scale));
        int down = (int) Math.max(1, Math.round(read.getHeight() * scale));
        boolean side = orientation.isOnItsSide();
        var upright = new BufferedImage(side ? down : across, side ? across : down, BufferedImage.TYPE_INT_RGB);
        var transform = orientation.upright(across, down);
        transform.concatenate(
                AffineTransform.getScaleInstance((double) across / read.getWidth(), (double) down / read.getHeight()));
        var graphics = upright.createGraphics();
        graphics.setColor(Color.WHITE); // what a clear ground lets through on every page
        graphics.fillRect(0, 0, upright.getWidth(), upright.getHeight());
        graphics.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BICUBIC);
        graphics.drawImage(read, transform, null);
        graphics.dispose();
        return upright;
    }

    private static PictureContent written(PictureFormat format, BufferedImage picture) {
        byte[] bytes = bytes(format, picture);
        boolean heavy = format == PictureFormat.PNG && bytes.length > HEAVY;
        var kept = heavy ? PictureFormat.JPEG : format;
        return new PictureContent(kept, picture.getWidth(), picture.getHeight(), heavy ? bytes(kept, picture) : bytes);
    }

    private static byte[] bytes(PictureFormat format, BufferedImage picture) {
        var bytes = new ByteArrayOutputStream();
        var writer = ImageIO.getImageWritersByFormatName(format.value()).next();
        var param = writer.getDefaultWriteParam();
        if (format == PictureFormat.JPEG) {
            param.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
            param.setCompressionQuality(QUALITY);
        }
        try (var out = new MemoryCacheImageOutputStream(bytes)) {
            writer.setOutput(out);
            writer.write(null, new IIOImage(picture, null, null), param);
        } catch (IOException e) {
            throw new UncheckedIOException("bytes in memory can be written", e);
        } finally {
            writer.dispose();
        }
        return bytes.toByteArray();
    }
}
