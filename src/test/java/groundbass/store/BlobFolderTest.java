package groundbass.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import groundbass.identity.Sha256;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BlobFolderTest {
    private static final byte[] ABC = "abc".getBytes(StandardCharsets.US_ASCII);
    // SHA-256 of "abc": FIPS 180-2, appendix B.1
    private static final Sha256 ABC_SHA256 =
            new Sha256("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    private static final Duration DAY = Duration.ofDays(1);

    @TempDir
    private Path folder;

    private final SettableClock clock = SettableClock.at("2030-03-01T12:00:00Z");
    private BlobFolder blobs;

    @BeforeEach
    void open() throws IOException {
        blobs = new BlobFolder(folder, clock);
    }

    @Test
    void aFileIsKnownByTheDigestOfItsContent() throws IOException {
        assertThat(blobs.put(ABC)).isEqualTo(new Blob(ABC_SHA256, 3));
        assertThat(blobs.exists(ABC_SHA256)).isTrue();
        assertThat(Files.readAllBytes(blobs.path(ABC_SHA256))).isEqualTo(ABC);
        try (InputStream in = blobs.open(ABC_SHA256)) {
            assertThat(in.readAllBytes()).isEqualTo(ABC);
        }
    }

    @Test
    void equalFilesAreKeptOnce() throws IOException {
        blobs.put(ABC);
        blobs.put(out -> out.write(ABC));
        assertThat(files()).hasSize(1);
    }

    @Test
    void aStreamAtTheLimitIsTakenAndOneByteMoreLeavesNothing() throws IOException {
        assertThat(blobs.put(new ByteArrayInputStream(ABC), 3)).contains(new Blob(ABC_SHA256, 3));
        assertThat(blobs.put(new ByteArrayInputStream(new byte[4]), 3)).isEmpty();
        assertThat(files()).hasSize(1);
    }

    @Test
    void anEndlessStreamIsReadNoFurtherThanTheLimitAndABuffer() throws IOException {
        var read = new long[1];
        var endless = new InputStream() {
            @Override
            public int read() {
                read[0]++;
                return 7;
            }
        };
        assertThat(blobs.put(endless, 100_000)).isEmpty();
        assertThat(read[0]).isLessThanOrEqualTo(100_000 + (1 << 16));
    }

    @Test
    void aStreamThatBreaksOffLeavesNothing() throws IOException {
        assertThatThrownBy(() -> blobs.put(out -> {
                    out.write(ABC);
                    throw new IOException("line dropped");
                }))
                .hasMessage("line dropped");
        assertThat(files()).isEmpty();
    }

    @Test
    void whatIsNotKeptCannotBeOpened() {
        assertThat(blobs.exists(ABC_SHA256)).isFalse();
        assertThatThrownBy(() -> blobs.open(ABC_SHA256)).isInstanceOf(NoSuchFileException.class);
        assertThatThrownBy(() -> blobs.path(ABC_SHA256)).isInstanceOf(NoSuchFileException.class);
    }

    @Test
    void onlyADigestCanBecomeAPath() {
        for (String text : List.of("", "../../etc/passwd", ABC_SHA256.hex().toUpperCase(Locale.ROOT), "ba78")) {
            assertThat(Sha256.parse(text)).as(text).isEmpty();
            assertThatThrownBy(() -> new Sha256(text)).isInstanceOf(IllegalArgumentException.class);
        }
    }

    @Test
    void anUnnamedFileStaysForADayAndThenGoes() throws IOException {
        blobs.put(ABC);
        clock.advance(DAY);
        assertThat(blobs.sweep(sha256 -> false)).isZero();
        clock.advance(Duration.ofSeconds(1));
        assertThat(blobs.sweep(sha256 -> false)).isEqualTo(1);
        assertThat(blobs.exists(ABC_SHA256)).isFalse();
    }

    @Test
    void aNamedFileStaysHoweverOld() throws IOException {
        blobs.put(ABC);
        clock.advance(DAY.multipliedBy(400));
        assertThat(blobs.sweep(ABC_SHA256::equals)).isZero();
        assertThat(blobs.exists(ABC_SHA256)).isTrue();
    }

    @Test
    void theDayBeginsWhenTheLastRowWentNotWhenTheFileCame() throws IOException {
        blobs.put(ABC);
        clock.advance(DAY.multipliedBy(400));
        blobs.sweep(ABC_SHA256::equals);
        clock.advance(Duration.ofHours(23));
        assertThat(blobs.sweep(sha256 -> false)).isZero();
        clock.advance(Duration.ofHours(2));
        assertThat(blobs.sweep(sha256 -> false)).isEqualTo(1);
    }

    @Test
    void puttingAFileAgainBeginsItsDayAnew() throws IOException {
        blobs.put(ABC);
        clock.advance(DAY.multipliedBy(2));
        blobs.put(ABC);
        assertThat(blobs.sweep(sha256 -> false)).isZero();
    }

    @Test
    void aSweepClearsWhatACrashLeftAndNothingForeign() throws IOException {
        Path left = Files.write(folder.resolve("incoming").resolve(RandomId.next()), ABC);
        Path foreign = Files.write(folder.resolve("notes.txt"), ABC);
        clock.set("2200-01-01T00:00:00Z");
        assertThat(blobs.sweep(sha256 -> true)).isEqualTo(1);
        assertThat(left).doesNotExist();
        assertThat(foreign).exists();
    }

    private List<Path> files() throws IOException {
        try (var all = Files.walk(folder)) {
            return all.filter(Files::isRegularFile).toList();
        }
    }
}
