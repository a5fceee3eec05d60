package groundbass.audio;

import static groundbass.audio.AudioFinding.refused;

import java.io.IOException;
import java.util.HexFormat;
import java.util.Optional;
import java.util.Set;

/**
 * The {@code fmt } chunk of a WAVE file: tag, channels, samples a second, bytes a second, bytes of one sample of all
 * channels, bits of one sample; little-endian, 16 bytes at least (IBM and Microsoft 1991, chapter 3).
 */
record WavFormat(int tag, int channels, long sampleRate, int blockAlign, int bits) {
    private static final int SHORTEST = 16;
    private static final int PCM = 0x0001;
    private static final int FLOAT = 0x0003;
    // WAVEFORMATEXTENSIBLE (mmreg.h): 40 bytes, and the tag proper begins the sub-format's GUID at byte 24
    private static final int EXTENSIBLE = 0xFFFE;
    private static final int EXTENSIBLE_LENGTH = 40;
    private static final int SUB_FORMAT = 24;
    // {0000TAG0-0000-0010-8000-00AA00389B71}, behind the two bytes of the tag
    private static final byte[] REST_OF_GUID = HexFormat.of().parseHex("0000000010008000" + "00aa00389b71");

    private static final int MOST_CHANNELS = 8;
    private static final long LOWEST_RATE = 8_000;
    private static final long HIGHEST_RATE = 192_000;
    private static final Set<Integer> PCM_BITS = Set.of(8, 16, 24, 32);
    private static final Set<Integer> FLOAT_BITS = Set.of(32, 64);

    /** A chunk that is too short reads as tag 0, which is none. */
    static WavFormat read(ByteFile file, long at, long size) throws IOException {
        if (size < SHORTEST) {
            return new WavFormat(0, 0, 0, 0, 0);
        }
        return new WavFormat(
                tag(file, at, size),
                file.littleEndian16(at + 2),
                file.littleEndian32(at + 4),
                file.littleEndian16(at + 12),
                file.littleEndian16(at + 14));
    }

    private static int tag(ByteFile file, long at, long size) throws IOException {
        int tag = file.littleEndian16(at);
        boolean extended =
                tag == EXTENSIBLE && size >= EXTENSIBLE_LENGTH && file.holds(at + SUB_FORMAT + 2, REST_OF_GUID);
        return extended ? file.littleEndian16(at + SUB_FORMAT) : tag;
    }

    boolean isFloat() {
        return tag == FLOAT;
    }

    Optional<AudioFinding> problem() {
        if (tag != PCM && tag != FLOAT) {
            return Optional.of(refused("wav.format", tag));
        }
        if (channels < 1 || channels > MOST_CHANNELS) {
            return Optional.of(refused("wav.channels", channels, MOST_CHANNELS));
        }
        if (sampleRate < LOWEST_RATE || sampleRate > HIGHEST_RATE) {
            return Optional.of(refused("wav.rate", sampleRate, LOWEST_RATE, HIGHEST_RATE));
        }
        boolean known = (tag == PCM ? PCM_BITS : FLOAT_BITS).contains(bits);
        return known && blockAlign == channels * bits / 8 ? Optional.empty() : Optional.of(refused("wav.bits", bits));
    }

    AudioFacts facts(long samples) {
        int rate = (int) sampleRate;
        return new AudioFacts(
                AudioFormat.WAV, rate, channels, rate * blockAlign * 8, AudioFacts.duration(samples, rate));
    }
}
