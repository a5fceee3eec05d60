package groundbass.audio;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;

/**
 * The silent first frame of a layer III file, which tells players how long the file is and by how many samples encoder
 * and decoder make it longer, so that they start and end with the sound ("Info" behind the side information, and what
 * encoders of the LAME family write behind it; common practice, from memory). {@link Mp3Lead} reads it.
 */
final class Mp3Info {
    /** Samples that the encoder puts before the sound. */
    private static final int DELAY = 576;

    private static final int ALL_FIELDS = 0xF;
    private static final int ENTRIES = 100;
    private static final int QUALITY = 50;

    /** The encoder is a port of this one. */
    private static final String ENCODER = "LAME3.98r";

    private static final byte CONSTANT_RATE = 1;
    private static final int BEFORE_RATE = 1 + 4 + 2 + 2 + 1; // low-pass, peak, gains, flags: none is told
    private static final int AFTER_DELAY = 1 + 1 + 2;

    private Mp3Info() {}

    /**
     * @param empty the frame to be filled in
     * @param samples of each channel
     * @param bytes of all frames behind this one
     * @param checksum CRC-16 of them
     */
    static byte[] of(byte[] empty, Mp3Frame like, long samples, long bytes, int checksum) {
        long frames = Math.round(bytes * (double) like.sampleRate() / (like.samples() / 8.0 * like.bitRate()));
        int padding = (int) (frames * like.samples() - DELAY - samples);
        var frame = ByteBuffer.wrap(empty).position(Mp3Frame.HEADER + like.sideInformation());
        frame.put("Info".getBytes(StandardCharsets.US_ASCII)).putInt(ALL_FIELDS);
        frame.putInt((int) frames).putInt((int) (bytes + empty.length));
        for (int i = 0; i < ENTRIES; i++) {
            frame.put((byte) (256 * i / ENTRIES));
        }
        frame.putInt(QUALITY).put(ENCODER.getBytes(StandardCharsets.US_ASCII)).put(CONSTANT_RATE);
        frame.put(new byte[BEFORE_RATE]).put((byte) (like.bitRate() / 1_000));
        frame.put((byte) (DELAY >> 4)).put((byte) (DELAY << 4 | padding >> 8)).put((byte) padding);
        frame.put(new byte[AFTER_DELAY]).putInt((int) (bytes + empty.length)).putShort((short) checksum);
        int own = 0;
        for (int i = 0; i < frame.position(); i++) {
            own = Mp3Body.checksum(own, empty[i]);
        }
        frame.putShort((short) own);
        return empty;
    }
}
