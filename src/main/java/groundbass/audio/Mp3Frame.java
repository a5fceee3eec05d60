package groundbass.audio;

import java.util.Optional;

/**
 * The header of one frame of MPEG audio, layer III: ISO/IEC 11172-3:1993 section 2.4.2.3 (32 bits, big-endian) and the
 * lower sampling frequencies of ISO/IEC 13818-3:1998 section 2.4.2.3; "MPEG 2.5" is the further halving in common use.
 *
 * @param version    1, 2, or 25 for 2.5
 * @param bitRate    bits a second
 * @param sampleRate samples a second
 * @param length     bytes of the whole frame
 */
record Mp3Frame(int version, int bitRate, int sampleRate, int channels, int length) {
    static final int HEADER = 4;

    private static final int LAYER_III = 0b01;
    private static final int RESERVED_VERSION = 0b01;
    private static final int RESERVED_RATE = 0b11;
    private static final int RESERVED_EMPHASIS = 0b10;
    private static final int FREE_FORMAT = 0;
    private static final int FORBIDDEN_BIT_RATE = 15;
    private static final int MONO = 0b11;

    // ISO/IEC 11172-3 table of bitrate_index, layer III, kbit/s; index 0 is free format
    private static final int[] KBITS_1 = {0, 32, 40, 48, 56, 64, 80, 96, 112, 128, 160, 192, 224, 256, 320};
    // ISO/IEC 13818-3, layers II and III at the lower sampling frequencies
    private static final int[] KBITS_2 = {0, 8, 16, 24, 32, 40, 48, 56, 64, 80, 96, 112, 128, 144, 160};
    // ISO/IEC 11172-3 table of sampling_frequency
    private static final int[] RATES_1 = {44_100, 48_000, 32_000};

    /** Reads a header; empty where these 32 bits are none, or of a frame without a stated length (free format). */
    static Optional<Mp3Frame> read(int header) {
        int version = bits(header, 19, 2);
        int bitRate = bits(header, 12, 4);
        int sampleRate = bits(header, 10, 2);
        boolean valid = bits(header, 21, 11) == 0x7FF
                && version != RESERVED_VERSION
                && bits(header, 17, 2) == LAYER_III
                && bitRate != FREE_FORMAT
                && bitRate != FORBIDDEN_BIT_RATE
                && sampleRate != RESERVED_RATE
                && bits(header, 0, 2) != RESERVED_EMPHASIS;
        return valid
                ? Optional.of(of(versionOf(version), bitRate, sampleRate, bits(header, 9, 1), bits(header, 6, 2)))
                : Optional.empty();
    }

    private static int versionOf(int bits) {
        return bits == 0b11 ? 1 : bits == 0b10 ? 2 : 25;
    }

    private static Mp3Frame of(int version, int bitRateIndex, int rateIndex, int padding, int mode) {
        int bitRate = 1000 * (version == 1 ? KBITS_1 : KBITS_2)[bitRateIndex];
        int sampleRate = RATES_1[rateIndex] / (version == 1 ? 1 : version == 2 ? 2 : 4);
        // a frame holds 1152 samples, 576 at the lower rates: 144 = 1152 / 8, 72 = 576 / 8 (section 2.4.3.1)
        int length = samples(version) / 8 * bitRate / sampleRate + padding;
        return new Mp3Frame(version, bitRate, sampleRate, mode == MONO ? 1 : 2, length);
    }

    private static int samples(int version) {
        return version == 1 ? 1152 : 576;
    }

    /** Samples of one channel. */
    int samples() {
        return samples(version);
    }

    /** Bytes between the header and the sound (ISO/IEC 11172-3 section 2.4.1.7, 13818-3 section 2.4.1.7). */
    int sideInformation() {
        return version == 1 ? (channels == 1 ? 17 : 32) : channels == 1 ? 9 : 17;
    }

    /** Whether two frames can belong to one recording: only the bit rate and the kind of stereo may change. */
    boolean goesWith(Mp3Frame that) {
        return version == that.version && sampleRate == that.sampleRate && channels == that.channels;
    }

    private static int bits(int header, int from, int count) {
        return header >>> from & (1 << count) - 1;
    }
}
