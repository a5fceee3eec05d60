package groundbass.audio;

import static groundbass.audio.AudioBytes.chunk;
import static groundbass.audio.AudioBytes.encodedMp3;
import static groundbass.audio.AudioBytes.fmt;
import static groundbass.audio.AudioBytes.id3;
import static groundbass.audio.AudioBytes.join;
import static groundbass.audio.AudioBytes.mp3;
import static groundbass.audio.AudioBytes.riff;
import static groundbass.audio.AudioBytes.wav;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Random;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AudioProbeTest {
    private static final int PCM = 1;
    private static final int FLOAT = 3;
    // MPEG-1 layer III, 128 kbit/s, 44.1 kHz, joint stereo, no padding: 417 bytes (ISO/IEC 11172-3)
    private static final int HEADER = Mp3FrameTest.header(3, 1, 9, 0, 0, 1, 0);
    private static final int LENGTH = 417;

    @TempDir
    private Path folder;

    @Test
    void aWavFileTellsItsRateChannelsAndDuration() throws IOException {
        assertThat(probe(wav(PCM, 2, 44_100, 16, 44_100 * 4)))
                .isEqualTo(audio(AudioFormat.WAV, 44_100, 2, 1_411_200, 1000));
        assertThat(probe(wav(PCM, 1, 8_000, 8, 4_000))).isEqualTo(audio(AudioFormat.WAV, 8_000, 1, 64_000, 500));
        assertThat(probe(wav(FLOAT, 2, 48_000, 32, 48_000 * 8)))
                .isEqualTo(audio(AudioFormat.WAV, 48_000, 2, 3_072_000, 1000));
    }

    @Test
    void otherChunksOfOddLengthMayStandBetween() throws IOException {
        byte[] file = riff(
                chunk("LIST", new byte[7]),
                fmt(PCM, 1, 44_100, 24),
                chunk("cue ", new byte[5]),
                chunk("data", new byte[44_100 * 3]),
                chunk("note", new byte[1]));
        assertThat(probe(file)).isEqualTo(audio(AudioFormat.WAV, 44_100, 1, 1_058_400, 1000));
    }

    @Test
    void theExtensibleFormNamesItsTagInTheSubFormat() throws IOException {
        // WAVEFORMATEXTENSIBLE of mmreg.h; KSDATAFORMAT_SUBTYPE_PCM {00000001-0000-0010-8000-00AA00389B71}
        byte[] pcm = HexFormat.of().parseHex("0100000000001000800000aa00389b71");
        assertThat(probe(extensible(pcm))).isEqualTo(audio(AudioFormat.WAV, 48_000, 2, 2_304_000, 10));
        assertThat(probe(extensible(new byte[16]))).isEqualTo(AudioFinding.refused("wav.format", 0xFFFE));
    }

    private static byte[] extensible(byte[] subFormat) {
        byte[] plain = fmt(0xFFFE, 2, 48_000, 24);
        byte[] body = join(
                Arrays.copyOfRange(plain, 8, 24), HexFormat.of().parseHex("1600" + "1800" + "03000000"), subFormat);
        return riff(chunk("fmt ", body), chunk("data", new byte[480 * 6]));
    }

    @Test
    void whatAnotherWriterMadeIsUnderstood() throws IOException {
        // javax.sound.sampled of the JDK writes RIFF/WAVE
        var format = new javax.sound.sampled.AudioFormat(22_050, 16, 2, true, false);
        var sound = new AudioInputStream(new ByteArrayInputStream(AudioBytes.sine(22_050, 2, 2)), format, 44_100);
        var out = new ByteArrayOutputStream();
        AudioSystem.write(sound, AudioFileFormat.Type.WAVE, out);
        assertThat(probe(out.toByteArray())).isEqualTo(audio(AudioFormat.WAV, 22_050, 2, 705_600, 2000));
    }

    @Test
    void aWavFileThatCannotBeIsRefusedWithTheReason() throws IOException {
        assertThat(reason(wav(2, 2, 44_100, 4, 400))).isEqualTo("wav.format"); // ADPCM
        assertThat(reason(wav(PCM, 0, 44_100, 16, 400))).isEqualTo("wav.channels");
        assertThat(reason(wav(PCM, 9, 44_100, 16, 400))).isEqualTo("wav.channels");
        assertThat(reason(wav(PCM, 2, 0, 16, 400))).isEqualTo("wav.rate");
        assertThat(reason(wav(PCM, 2, -1, 16, 400))).isEqualTo("wav.rate");
        assertThat(reason(wav(PCM, 2, 44_100, 12, 400))).isEqualTo("wav.bits");
        assertThat(reason(wav(FLOAT, 2, 44_100, 16, 400))).isEqualTo("wav.bits");
        assertThat(reason(wav(PCM, 2, 44_100, 16, 0))).isEqualTo("wav.no-data");
        assertThat(reason(riff(chunk("data", new byte[400])))).isEqualTo("wav.no-format");
        assertThat(reason(riff(chunk("data", new byte[400]), fmt(PCM, 2, 44_100, 16))))
                .isEqualTo("wav.no-data");
        assertThat(reason(riff(fmt(PCM, 2, 44_100, 16)))).isEqualTo("wav.no-data");
        assertThat(reason(riff(chunk("fmt ", new byte[14]), chunk("data", new byte[4]))))
                .isEqualTo("wav.format");
        assertThat(reason(riff())).isEqualTo("wav.no-format");
    }

    @Test
    void aWavFileThatWasCutOffTellsWhatIsMissing() throws IOException {
        byte[] whole = wav(PCM, 2, 44_100, 16, 400);
        assertThat(probe(Arrays.copyOf(whole, whole.length - 100))).isEqualTo(AudioFinding.refused("cut-off", 100L));
    }

    @Test
    void anMp3FileTellsItsRateAndDurationByItsFrames() throws IOException {
        // 1152 samples a frame (ISO/IEC 11172-3): 100 frames at 44.1 kHz last 2612.24 ms; 417 * 8 * 44100 / 1152 bit/s
        assertThat(probe(mp3(HEADER, LENGTH, 100))).isEqualTo(audio(AudioFormat.MP3, 44_100, 2, 127_706, 2612));
    }

    @Test
    void tagsBeforeAndBehindAreNotSound() throws IOException {
        var plain = probe(mp3(HEADER, LENGTH, 10));
        byte[] frames = mp3(HEADER, LENGTH, 10);
        byte[] id3v1 = Arrays.copyOf("TAG".getBytes(StandardCharsets.US_ASCII), 128);
        assertThat(probe(join(id3(300, 0), frames))).isEqualTo(plain);
        assertThat(probe(join(id3(200_000, 0), new byte[99], frames, id3v1))).isEqualTo(plain);
        assertThat(probe(join(id3(20, 0x10), new byte[10], frames)))
                .as("with a footer")
                .isEqualTo(plain);
        assertThat(probe(join(frames, Arrays.copyOf(frames, 200))))
                .as("cut last frame")
                .isEqualTo(plain);
    }

    @Test
    void whatAnotherEncoderMadeIsUnderstood() throws IOException {
        // jump3r, an encoder that is not ours; an encoder's delay and padding add at most 2 or 3 frames (from memory)
        for (int channels : List.of(1, 2)) {
            var facts = ((AudioFinding.Audio) probe(encodedMp3(44_100, channels, 128, 3))).facts();
            assertThat(facts.format()).isEqualTo(AudioFormat.MP3);
            assertThat(facts.sampleRate()).isEqualTo(44_100);
            assertThat(facts.channels()).isEqualTo(channels);
            assertThat(facts.bitRate()).isBetween(126_000, 130_000);
            assertThat(facts.duration()).isBetween(Duration.ofMillis(3000), Duration.ofMillis(3105));
        }
    }

    @Test
    void whatOnlyBeginsLikeAnMp3FileIsRefused() throws IOException {
        byte[] frames = mp3(HEADER, LENGTH, 10);
        assertThat(reason(mp3(HEADER, LENGTH, 3))).isEqualTo("mp3.no-frames");
        assertThat(reason(id3(50, 0))).isEqualTo("mp3.no-frames");
        assertThat(reason(Arrays.copyOf(id3(0x0FFFFFF, 0), 20))).isEqualTo("mp3.no-frames");
        assertThat(reason(join(id3(50, 0), "<html>".getBytes(StandardCharsets.US_ASCII))))
                .isEqualTo("mp3.no-frames");
        assertThat(probe(join(frames, "<script>".repeat(99).getBytes(StandardCharsets.US_ASCII))))
                .isEqualTo(AudioFinding.refused("mp3.broken", (long) frames.length));
        int slower = Mp3FrameTest.header(3, 1, 9, 1, 0, 1, 0); // 48 kHz: 384 bytes
        assertThat(reason(join(frames, mp3(slower, 384, 10)))).isEqualTo("mp3.broken");
    }

    @Test
    void whateverElseIsRefused() throws IOException {
        assertThat(reason(new byte[0])).isEqualTo("empty");
        for (String text : List.of("x", "RIFF", "RIFF....AVI ", "%PDF-1.7", "<html><body>", "MThd", "OggS", "fLa")) {
            assertThat(reason(text.getBytes(StandardCharsets.US_ASCII)))
                    .as(text)
                    .isEqualTo("unknown");
        }
        assertThat(reason(new byte[100_000])).isEqualTo("unknown");
    }

    @Test
    void hostileBytesGetAnAnswerAndNothingIsThrown() throws IOException {
        long seed = System.nanoTime();
        var random = new Random(seed);
        List<byte[]> whole = List.of(
                wav(PCM, 2, 44_100, 16, 2000), join(id3(40, 0), mp3(HEADER, LENGTH, 6)), extensible(new byte[16]));
        for (int i = 0; i < 3000; i++) {
            byte[] hostile = damaged(whole.get(random.nextInt(whole.size())), random);
            String as = "seed " + seed + ", number " + i;
            var finding = probe(hostile);
            assertThat(finding).as(as).isNotNull();
            if (finding instanceof AudioFinding.Audio audio) {
                assertThat(audio.facts().channels()).as(as).isBetween(1, 8);
                assertThat(audio.facts().duration()).as(as).isBetween(Duration.ZERO, Duration.ofSeconds(10));
            }
        }
    }

    /** Some bytes changed, most of them where headers are, and perhaps the end cut off. */
    private static byte[] damaged(byte[] whole, Random random) {
        byte[] hostile = Arrays.copyOf(whole, random.nextBoolean() ? whole.length : random.nextInt(whole.length) + 1);
        for (int n = random.nextInt(6); n >= 0; n--) {
            int at = random.nextInt(random.nextBoolean() ? Math.min(60, hostile.length) : hostile.length);
            hostile[at] = random.nextBoolean() ? (byte) random.nextInt(256) : (byte) 0xFF;
        }
        return hostile;
    }

    private AudioFinding probe(byte[] bytes) throws IOException {
        try (var channel = Files.newByteChannel(Files.write(folder.resolve("file.txt"), bytes))) {
            return AudioProbe.probe(channel);
        }
    }

    private String reason(byte[] bytes) throws IOException {
        return ((AudioFinding.Refused) probe(bytes)).key().replace("catalog.audio.", "");
    }

    private static AudioFinding audio(AudioFormat format, int rate, int channels, int bitRate, long milliseconds) {
        return new AudioFinding.Audio(new AudioFacts(format, rate, channels, bitRate, Duration.ofMillis(milliseconds)));
    }
}
