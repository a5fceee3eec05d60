package groundbass.midi;

import static groundbass.performance.Lines.f;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.theory.Key;
import groundbass.theory.Letter;
import groundbass.theory.Mode;
import groundbass.theory.NoteName;
import java.io.ByteArrayOutputStream;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Bytes as the specification gives them: Standard MIDI Files 1.0 (RP-001), MIDI 1.0. */
class SmfBytesTest {
    private static final HexFormat HEX = HexFormat.ofDelimiter(" ").withUpperCase();

    /** The only event of a track at tick 0: between the chunk's header with the delta, and the end of track. */
    private static String event(Track track) {
        byte[] chunk = track.chunk(0, 0);
        return HEX.formatHex(chunk, 9, chunk.length - 4);
    }

    @ParameterizedTest
    @CsvSource({
        // the specification's own table
        "00000000, 00",
        "00000040, 40",
        "0000007F, 7F",
        "00000080, 81 00",
        "00002000, C0 00",
        "00003FFF, FF 7F",
        "00004000, 81 80 00",
        "00100000, C0 80 00",
        "001FFFFF, FF FF 7F",
        "00200000, 81 80 80 00",
        "08000000, C0 80 80 00",
        "0FFFFFFF, FF FF FF 7F",
        // calculated: 480, 1920, 1380
        "000001E0, 83 60",
        "00000780, 8F 00",
        "00000564, 8A 64"
    })
    void variableLengthQuantities(String value, String bytes) {
        var out = new ByteArrayOutputStream();
        VariableLength.write(out, Long.parseLong(value, 16));
        assertThat(HEX.formatHex(out.toByteArray())).isEqualTo(bytes);
    }

    @ParameterizedTest
    @CsvSource({
        // round(60 000 000 / tempo), calculated
        "120, 07 A1 20",
        "92, 09 F3 8E",
        "100, 09 27 C0",
        "140, 06 8A 1B",
        "69, 0D 44 BD",
        "66, 0D DF 23",
        "76, 0C 0B E2",
        "132, 06 EF 91",
        "168, 05 73 17",
        "240, 03 D0 90",
        "60, 0F 42 40"
    })
    void tempos(int perMinute, String micros) {
        assertThat(event(new Track().tempo(0, Fraction.of(perMinute)))).isEqualTo("FF 51 03 " + micros);
    }

    // three bytes of microseconds (RP-001) hold 16 777 215 of them; 2 quarters a minute would need 30 000 000
    @Test
    void aTempoThatThreeBytesCannotHoldIsTheSlowestThatTheyCan() {
        assertThat(event(new Track().tempo(0, Fraction.of(2)))).isEqualTo("FF 51 03 FF FF FF");
    }

    @Test
    void tempoOfAPracticeSpeedIsExact() {
        // 92 at 60 % is 55.2: 1086957 microseconds (calculated)
        assertThat(event(new Track().tempo(0, f(552, 10)))).isEqualTo("FF 51 03 10 95 ED");
    }

    @ParameterizedTest
    @CsvSource({
        "4, 4, 04 02 18 08",
        "3, 4, 03 02 18 08",
        "2, 4, 02 02 18 08",
        "2, 2, 02 01 30 08",
        "6, 8, 06 03 24 08",
        "9, 8, 09 03 24 08",
        "12, 8, 0C 03 24 08",
        "5, 4, 05 02 18 08",
        "7, 8, 07 03 0C 08"
    })
    void timeSignatures(int counts, int unit, String bytes) {
        assertThat(event(new Track().timeSignature(0, Meter.of(counts, unit)))).isEqualTo("FF 58 04 " + bytes);
    }

    @ParameterizedTest
    @CsvSource({
        "C, MAJOR, 00 00", "G, MAJOR, 01 00", "E, MINOR, 01 01", "E, MAJOR, 04 00", "F, MAJOR, FF 00",
        "D, MINOR, FF 01", "Bb, MAJOR, FE 00", "C, MINOR, FD 01", "F#, MAJOR, 06 00", "Gb, MAJOR, FA 00",
        "A, MINOR, 00 01"
    })
    void keys(String tonic, Mode mode, String bytes) {
        var key = new Key(NoteName.parse(tonic).orElseThrow(), mode);
        assertThat(event(new Track().key(0, key))).isEqualTo("FF 59 02 " + bytes);
    }

    @Test
    void modesGiveTheSignatureOfTheirParentMajorKey() {
        // E dorian: two sharps (rule: mode-signatures)
        assertThat(event(new Track().key(0, new Key(NoteName.of(Letter.E), Mode.DORIAN))))
                .isEqualTo("FF 59 02 02 00");
    }

    @Test
    void bends() {
        // one semitone and a quarter tone at range 2, and the clipped top
        assertThat(event(new Track().bend(0, 0, Track.bendOf(1, 2)))).isEqualTo("E0 00 60");
        assertThat(event(new Track().bend(0, 0, Track.bendOf(0.5, 2)))).isEqualTo("E0 00 50");
        assertThat(event(new Track().bend(0, 0, Track.bendOf(2, 2)))).isEqualTo("E0 7F 7F");
        assertThat(event(new Track().bend(0, 0, Track.bendOf(0, 2)))).isEqualTo("E0 00 40");
    }

    @Test
    void theBendRangeIsRegisteredParameterZero() {
        assertThat(event(new Track().bendRange(0, 2, 12)))
                .isEqualTo("B2 65 00 00 B2 64 00 00 B2 06 0C 00 B2 26 00 00 B2 65 7F 00 B2 64 7F");
    }

    @Test
    void eventsOfOneTickStandInTheirOrder() {
        // rule: event-order: meta, program and controllers, note-off, note-on
        var track = new Track()
                .note(0, 10, 0, 28, 96)
                .note(10, 20, 0, 28, 96)
                .program(10, 0, 36)
                .marker(10, "A");
        assertThat(HEX.formatHex(track.chunk(0, 20))).contains("0A FF 06 01 41 00 C0 24 00 80 1C 40 00 90 1C 60");
    }

    @Test
    void theHandBuiltFileComesOutByteForByte() throws Exception {
        // rule: hand-built-file
        var conductor = new Track()
                .name("Ep1")
                .timeSignature(0, Meter.COMMON)
                .key(0, new Key(NoteName.of(Letter.E), Mode.MINOR))
                .tempo(0, Fraction.of(120))
                .marker(1920, "Start");
        var bass = new Track()
                .name("Bass")
                .program(0, 0, GeneralMidi.SLAP_BASS)
                .note(1920, 1920 + 216, 0, 28, 112)
                .note(2160, 2160 + 216, 0, 40, 120)
                .note(2400, 2460, 0, 28, 30);
        byte[] file = FileChunk.file(List.of(conductor, bass), 0, 3840);
        assertThat(HEX.formatHex(Arrays.copyOf(file, 14))).isEqualTo("4D 54 68 64 00 00 00 06 00 01 00 02 01 E0");
        assertThat(file).hasSize(116);
        assertThat(HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(file)))
                .isEqualTo("6f8edc3ade4cb8e0fcf71c4a1f87dcd3a3a6ff4210dfbac6ebf5356a81644df9");
    }

    @Test
    void swingRatiosFallOnTheirTicks() {
        // rule: swing-offbeat, 480 ticks a quarter: straight 240, 3:2 288, 5:3 300, 2:1 320, 3:1 360
        assertThat(List.of(f(1, 2), f(3, 5), f(5, 8), f(2, 3), f(3, 4)))
                .extracting(share -> Ticks.of(share.times(f(1, 4))))
                .containsExactly(240L, 288L, 300L, 320L, 360L);
    }
}
