package groundbass.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.security.MessageDigest;
import java.time.Duration;
import java.util.Arrays;
import org.jflac.FLACDecoder;
import org.jflac.PCMProcessor;
import org.jflac.metadata.StreamInfo;
import org.jflac.util.ByteData;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A stream is read back sample for sample by a decoder that is not ours (jflac), however short its last block is. */
class FlacTest {
    @ParameterizedTest
    @ValueSource(ints = {1, 3, 16, 31, 32, 33, 4_096, 4_097, 4_099, 4_100, 4_127, 4_128, 8_192, 8_195, 12_291, 40_963})
    void anyLengthIsReadBack(int frames) throws IOException {
        var samples = new short[frames];
        for (int i = 0; i < frames; i++) {
            samples[i] = (short) Math.round(9_000 * StrictMath.sin(i * 0.05) + 300 * StrictMath.sin(i * 2.1));
        }
        assertThat(decoded(Flac.mono(new MonoPcm(samples)), frames)).isEqualTo(samples);
    }

    /** RFC 9639, section 8.2: the last 16 bytes of STREAMINFO, which begins at byte 8, are the MD5 of the samples. */
    @Test
    void theHeadTellsTheDigestOfWhatIsReadBack() throws Exception {
        var samples = new short[10_000];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (short) (i * 7 % 5_000 - 2_500);
        }
        byte[] flac = Flac.mono(new MonoPcm(samples));
        var read = ByteBuffer.allocate(2 * samples.length).order(ByteOrder.LITTLE_ENDIAN);
        read.asShortBuffer().put(decoded(flac, samples.length));
        assertThat(Arrays.copyOfRange(flac, 26, 42))
                .isEqualTo(MessageDigest.getInstance("MD5").digest(read.array()));
    }

    /**
     * RFC 9639, section 8.2: STREAMINFO tells how many samples there are, in the 36 bits before its last 16 bytes. jFLAC
     * would look at what follows them for ever, without taking a byte, where that begins as a frame does.
     */
    @Test
    void whatFollowsTheLastSampleThatAFileTellsOfIsNotReadForEver() throws IOException {
        byte[] flac = Flac.mono(new MonoPcm(new short[10_000]));
        int block = 4_096;
        flac[21] &= (byte) 0xF0;
        ByteBuffer.wrap(flac, 22, 4).putInt(block);
        try (var decoder = new FlacDecoder(new ByteArrayInputStream(flac))) {
            var read = assertTimeoutPreemptively(Duration.ofSeconds(30), () -> {
                int frames = 0;
                for (var next = decoder.next(); next.length > 0; next = decoder.next()) {
                    frames += next[0].length;
                }
                return frames;
            });
            assertThat(read).isEqualTo(block);
        }
    }

    private static short[] decoded(byte[] flac, int frames) throws IOException {
        var read = new short[frames];
        var decoder = new FLACDecoder(new ByteArrayInputStream(flac));
        decoder.addPCMProcessor(new PCMProcessor() {
            private int done;

            @Override
            public void processStreamInfo(StreamInfo info) {}

            @Override
            public void processPCM(ByteData pcm) {
                for (int i = 0; i < pcm.getLen(); i += 2) {
                    read[done++] = (short) (pcm.getData(i) & 0xFF | pcm.getData(i + 1) << 8);
                }
            }
        });
        decoder.decode();
        return read;
    }
}
