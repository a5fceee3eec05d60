package groundbass.audio;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;

/**
 * The tag before the frames of an MP3 file: ID3 version 2.3.0, which the most players read. Text is UTF-16 with its mark
 * (section 3.3), sizes in the tag's head have seven bits a byte (section 3.1).
 */
public final class Id3 {
    private static final byte UTF_16 = 1;
    private static final byte LATIN_1 = 0;
    private static final byte FRONT_COVER = 3;

    private final ByteArrayOutputStream frames = new ByteArrayOutputStream();

    private Id3() {}

    public static byte[] of(Tags tags) {
        var tag = new Id3();
        tag.text("TIT2", tags.title());
        tag.text("TALB", tags.series());
        if (tags.disc() > 0) {
            tag.text("TPOS", Integer.toString(tags.disc())); // section 4.2.1: part of a set
        }
        tag.text("TRCK", Integer.toString(tags.track()));
        tag.text("TPE1", tags.by());
        tag.text("TCOP", tags.rights());
        tag.text("TBPM", Integer.toString(tags.beats()));
        tag.text("TCON", "Education");
        tag.ownText(Tags.SILENCE, tags.silenceText());
        tag.picture(tags.cover());
        return tag.whole();
    }

    private void text(String id, String text) {
        if (!text.isEmpty()) {
            byte[] utf16 = ("\uFEFF" + text).getBytes(StandardCharsets.UTF_16LE);
            frame(
                    id,
                    ByteBuffer.allocate(1 + utf16.length).put(UTF_16).put(utf16).array());
        }
    }

    /** Text that no frame of the standard is for, under a name of its own (section 4.2.2). */
    private void ownText(String name, String text) {
        text("TXXX", name + "\u0000\uFEFF" + text);
    }

    private void picture(byte[] png) {
        if (png.length > 0) {
            byte[] type = Tags.PNG.getBytes(StandardCharsets.ISO_8859_1);
            frame(
                    "APIC",
                    ByteBuffer.allocate(type.length + 4 + png.length)
                            .put(LATIN_1)
                            .put(type)
                            .put((byte) 0)
                            .put(FRONT_COVER)
                            .put((byte) 0)
                            .put(png)
                            .array());
        }
    }

    private void frame(String id, byte[] content) {
        frames.writeBytes(ByteBuffer.allocate(10)
                .put(id.getBytes(StandardCharsets.ISO_8859_1))
                .putInt(content.length)
                .putShort((short) 0)
                .array());
        frames.writeBytes(content);
    }

    private byte[] whole() {
        int size = frames.size();
        var whole = ByteBuffer.allocate(10 + size).put(new byte[] {'I', 'D', '3', 3, 0, 0});
        for (int shift = 21; shift >= 0; shift -= 7) {
            whole.put((byte) (size >> shift & 0x7F));
        }
        return whole.put(frames.toByteArray()).array();
    }
}
