package groundbass.catalog.upload;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assumptions.assumeThat;

import groundbass.audio.AudioBytes;
import groundbass.audio.Flac;
import groundbass.audio.MonoPcm;
import groundbass.catalog.CatalogFixture;
import groundbass.identity.Sha256;
import groundbass.store.BlobFolder;
import groundbass.store.Blobs;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import groundbass.store.Pairing;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.lang.reflect.Proxy;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class RecordingsTest {
    private static final int RATE = 44_100;

    @TempDir
    private Path folder;

    /** A sine of 997 Hz at half scale for two seconds, after half a second of silence. */
    private static float[] sine() {
        var samples = new float[RATE * 5 / 2];
        for (int i = RATE / 2; i < samples.length; i++) {
            samples[i] = (float) (0.5 * Math.sin(2 * Math.PI * 997 * i / RATE));
        }
        return samples;
    }

    /** Written by the JDK, so that our own writer is not its own judge. */
    private static byte[] wav(int bits) throws IOException {
        float[] sine = sine();
        byte[] pcm = new byte[sine.length * bits / 8];
        for (int i = 0; i < sine.length; i++) {
            long value = Math.round(sine[i] * ((1L << bits - 1) - 1));
            for (int part = 0; part < bits / 8; part++) {
                pcm[i * bits / 8 + part] = (byte) (value >> 8 * part);
            }
        }
        var format = new AudioFormat(RATE, bits, 1, true, false);
        var out = new ByteArrayOutputStream();
        var stream = new AudioInputStream(new ByteArrayInputStream(pcm), format, sine.length);
        AudioSystem.write(stream, AudioFileFormat.Type.WAVE, out);
        return out.toByteArray();
    }

    /** ITU-R BS.1770-4: 997 Hz at full scale reads -3.01 LKFS, at half scale 6.02 dB less. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void everyKindOfRecordingIsHeard(Database database) throws IOException {
        try (database) {
            var fixture = new CatalogFixture(database);
            var blobs = new BlobFolder(folder, fixture.clock);
            var uploads = fixture.parts.uploads(blobs);
            var recordings = fixture.parts.recordings(blobs);
            var episode = fixture.episode("First").id();
            byte[] flac = Flac.mono(MonoPcm.of(sine(), 1));
            for (byte[] file : new byte[][] {wav(16), wav(24), flac}) {
                var upload = uploads.accept(fixture.owner, episode, "a", new ByteArrayInputStream(file))
                        .result()
                        .orElseThrow();
                assertThat(recordings.heard(upload.id())).isInstanceOf(Heard.Waiting.class);
                recordings.listen();
                var heard = (Heard.Ready) recordings.heard(upload.id());
                assertThat(heard.loudness().integrated()).isEqualTo(-9.03, within(0.5)); // the silence costs a little
                assertThat(heard.loudness().truePeak()).isEqualTo(-6.02, within(0.1));
                var hearing = recordings.hearing(upload.id()).orElseThrow();
                assertThat(hearing.peaks()).hasSize(250);
                assertThat(hearing.peaks().get(10)).isZero();
                assertThat(hearing.peaks().get(100)).isEqualTo(0.5f, within(0.002f));
                var onsets = hearing.onsets();
                assertThat(onsets.indexOf(onsets.stream().max(Float::compare).orElseThrow()))
                        .isBetween(48, 52);
                assertThat(uploads.names(heard.hearing())).isTrue();
            }
        }
    }

    /** RFC 9639, section 8.6: a comment block tells how many fields follow, in 32 bits, little-endian. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aTagThatLiesAboutItsLengthKeepsNobodyFromHearing(Database database) throws IOException {
        try (database) {
            var fixture = new CatalogFixture(database);
            var blobs = new BlobFolder(folder, fixture.clock);
            var uploads = fixture.parts.uploads(blobs);
            var recordings = fixture.parts.recordings(blobs);
            var episode = fixture.episode("First").id();
            byte[] poisoned = withComment(Flac.mono(MonoPcm.of(sine(), 1)), Integer.MAX_VALUE);
            var first = uploads.accept(fixture.owner, episode, "a.flac", new ByteArrayInputStream(poisoned))
                    .result()
                    .orElseThrow();
            var second = uploads.accept(fixture.owner, episode, "b.wav", new ByteArrayInputStream(wav(16)))
                    .result()
                    .orElseThrow();
            recordings.listen();
            assertThat(recordings.heard(first.id())).isInstanceOf(Heard.Ready.class);
            assertThat(recordings.heard(second.id())).isInstanceOf(Heard.Ready.class);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    @Timeout(60)
    void listeningToAFileThatBreaksOffComesToAnEnd(Database database) throws IOException {
        try (database) {
            var fixture = new CatalogFixture(database);
            var blobs = new BlobFolder(folder, fixture.clock);
            var uploads = fixture.parts.uploads(blobs);
            var recordings = fixture.parts.recordings(blobs);
            var episode = fixture.episode("First").id();
            byte[] whole = Flac.mono(MonoPcm.of(sine(), 1));
            for (int cut : new int[] {1, 100, whole.length / 3}) {
                byte[] part = Arrays.copyOf(whole, whole.length - cut);
                var upload = uploads.accept(fixture.owner, episode, "a.flac", new ByteArrayInputStream(part))
                        .result()
                        .orElseThrow();
                recordings.listen();
                assertThat(recordings.heard(upload.id())).as("%d less", cut).isNotInstanceOf(Heard.Waiting.class);
            }
        }
    }

    /** However long the disk is away: a recording is not broken for that, and is heard when it is there again. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aFolderThatIsAwayBreaksNoRecording(Database database) throws IOException {
        try (database) {
            var fixture = new CatalogFixture(database);
            var blobs = new BlobFolder(folder.resolve("files"), fixture.clock);
            new Pairing(database.jdbi(), blobs).check(List.of());
            var recordings = fixture.parts.recordings(blobs);
            var upload = fixture.parts
                    .uploads(blobs)
                    .accept(fixture.owner, fixture.episode("First").id(), "a", new ByteArrayInputStream(wav(16)))
                    .result()
                    .orElseThrow();
            Path away = Files.move(folder.resolve("files"), folder.resolve("away"));
            for (int pass = 0; pass < 5; pass++) {
                recordings.listen();
            }
            assertThat(recordings.heard(upload.id())).isInstanceOf(Heard.Waiting.class);
            Files.move(away, folder.resolve("files"));
            recordings.listen();
            assertThat(recordings.heard(upload.id())).isInstanceOf(Heard.Ready.class);
        }
    }

    /** A folder can be opened as a file and not be read, as a disk that was pulled out meanwhile. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aDiskThatFailsWhileItIsReadBreaksNoRecordingAndKeepsNoOtherWaiting(Database database) throws IOException {
        assumeThat(File.separatorChar).isEqualTo('/');
        try (database) {
            var fixture = new CatalogFixture(database);
            var whole = new BlobFolder(folder, fixture.clock);
            var uploads = fixture.parts.uploads(whole);
            var episode = fixture.episode("First").id();
            var first = uploads.accept(fixture.owner, episode, "a.wav", new ByteArrayInputStream(wav(16)))
                    .result()
                    .orElseThrow();
            fixture.clock.advance(Duration.ofSeconds(1));
            var second = uploads.accept(fixture.owner, episode, "b.wav", new ByteArrayInputStream(wav(24)))
                    .result()
                    .orElseThrow();
            var asked = new ArrayList<Sha256>();
            var failing = failing(whole, first.blob().sha256(), asked);
            var recordings = fixture.parts.recordings(failing);
            recordings.listen();
            assertThat(asked).as("the pass ends").containsExactly(first.blob().sha256());
            for (int pass = 0; pass < 5; pass++) {
                recordings.listen();
            }
            assertThat(recordings.heard(first.id())).isInstanceOf(Heard.Waiting.class);
            assertThat(recordings.heard(second.id())).isInstanceOf(Heard.Ready.class);
            fixture.parts.recordings(whole).listen();
            assertThat(recordings.heard(first.id())).isInstanceOf(Heard.Ready.class);
        }
    }

    /** Files of which one cannot be read; {@code asked} gets what is opened. */
    private Blobs failing(Blobs whole, Sha256 bad, List<Sha256> asked) {
        return (Blobs) Proxy.newProxyInstance(
                Blobs.class.getClassLoader(), new Class<?>[] {Blobs.class}, (proxy, method, arguments) -> {
                    if (method.getName().equals("local")) {
                        asked.add((Sha256) arguments[0]);
                    }
                    if (arguments != null && bad.equals(arguments[0])) {
                        if (method.getName().equals("local")) {
                            return unreadable();
                        }
                        throw new IOException("Input/output error");
                    }
                    return method.invoke(whole, arguments);
                });
    }

    /** A folder opens as a file does, and cannot be read. */
    private Blobs.Local unreadable() {
        return new Blobs.Local() {
            @Override
            public Path path() {
                return folder;
            }

            @Override
            public void close() {}
        };
    }

    private static byte[] withComment(byte[] flac, int fields) throws IOException {
        int streamInfo = 4 + 4 + 34; // marker, header, block: sections 6, 8.1, 8.2
        var out = new ByteArrayOutputStream();
        out.write(flac, 0, streamInfo);
        out.write(new byte[] {4, 0, 0, 8, 0, 0, 0, 0}); // type 4, eight bytes, an empty vendor
        for (int i = 0; i < 4; i++) {
            out.write(fields >> 8 * i);
        }
        int rest = streamInfo;
        if (flac[4] < 0) {
            out.write(new byte[] {(byte) 0x81, 0, 0, 0}); // STREAMINFO was the last block: now empty padding is
        }
        out.write(flac, rest, flac.length - rest);
        byte[] bytes = out.toByteArray();
        bytes[4] = 0;
        return bytes;
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatHasNeverBeenHeardToItsEndIsSetAside(Database database) throws IOException {
        try (database) {
            var fixture = new CatalogFixture(database);
            var blobs = new BlobFolder(folder, fixture.clock);
            var uploads = fixture.parts.uploads(blobs);
            var recordings = fixture.parts.recordings(blobs);
            var episode = fixture.episode("First").id();
            var upload = uploads.accept(fixture.owner, episode, "a.wav", new ByteArrayInputStream(wav(16)))
                    .result()
                    .orElseThrow();
            fixture.jdbi.useHandle(handle -> handle.execute("update upload set hearing_tries = 3"));
            recordings.listen();
            assertThat(recordings.heard(upload.id())).isInstanceOf(Heard.Broken.class);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void anEncodedRecordingIsHeardAndABrokenOneIsSaidToBe(Database database) throws IOException {
        try (database) {
            var fixture = new CatalogFixture(database);
            var blobs = new BlobFolder(folder, fixture.clock);
            var uploads = fixture.parts.uploads(blobs);
            var recordings = fixture.parts.recordings(blobs);
            var episode = fixture.episode("First").id();
            byte[] mp3 = AudioBytes.encodedMp3(RATE, 2, 128, 3);
            var good = uploads.accept(fixture.owner, episode, "a.mp3", new ByteArrayInputStream(mp3))
                    .result()
                    .orElseThrow();
            byte[] flac = Flac.mono(MonoPcm.of(sine(), 1));
            Arrays.fill(flac, 4_000, flac.length, (byte) 0x55);
            var broken = uploads.accept(fixture.owner, episode, "b.flac", new ByteArrayInputStream(flac))
                    .result()
                    .orElseThrow();
            recordings.listen();
            // an amplitude of 12000 in 32767 at 41.2 Hz
            var heard = (Heard.Ready) recordings.heard(good.id());
            assertThat(heard.loudness().truePeak()).isEqualTo(20 * Math.log10(12_000 / 32_767.0), within(0.5));
            assertThat(good.facts().duration()).isBetween(Duration.ofSeconds(3), Duration.ofMillis(3_200));
            assertThat(recordings.heard(broken.id())).isInstanceOf(Heard.Broken.class);
        }
    }
}
