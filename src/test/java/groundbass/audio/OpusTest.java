package groundbass.audio;

import static groundbass.OutsideTools.said;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Base64;
import java.util.Random;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A decoder that is not ours (ffmpeg) gives each sample back at its place (rule: small-sound). */
class OpusTest {
    private static final long SEED = 20;
    private static final int LENGTH = 30_001;
    private static final int ONSET = 5_000;
    private static final double STROKE_PEAK = 20_000;
    private static final double STROKE_FADE = 20; // frames
    private static final int STROKE_KILOBITS = 72;

    /** Noise that sets in and dies away, as a struck drum does: alike to itself at no other lag. */
    private static MonoPcm struck() {
        var random = new Random(SEED);
        var samples = new short[LENGTH];
        double dull = 0; // of white noise no codec keeps the wave
        for (int i = ONSET; i < LENGTH; i++) {
            dull += 0.1 * (random.nextGaussian() - dull);
            samples[i] = (short) (16_000 * dull * Math.exp(-(i - ONSET) / 4_000.0));
        }
        return new MonoPcm(samples);
    }

    @Test
    void whatIsDecodedStandsWhereItStoodToTheSample(@TempDir Path folder) throws IOException, InterruptedException {
        var pcm = struck();
        byte[] stream = Opus.mono(pcm, 48);
        assertThat(Opus.mono(pcm, 48)).as("the same bytes each time").isEqualTo(stream);
        short[] decoded = decoded(stream, folder);
        assertThat(decoded.length).isGreaterThanOrEqualTo(Opus.SKIP + LENGTH);
        int best = IntStream.rangeClosed(-20, 20)
                .boxed()
                .max((one, other) -> Double.compare(alike(pcm, decoded, one), alike(pcm, decoded, other)))
                .orElseThrow();
        assertThat(best).isZero();
        assertThat(alike(pcm, decoded, 0)).isGreaterThan(0.8);
        var silence = Arrays.copyOfRange(decoded, 0, Opus.SKIP + ONSET - 480); // no sooner than an overlap of frames
        assertThat(IntStream.range(0, silence.length).map(i -> Math.abs(silence[i])))
                .allMatch(sample -> sample < 20);
    }

    /** RFC 3533 section 6 and RFC 7845 section 5.1; a stream of one sample is one as well. */
    @Test
    void theStreamIsWhatItsStandardsSay(@TempDir Path folder) throws IOException, InterruptedException {
        byte[] stream = Opus.mono(new MonoPcm(new short[] {1}), 48);
        var head = ByteBuffer.wrap(stream).order(ByteOrder.LITTLE_ENDIAN);
        assertThat(new String(stream, 0, 4, StandardCharsets.US_ASCII)).isEqualTo("OggS");
        assertThat(stream[5]).as("the stream begins").isEqualTo((byte) 2);
        assertThat(new String(stream, 28, 8, StandardCharsets.US_ASCII)).isEqualTo("OpusHead");
        assertThat(head.getShort(38)).as("pre-skip").isZero();
        assertThat(decoded(stream, folder)).hasSize(2 * 960);
    }

    /** A browser is tried with what a page plays: a stroke at frame 1,440, where its script looks for the loudest. */
    @Test
    void browsersAreTriedWithAStrokeThatIsEncodedSo(@TempDir Path folder) throws IOException, InterruptedException {
        var samples = new short[960];
        for (int i = 480; i < samples.length; i++) {
            samples[i] = (short) Math.round(STROKE_PEAK * Math.exp((480 - i) / STROKE_FADE));
        }
        byte[] stroke = inTheScript();
        assertThat(stroke).isEqualTo(Opus.mono(new MonoPcm(samples), STROKE_KILOBITS));
        short[] decoded = decoded(stroke, folder);
        assertThat(decoded).hasSize(1_920);
        int loudest = IntStream.range(0, decoded.length)
                .boxed()
                .max((one, other) -> Integer.compare(Math.abs(decoded[one]), Math.abs(decoded[other])))
                .orElseThrow();
        assertThat(loudest).isBetween(1_440 - 8, 1_440 + 8);
    }

    private static byte[] inTheScript() throws IOException {
        String script = Files.readString(Path.of("src/main/browser/common/opus.js"));
        String base64 = Pattern.compile("\"([A-Za-z0-9+/=]{20,})\"")
                .matcher(script)
                .results()
                .map(part -> part.group(1))
                .collect(Collectors.joining());
        return Base64.getDecoder().decode(base64);
    }

    private static double alike(MonoPcm pcm, short[] decoded, int lag) {
        double both = 0;
        double one = 0;
        double other = 0;
        for (int i = ONSET; i < LENGTH - 100; i++) {
            double was = pcm.samples()[i];
            double is = decoded[Opus.SKIP + i + lag];
            both += was * is;
            one += was * was;
            other += is * is;
        }
        return both / Math.sqrt(one * other);
    }

    private static short[] decoded(byte[] stream, Path folder) throws IOException, InterruptedException {
        var file = folder.resolve("one.opus");
        var raw = folder.resolve("one.raw");
        Files.write(file, stream);
        said("ffmpeg", "-nostdin", "-v", "error", "-y", "-i", file.toString(), "-f", "s16le", raw.toString());
        var samples = ByteBuffer.wrap(Files.readAllBytes(raw))
                .order(ByteOrder.LITTLE_ENDIAN)
                .asShortBuffer();
        var all = new short[samples.remaining()];
        samples.get(all);
        return all;
    }
}
