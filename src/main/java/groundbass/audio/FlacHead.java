package groundbass.audio;

import groundbass.signal.SampleRate;
import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;

/**
 * What stands before the frames of a FLAC file: marker, STREAMINFO (RFC 9639, section 8.2; frame sizes are left
 * unknown, as it allows), and where wanted a Vorbis comment (section 8.6) and a picture (section 8.8).
 */
final class FlacHead {
    private static final int STREAM_INFO = 0;
    private static final int VORBIS_COMMENT = 4;
    private static final int PICTURE = 6;
    private static final int LAST = 0x80;
    private static final int FRONT_COVER = 3;
    private static final int COLOUR_DEPTH = 24;

    private record Block(int type, byte[] content) {}

    private FlacHead() {}

    /** @param digest MD5 of the samples as 16 bits, little-endian, channels interleaved */
    static byte[] plain(int channels, long frames, int blockSize, byte[] digest) {
        return written(List.of(streamInfo(channels, frames, blockSize, digest)));
    }

    static byte[] tagged(int channels, long frames, int blockSize, byte[] digest, Tags tags) {
        var blocks = new ArrayList<Block>();
        blocks.add(streamInfo(channels, frames, blockSize, digest));
        blocks.add(comment(tags));
        if (tags.cover().length > 0) {
            blocks.add(picture(tags.cover()));
        }
        return written(blocks);
    }

    private static byte[] written(List<Block> blocks) {
        var out = new ByteArrayOutputStream();
        out.writeBytes("fLaC".getBytes(StandardCharsets.US_ASCII));
        for (int i = 0; i < blocks.size(); i++) {
            var block = blocks.get(i);
            int type = block.type() | (i + 1 == blocks.size() ? LAST : 0);
            out.writeBytes(ByteBuffer.allocate(4)
                    .putInt(type << 24 | block.content().length)
                    .array());
            out.writeBytes(block.content());
        }
        return out.toByteArray();
    }

    private static Block streamInfo(int channels, long frames, int blockSize, byte[] digest) {
        long rest = (long) SampleRate.CD.hertz() << 44
                | (long) (channels - 1) << 41
                | (8L * Pcm.BYTES_PER_SAMPLE - 1) << 36
                | frames;
        return new Block(
                STREAM_INFO,
                ByteBuffer.allocate(34)
                        .putShort((short) blockSize)
                        .putShort((short) blockSize)
                        .putInt(0)
                        .putShort((short) 0)
                        .putLong(rest)
                        .put(digest)
                        .array());
    }

    private static Block comment(Tags tags) {
        var fields = new ArrayList<String>();
        field(fields, "TITLE", tags.title());
        field(fields, "ALBUM", tags.series());
        if (tags.disc() > 0) {
            field(fields, "DISCNUMBER", Integer.toString(tags.disc()));
        }
        field(fields, "TRACKNUMBER", Integer.toString(tags.track()));
        field(fields, "ARTIST", tags.by());
        field(fields, "COPYRIGHT", tags.rights());
        field(fields, "BPM", Integer.toString(tags.beats()));
        field(fields, "GENRE", "Education");
        field(fields, Tags.SILENCE, tags.silenceText());
        var out = new ByteArrayOutputStream();
        text(out, "Groundbass");
        out.writeBytes(little(fields.size()));
        fields.forEach(field -> text(out, field));
        return new Block(VORBIS_COMMENT, out.toByteArray());
    }

    private static void field(List<String> fields, String name, String value) {
        if (!value.isEmpty()) {
            fields.add(name + "=" + value);
        }
    }

    private static void text(ByteArrayOutputStream out, String text) {
        byte[] utf8 = text.getBytes(StandardCharsets.UTF_8);
        out.writeBytes(little(utf8.length));
        out.writeBytes(utf8);
    }

    private static byte[] little(int number) {
        return ByteBuffer.allocate(4)
                .order(ByteOrder.LITTLE_ENDIAN)
                .putInt(number)
                .array();
    }

    /** The size of a PNG stands at byte 16 (ISO/IEC 15948, section 11.2.2). */
    private static Block picture(byte[] png) {
        byte[] type = Tags.PNG.getBytes(StandardCharsets.US_ASCII);
        var size = ByteBuffer.wrap(png, 16, 8);
        return new Block(
                PICTURE,
                ByteBuffer.allocate(32 + type.length + png.length)
                        .putInt(FRONT_COVER)
                        .putInt(type.length)
                        .put(type)
                        .putInt(0)
                        .putInt(size.getInt())
                        .putInt(size.getInt())
                        .putInt(COLOUR_DEPTH)
                        .putInt(0)
                        .putInt(png.length)
                        .put(png)
                        .array());
    }
}
