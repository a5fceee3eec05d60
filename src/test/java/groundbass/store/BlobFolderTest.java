package groundbass.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import groundbass.identity.Sha256;
import groundbass.store.fault.DamagedFileException;
import groundbass.store.fault.FilesAway;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
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
    private static final Swept IDLE = new Swept(0, 0, 0);

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

    /** The machine lost its power while the name was written. */
    @Test
    void anEmptyIdentityIsNone() throws IOException {
        blobs.identify("site2345");
        assertThat(blobs.identity()).contains("site2345");
        Files.writeString(folder.resolve("database.id"), "");
        assertThat(blobs.identity()).isEmpty();
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
    void whatIsNotKeptCannotBeOpened() throws IOException {
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
    void anUnnamedFileStaysForADayAndIsThenSetAside() throws IOException {
        blobs.put(ABC);
        clock.advance(DAY);
        assertThat(blobs.sweep(sha256 -> false)).isEqualTo(IDLE);
        clock.advance(Duration.ofSeconds(1));
        assertThat(blobs.sweep(sha256 -> false)).isEqualTo(new Swept(1, 0, 0));
        assertThat(files()).containsExactly(folder.resolve("unnamed").resolve(ABC_SHA256.hex()));
    }

    @Test
    void whatWasSetAsideComesBackWhenItIsAskedFor() throws IOException {
        setAside();
        clock.advance(DAY.multipliedBy(30));
        assertThat(blobs.sweep(sha256 -> false)).isEqualTo(IDLE);
        assertThat(Files.readAllBytes(blobs.path(ABC_SHA256))).isEqualTo(ABC);
        assertThat(blobs.sweep(sha256 -> false)).as("its day begins anew").isEqualTo(IDLE);
    }

    @Test
    void whatWasSetAsideIsDeletedAfterThirtyDays() throws IOException {
        setAside();
        clock.advance(DAY.multipliedBy(30).plusSeconds(1));
        assertThat(blobs.sweep(sha256 -> false)).isEqualTo(new Swept(0, 1, 0));
        assertThat(files()).isEmpty();
    }

    private void setAside() throws IOException {
        blobs.put(ABC);
        clock.advance(DAY.plusSeconds(1));
        assertThat(blobs.sweep(sha256 -> false).setAside()).isEqualTo(1);
    }

    @Test
    void moreThanHalfIsTooManyToBeRight() throws IOException {
        var all = new ArrayList<Sha256>();
        for (int i = 0; i < 60; i++) {
            all.add(blobs.put(new byte[i]).sha256());
        }
        clock.advance(DAY.multipliedBy(3));
        assertThat(blobs.sweep(sha256 -> false)).isEqualTo(new Swept(0, 0, 60));
        assertThat(blobs.sweep(all.subList(31, 60)::contains)).isEqualTo(new Swept(0, 0, 31));
        assertThat(files()).hasSize(60);
        assertThat(blobs.sweep(all.subList(30, 60)::contains)).isEqualTo(new Swept(30, 0, 0));
    }

    @Test
    void aNamedFileStaysHoweverOld() throws IOException {
        blobs.put(ABC);
        clock.advance(DAY.multipliedBy(400));
        assertThat(blobs.sweep(ABC_SHA256::equals)).isEqualTo(IDLE);
        assertThat(blobs.exists(ABC_SHA256)).isTrue();
    }

    @Test
    void theDayBeginsWhenTheLastRowWentNotWhenTheFileCame() throws IOException {
        blobs.put(ABC);
        clock.advance(DAY.multipliedBy(400));
        blobs.sweep(ABC_SHA256::equals);
        clock.advance(Duration.ofHours(23));
        assertThat(blobs.sweep(sha256 -> false)).isEqualTo(IDLE);
        clock.advance(Duration.ofHours(2));
        assertThat(blobs.sweep(sha256 -> false).setAside()).isEqualTo(1);
    }

    /** A look through many files takes a while: what was named and put meanwhile is not old any more. */
    @Test
    void whatIsPutAgainOrNamedWhileASweepLooksThroughStays() throws IOException {
        for (boolean isNamed : List.of(true, false)) {
            blobs.put(ABC);
            clock.advance(DAY.multipliedBy(2));
            var asked = new int[1];
            var swept = blobs.sweep(sha256 -> {
                if (asked[0]++ == 0) {
                    putAgainUnless(isNamed);
                    return false;
                }
                return isNamed;
            });
            assertThat(swept).isEqualTo(IDLE);
            assertThat(folder.resolve("unnamed")).isEmptyDirectory();
        }
    }

    private void putAgainUnless(boolean isNamed) {
        try {
            if (!isNamed) {
                blobs.put(ABC);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A row that came to name it by what another row knew of it, without putting it again. */
    @Test
    void whatARowNamesAgainIsGivenBackInsteadOfDeleted() throws IOException {
        setAside();
        clock.advance(DAY.multipliedBy(31));
        assertThat(blobs.sweep(ABC_SHA256::equals)).isEqualTo(IDLE);
        assertThat(folder.resolve("ba").resolve(ABC_SHA256.hex())).hasBinaryContent(ABC);
    }

    @Test
    void withoutTheRightToTheFolderNothingIsKeptOrTakenAway() throws IOException {
        blobs.put(ABC);
        blobs.guardedBy(() -> false);
        assertThatThrownBy(() -> blobs.put(new byte[1])).isInstanceOf(FilesAway.class);
        assertThatThrownBy(() -> blobs.sweep(sha256 -> false)).isInstanceOf(FilesAway.class);
        assertThatThrownBy(blobs::tryWriting).isInstanceOf(FilesAway.class);
        assertThat(blobs.open(ABC_SHA256)).as("readers go on").hasBinaryContent(ABC);
        assertThat(files()).as("and nothing is left lying about").hasSize(1);
    }

    @Test
    void whoeverOnlyReadsMovesNothing() throws IOException {
        Path damaged = blobs.path(blobs.put(ABC).sha256());
        Files.write(damaged, new byte[3]);
        var reader = new BlobFolder(folder, clock);
        reader.onlyRead();
        assertThat(reader.verify(ABC_SHA256)).isEmpty();
        assertThat(damaged).exists();
    }

    /** A row names it again and no sweep has come by since: a backup beside the server has it all the same. */
    @Test
    void whoeverMayMoveNothingReadsWhatWasSetAsideWhereItWaits() throws IOException {
        setAside();
        Path waits = folder.resolve("unnamed").resolve(ABC_SHA256.hex());
        var reader = BlobFolder.toRead(folder, clock);
        assertThat(reader.open(ABC_SHA256)).hasBinaryContent(ABC);
        assertThat(reader.verify(ABC_SHA256)).hasValue(3);
        blobs.guardedBy(() -> false);
        assertThat(blobs.open(ABC_SHA256)).hasBinaryContent(ABC);
        assertThat(files()).containsExactly(waits);
        Files.write(waits, new byte[3]);
        assertThatThrownBy(() -> reader.open(ABC_SHA256)).isInstanceOf(DamagedFileException.class);
        assertThat(files()).containsExactly(waits);
    }

    @Test
    void whoeverOnlyReadsMakesNothing() throws IOException {
        Path mistyped = folder.resolve("mistyped");
        var reader = BlobFolder.toRead(mistyped, clock);
        assertThat(reader.isEmpty()).isTrue();
        assertThat(reader.exists(ABC_SHA256)).isFalse();
        assertThat(mistyped).doesNotExist();
    }

    @Test
    void puttingAFileAgainBeginsItsDayAnew() throws IOException {
        blobs.put(ABC);
        clock.advance(DAY.multipliedBy(2));
        blobs.put(ABC);
        assertThat(blobs.sweep(sha256 -> false)).isEqualTo(IDLE);
    }

    @Test
    void aSweepClearsWhatACrashLeftAndNothingForeign() throws IOException {
        Path left = Files.write(folder.resolve("incoming").resolve(RandomId.next()), ABC);
        Path foreign = Files.write(folder.resolve("notes.txt"), ABC);
        clock.set("2200-01-01T00:00:00Z");
        assertThat(blobs.sweep(sha256 -> true)).isEqualTo(new Swept(0, 1, 0));
        assertThat(left).doesNotExist();
        assertThat(foreign).exists();
    }

    /** A reader has found it damaged, which takes as long as the file is long, and comes to move it. */
    @Test
    void whatWasPutAgainWhileItWasFoundDamagedStays() throws IOException {
        Path file = blobs.path(blobs.put(ABC).sha256());
        Files.write(file, new byte[3]);
        blobs.put(ABC);
        assertThat(blobs.putAside(file, ABC_SHA256)).isFalse();
        assertThat(blobs.open(ABC_SHA256)).hasBinaryContent(ABC);
        assertThat(blobs.missed()).isEmpty();
    }

    @Test
    void aDamagedFileIsNeverOpenedAsGood() throws IOException {
        byte[] other = "abd".getBytes(StandardCharsets.US_ASCII);
        Files.write(folder.resolve("ba").resolve(blobs.put(ABC).sha256().hex()), other);
        var afterRestart = new BlobFolder(folder, clock);
        assertThatThrownBy(() -> afterRestart.path(ABC_SHA256)).isInstanceOf(DamagedFileException.class);
        assertThat(afterRestart.exists(ABC_SHA256)).isFalse();
        assertThat(afterRestart.missed()).containsExactly(ABC_SHA256);
        assertThat(afterRestart.missed()).isEmpty();
        assertThat(Files.readAllBytes(folder.resolve("damaged").resolve(ABC_SHA256.hex())))
                .as("kept for a person to look at")
                .isEqualTo(other);
        afterRestart.put(ABC);
        assertThat(afterRestart.exists(ABC_SHA256)).as("put again").isTrue();
    }

    @Test
    void aFileThatIsCutShortWhileTheProgramRunsIsFoundByItsNextReader() throws IOException {
        Files.write(blobs.path(blobs.put(ABC).sha256()), new byte[] {'a'});
        assertThatThrownBy(() -> blobs.open(ABC_SHA256)).isInstanceOf(DamagedFileException.class);
    }

    @Test
    void aFileThatTurnsBadWhileTheProgramRunsIsFoundWhenItIsVerified() throws IOException {
        Path file = blobs.path(blobs.put(ABC).sha256());
        var changed = Files.getLastModifiedTime(file);
        Files.write(file, new byte[3]);
        Files.setLastModifiedTime(file, changed); // a disk that forgets changes no times
        assertThat(blobs.exists(ABC_SHA256)).as("nobody has read it again").isTrue();
        assertThat(blobs.verify(ABC_SHA256)).isEmpty();
        assertThat(blobs.exists(ABC_SHA256)).isFalse();
        blobs.put(ABC);
        assertThat(blobs.verify(ABC_SHA256)).hasValue(3);
    }

    @Test
    void aFileThatIsWrittenOverWhileTheProgramRunsIsFoundByItsNextReaderAlsoAfterASweep() throws IOException {
        Path file = blobs.path(blobs.put(ABC).sha256());
        Files.write(file, new byte[3]);
        blobs.sweep(sha256 -> true);
        assertThatThrownBy(() -> blobs.open(ABC_SHA256)).isInstanceOf(DamagedFileException.class);
    }

    @Test
    void aMissingFileThatWasAskedForIsRemembered() {
        assertThatThrownBy(() -> blobs.path(ABC_SHA256)).isInstanceOf(NoSuchFileException.class);
        assertThat(blobs.missed()).containsExactly(ABC_SHA256);
    }

    private List<Path> files() throws IOException {
        try (var all = Files.walk(folder)) {
            return all.filter(Files::isRegularFile).toList();
        }
    }
}
