package groundbass.audio;

import java.io.IOException;

/**
 * What a layer III file holds before its recording begins: a first, silent frame that carries the encoder's tag ("Xing"
 * or "Info" behind the side information), and the samples by which encoder and decoder delay the sound, of which that
 * tag tells. Players leave both out, so the moments of a recording count from behind them (common practice, no source).
 */
final class Mp3Lead {
    /** A decoder's own delay: the hybrid filter bank's 528 samples and one (common practice, no source). */
    private static final int DECODER_DELAY = 529;

    private static final int TAG_HEAD = 8; // its name, and flags that say which of four fields follow
    private static final int[] FIELD_BYTES = {4, 4, 100, 4};
    private static final int BEFORE_DELAY = 21; // the encoder's name, its method and its gains

    private Mp3Lead() {}

    /** Samples of each channel; 0 where no tag tells. */
    static int samples(ByteFile file) throws IOException {
        long at = Mp3File.firstFrame(file);
        if (!file.has(at, Mp3Frame.HEADER)) {
            return 0;
        }
        var frame = Mp3Frame.read(file.bigEndian32(at));
        return frame.isPresent() ? samples(file, at, frame.get()) : 0;
    }

    private static int samples(ByteFile file, long at, Mp3Frame frame) throws IOException {
        long tag = at + Mp3Frame.HEADER + frame.sideInformation();
        boolean there = file.has(at, frame.length()) && (file.says(tag, "Xing") || file.says(tag, "Info"));
        if (!there) {
            return 0;
        }
        int delay = encoderDelay(file, tag);
        return frame.samples() + (delay > 0 ? delay + DECODER_DELAY : 0);
    }

    /** The upper twelve of 24 bits; 0 where the tag is too short to say. */
    private static int encoderDelay(ByteFile file, long tag) throws IOException {
        int flags = file.bigEndian32(tag + 4);
        long at = tag + TAG_HEAD;
        for (int i = 0; i < FIELD_BYTES.length; i++) {
            at += (flags >> i & 1) * FIELD_BYTES[i];
        }
        at += BEFORE_DELAY;
        return file.has(at, 2) ? file.u8(at) << 4 | file.u8(at + 1) >> 4 : 0;
    }
}
