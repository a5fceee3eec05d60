package groundbass.audio;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Headers built from the fields of ISO/IEC 11172-3 section 2.4.2.3 and 13818-3; lengths by section 2.4.3.1. */
class Mp3FrameTest {
    // version bits, bit rate index, sampling index, padding, mode -> version, bit/s, Hz, channels, bytes
    @ParameterizedTest
    @CsvSource({
        "3,  9, 0, 0, 1,    1, 128000, 44100, 2,  417", // 144 * 128000 / 44100 = 417.96
        "3,  9, 0, 1, 1,    1, 128000, 44100, 2,  418",
        "3, 14, 1, 0, 0,    1, 320000, 48000, 2,  960",
        "3, 11, 0, 0, 0,    1, 192000, 44100, 2,  626", // 626.94
        "3,  1, 2, 0, 3,    1,  32000, 32000, 1,  144",
        "2,  8, 1, 0, 3,    2,  64000, 24000, 1,  192", // 72 * 64000 / 24000
        "2, 14, 0, 0, 0,    2, 160000, 22050, 2,  522", // 522.45
        "2,  1, 2, 0, 0,    2,   8000, 16000, 2,   36",
        "0,  1, 2, 0, 3,   25,   8000,  8000, 1,   72",
        "0,  8, 0, 1, 0,   25,  64000, 11025, 2,  418" // 417.96 and a padding byte
    })
    void theFieldsAreThoseOfTheStandard(
            int versionBits,
            int bitRate,
            int sampling,
            int padding,
            int mode,
            int version,
            int bits,
            int hertz,
            int channels,
            int length) {
        int header = header(versionBits, 1, bitRate, sampling, padding, mode, 0);
        assertThat(Mp3Frame.read(header)).contains(new Mp3Frame(version, bits, hertz, channels, length));
    }

    @Test
    void reservedAndForbiddenFieldsAreNoHeader() {
        assertThat(Mp3Frame.read(header(1, 1, 9, 0, 0, 0, 0)))
                .as("reserved version")
                .isEmpty();
        assertThat(Mp3Frame.read(header(3, 0, 9, 0, 0, 0, 0)))
                .as("reserved layer")
                .isEmpty();
        assertThat(Mp3Frame.read(header(3, 2, 9, 0, 0, 0, 0))).as("layer II").isEmpty();
        assertThat(Mp3Frame.read(header(3, 3, 9, 0, 0, 0, 0))).as("layer I").isEmpty();
        assertThat(Mp3Frame.read(header(3, 1, 0, 0, 0, 0, 0))).as("free format").isEmpty();
        assertThat(Mp3Frame.read(header(3, 1, 15, 0, 0, 0, 0)))
                .as("forbidden bit rate")
                .isEmpty();
        assertThat(Mp3Frame.read(header(3, 1, 9, 3, 0, 0, 0)))
                .as("reserved rate")
                .isEmpty();
        assertThat(Mp3Frame.read(header(3, 1, 9, 0, 0, 0, 2)))
                .as("reserved emphasis")
                .isEmpty();
        assertThat(Mp3Frame.read(header(3, 1, 9, 0, 0, 0, 0) & 0x7FFFFFFF))
                .as("no sync word")
                .isEmpty();
    }

    /** The layer's bits: 01 is layer III; the protection bit is set (no checksum). */
    static int header(int version, int layer, int bitRate, int sampling, int padding, int mode, int emphasis) {
        return 0x7FF << 21
                | version << 19
                | layer << 17
                | 1 << 16
                | bitRate << 12
                | sampling << 10
                | padding << 9
                | mode << 6
                | emphasis;
    }
}
