package groundbass.store.bucket;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import groundbass.identity.Sha256;
import groundbass.store.Blob;
import groundbass.store.BlobStore;
import groundbass.store.BothDatabases;
import groundbass.store.CannotOpen;
import groundbass.store.Pairing;
import groundbass.store.Swept;
import groundbass.store.fault.FilesAway;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.atomic.AtomicBoolean;
import org.assertj.core.api.ThrowableAssert;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

/** What a folder and a bucket both promise, whoever reads or writes. */
class BlobStoreTest {
    private static final byte[] ABC = "abc".getBytes(StandardCharsets.US_ASCII);
    // SHA-256 of "abc": FIPS 180-2, appendix B.1
    private static final Sha256 ABC_SHA256 =
            new Sha256("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    private static final Duration DAY = Duration.ofDays(1);
    private static final Swept IDLE = new Swept(0, 0, 0);

    @ParameterizedTest
    @ArgumentsSource(BothStores.class)
    void whatIsPutIsFoundByEveryProcessUnderItsDigest(BothStores.Store store) throws IOException {
        assertThat(store.blobs().put(ABC)).isEqualTo(new Blob(ABC_SHA256, 3));
        assertThat(store.blobs().put(out -> out.write(ABC))).isEqualTo(new Blob(ABC_SHA256, 3));
        for (var blobs : List.of(store.blobs(), store.again())) {
            assertThat(blobs.exists(ABC_SHA256)).isTrue();
            assertThat(blobs.length(ABC_SHA256)).isEqualTo(3);
            assertThat(blobs.verify(ABC_SHA256)).hasValue(3);
            try (InputStream in = blobs.open(ABC_SHA256)) {
                assertThat(in.readAllBytes()).isEqualTo(ABC);
            }
            assertThat(names(blobs)).containsExactly(ABC_SHA256);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothStores.class)
    void aStreamAtTheLimitIsTakenAndOneByteMoreOrABrokenOneLeavesNothing(BothStores.Store store) throws IOException {
        assertThat(store.blobs().put(new ByteArrayInputStream(ABC), 3)).contains(new Blob(ABC_SHA256, 3));
        assertThat(store.blobs().put(new ByteArrayInputStream(new byte[4]), 3)).isEmpty();
        assertThatThrownBy(() -> store.blobs().put(out -> {
                    out.write(ABC);
                    throw new IOException("line dropped");
                }))
                .hasMessage("line dropped");
        assertThat(names(store.blobs())).containsExactly(ABC_SHA256);
    }

    @ParameterizedTest
    @ArgumentsSource(BothStores.class)
    void itIsReadAtAnyPlaceInAnyOrder(BothStores.Store store) throws IOException {
        byte[] content = new byte[300_000];
        new Random(1).nextBytes(content);
        var sha256 = store.blobs().put(content).sha256();
        try (var opened = store.blobs().openAnywhere(sha256)) {
            for (int position : new int[] {0, 65_536, 131_072, 299_999, 7, 200_000}) {
                var into = ByteBuffer.allocate(65_536);
                int read = opened.read(into, position);
                assertThat(read).as("at " + position).isEqualTo(Math.min(65_536, content.length - position));
                assertThat(into.array()).startsWith(Arrays.copyOfRange(content, position, position + read));
            }
            assertThat(opened.read(ByteBuffer.allocate(1), content.length)).isEqualTo(-1);
        }
        try (var in = store.blobs().open(sha256)) {
            assertThat(in.read()).isEqualTo(content[0] & 0xff); // and is left in the middle
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothStores.class)
    void whoWantsAFileOfThisMachineHasOne(BothStores.Store store) throws IOException {
        store.blobs().put(ABC);
        Path file;
        try (var local = store.blobs().local(ABC_SHA256)) {
            file = local.path();
            assertThat(file).hasBinaryContent(ABC);
        }
        boolean isCopy = store.blobs().placeInFolder(ABC_SHA256).isEmpty();
        assertThat(Files.exists(file)).as("a copy is gone again").isEqualTo(!isCopy);
    }

    @ParameterizedTest
    @ArgumentsSource(BothStores.class)
    void whatIsMissingIsToldAndRemembered(BothStores.Store store) throws IOException {
        assertThat(store.blobs().exists(ABC_SHA256)).isFalse();
        assertThat(store.blobs().verify(ABC_SHA256)).isEmpty();
        assertThatThrownBy(() -> store.blobs().open(ABC_SHA256)).isInstanceOf(NoSuchFileException.class);
        assertThatThrownBy(() -> store.blobs().length(ABC_SHA256)).isInstanceOf(NoSuchFileException.class);
        assertThatThrownBy(() -> store.blobs().openAnywhere(ABC_SHA256)).isInstanceOf(NoSuchFileException.class);
        assertThatThrownBy(() -> store.blobs().local(ABC_SHA256)).isInstanceOf(NoSuchFileException.class);
        assertThat(store.blobs().missed()).containsExactly(ABC_SHA256);
        assertThat(store.blobs().missed()).isEmpty();
    }

    /** Also where this process has just had it in its hands. */
    @ParameterizedTest
    @ArgumentsSource(BothStores.class)
    void whatSomebodyTookAwayIsMissedByItsNextReader(BothStores.Store store) throws IOException {
        store.blobs().put(ABC);
        store.remove(ABC_SHA256);
        assertThatThrownBy(() -> store.blobs().open(ABC_SHA256)).isInstanceOf(NoSuchFileException.class);
        assertThat(store.blobs().exists(ABC_SHA256)).isFalse();
        assertThat(store.blobs().missed()).containsExactly(ABC_SHA256);
    }

    @ParameterizedTest
    @ArgumentsSource(BothStores.class)
    void whatIsDamagedIsPutAsideWhenItIsVerifiedAndComesBackWhenItIsPutAgain(BothStores.Store store)
            throws IOException {
        store.blobs().put(ABC);
        store.spoil(ABC_SHA256, "abd".getBytes(StandardCharsets.US_ASCII));
        var reader = store.again();
        reader.onlyRead();
        assertThat(reader.verify(ABC_SHA256)).isEmpty();
        assertThat(names(reader)).as("who only reads moves nothing").hasSize(1);
        assertThat(store.blobs().verify(ABC_SHA256)).isEmpty();
        assertThat(names(store.blobs())).isEmpty();
        assertThat(store.blobs().exists(ABC_SHA256)).isFalse();
        store.blobs().put(ABC);
        assertThat(store.blobs().verify(ABC_SHA256)).hasValue(3);
    }

    /** A day without a name, then a month in which it can come back. */
    @ParameterizedTest
    @ArgumentsSource(BothStores.class)
    void whatNoRowNamesGoesAfterAMonthAndADay(BothStores.Store store) throws IOException {
        var blobs = store.blobs();
        blobs.put(ABC);
        store.clock().advance(DAY.minusMinutes(5));
        assertThat(blobs.sweep(sha256 -> false)).isEqualTo(IDLE);
        store.clock().advance(Duration.ofMinutes(10));
        assertThat(blobs.sweep(sha256 -> false)).isEqualTo(new Swept(1, 0, 0));
        assertThat(blobs.sweep(sha256 -> false)).as("once").isEqualTo(IDLE);
        assertThat(blobs.exists(ABC_SHA256))
                .as("it comes back when it is asked for")
                .isTrue();
        store.clock().advance(DAY.multipliedBy(32));
        blobs.sweep(sha256 -> false);
        store.clock().advance(DAY.multipliedBy(32));
        blobs.sweep(sha256 -> false);
        assertThat(blobs.exists(ABC_SHA256)).isFalse();
    }

    @ParameterizedTest
    @ArgumentsSource(BothStores.class)
    void whatIsNamedOrPutAgainStaysHoweverLongItWasWithoutAName(BothStores.Store store) throws IOException {
        var blobs = store.blobs();
        var put = blobs.put(new byte[1]).sha256();
        blobs.put(ABC);
        store.clock().advance(DAY.plusMinutes(5));
        assertThat(blobs.sweep(sha256 -> false)).isEqualTo(new Swept(2, 0, 0));
        store.clock().advance(DAY.multipliedBy(31));
        blobs.put(new byte[1]);
        blobs.sweep(ABC_SHA256::equals);
        assertThat(blobs.exists(ABC_SHA256)).isTrue();
        assertThat(blobs.exists(put)).isTrue();
    }

    @ParameterizedTest
    @ArgumentsSource(BothStores.class)
    void moreThanHalfWithoutANameIsTooManyToBeRight(BothStores.Store store) throws IOException {
        var all = new ArrayList<Sha256>();
        for (int i = 0; i < 20; i++) {
            all.add(store.blobs().put(new byte[i]).sha256());
        }
        store.clock().advance(DAY.multipliedBy(3));
        assertThat(store.blobs().sweep(all.subList(11, 20)::contains)).isEqualTo(new Swept(0, 0, 11));
    }

    /** A site with eight lessons out, whose teacher has looked at five states of the ninth. */
    @ParameterizedTest
    @ArgumentsSource(BothStores.class)
    void aThirdWithoutANameIsWhatPreviewsLeaveBehind(BothStores.Store store) throws IOException {
        var all = new ArrayList<Sha256>();
        for (int i = 0; i < 20; i++) {
            all.add(store.blobs().put(new byte[i]).sha256());
        }
        store.clock().advance(DAY.multipliedBy(3));
        assertThat(store.blobs().sweep(all.subList(7, 20)::contains)).isEqualTo(new Swept(7, 0, 0));
    }

    @ParameterizedTest
    @ArgumentsSource(BothStores.class)
    void withoutTheRightToThePlaceNothingIsWritten(BothStores.Store store) throws IOException {
        store.blobs().tryWriting();
        store.blobs().guardedBy(() -> false);
        assertThatThrownBy(() -> store.blobs().put(ABC)).isInstanceOf(FilesAway.class);
        assertThatThrownBy(() -> store.blobs().tryWriting()).isInstanceOf(FilesAway.class);
        assertThatThrownBy(() -> store.blobs().sweep(sha256 -> true)).isInstanceOf(FilesAway.class);
        assertThatThrownBy(() -> store.blobs().identify("site2345")).isInstanceOf(FilesAway.class);
        assertThat(store.blobs().isEmpty()).isTrue();
    }

    /** It is lost while a sweep is under way, or before somebody reads what is damaged. */
    @ParameterizedTest
    @ArgumentsSource(BothStores.class)
    void withoutTheRightToThePlaceNothingIsMovedEither(BothStores.Store store) throws IOException {
        var blobs = store.blobs();
        var other = blobs.put(new byte[1]).sha256();
        blobs.put(ABC);
        store.clock().advance(DAY.multipliedBy(2));
        var may = new AtomicBoolean(true);
        blobs.guardedBy(may::get);
        assertThatThrownBy(() -> blobs.sweep(sha256 -> {
                    may.set(false);
                    return false;
                }))
                .isInstanceOf(FilesAway.class);
        assertThat(names(blobs)).containsExactlyInAnyOrder(ABC_SHA256, other);
        store.spoil(ABC_SHA256, "abd".getBytes(StandardCharsets.US_ASCII));
        assertThat(blobs.verify(ABC_SHA256)).isEmpty();
        assertThat(names(blobs)).containsExactlyInAnyOrder(ABC_SHA256, other);
        may.set(true);
        assertThat(blobs.sweep(sha256 -> false)).isEqualTo(new Swept(2, 0, 0));
    }

    @ParameterizedTest
    @ArgumentsSource(BothStores.class)
    void aPlaceAndADatabaseThatAreStrangersAreNotOpenedTogether(BothStores.Store store) throws IOException {
        try (var mine = BothDatabases.freshH2();
                var other = BothDatabases.freshH2()) {
            new Pairing(mine.jdbi(), store.blobs()).check(Set.of());
            store.blobs().put(ABC);
            new Pairing(mine.jdbi(), store.again()).check(Set.of(ABC_SHA256));
            assertThatThrownBy(() -> new Pairing(other.jdbi(), store.again()).check(Set.of()))
                    .isInstanceOf(CannotOpen.class)
                    .hasMessageContainingAll(store.blobs().place(), "unknown to this database", "--files");
        }
    }

    /** The network is cut, say: that tells nothing of any file, and nothing is to be made again. */
    @Test
    void aStoreThatIsAwayIsToldFromAFileThatIsMissing() throws IOException {
        var name = ObjectServer.get().freshBucket();
        var blobs = BlobBucket.open(name, new FileTurns(null, false), Clock.systemUTC());
        blobs.put(ABC);
        var fresh = BlobBucket.open(name, new FileTurns(null, false), Clock.systemUTC());
        ObjectServer.get().relay().cut();
        try {
            assertAway(() -> fresh.open(ABC_SHA256));
            assertAway(() -> fresh.exists(ABC_SHA256));
            assertAway(() -> fresh.verify(ABC_SHA256));
            assertAway(() -> blobs.open(ABC_SHA256));
            assertAway(() -> blobs.put(new byte[1]));
            assertAway(() -> blobs.tryWriting());
            assertAway(() -> blobs.sweep(sha256 -> false));
            assertThat(fresh.missed()).isEmpty();
        } finally {
            ObjectServer.get().relay().mend();
        }
        assertThat(fresh.open(ABC_SHA256)).hasBinaryContent(ABC);
        blobs.put(new byte[1]);
        assertThat(names(blobs)).hasSize(2);
    }

    /** The connection ends in good order before all that was announced has come. */
    @Test
    void whatBreaksOffInTheMiddleIsNotTheFile() throws IOException {
        byte[] content = new byte[400_000];
        new Random(1).nextBytes(content);
        var name = ObjectServer.get().freshBucket();
        var blobs = BlobBucket.open(name, new FileTurns(null, false), Clock.systemUTC());
        var sha256 = blobs.put(content).sha256();
        try (var opened = blobs.openAnywhere(sha256)) {
            assertBrokenOff(() -> blobs.verify(sha256));
            assertBrokenOff(() -> blobs.open(sha256).readAllBytes());
            assertBrokenOff(() -> blobs.local(sha256));
            assertBrokenOff(() -> opened.read(ByteBuffer.allocate(300_000), 50_000));
        }
        assertThat(blobs.verify(sha256)).as("and it is where it was").hasValue(400_000);
        assertThat(blobs.open(sha256)).hasBinaryContent(content);
        assertThat(blobs.missed()).isEmpty();
    }

    private static void assertBrokenOff(ThrowableAssert.ThrowingCallable reading) {
        ObjectServer.get().relay().breakOffAfter(100_000);
        try {
            assertThatThrownBy(reading).isInstanceOf(FilesAway.class).hasMessageContaining("broke off");
        } finally {
            ObjectServer.get().relay().mend();
        }
    }

    /** Where a bucket keeps each object for a time, Amazon S3 takes none without (its user guide, "Object Lock"). */
    @Test
    void alsoWhatIsSmallComesWithAChecksum() throws IOException {
        var name = ObjectServer.get().freshBucket();
        var blobs = BlobBucket.open(name, new FileTurns(null, false), Clock.systemUTC());
        blobs.identify("abc");
        try (var bucket = Bucket.open(name)) {
            assertThat(bucket.head(BlobStore.IDENTITY).orElseThrow().checksumSHA256())
                    .isEqualTo(Bucket.checksum(Sha256.of("abc\n".getBytes(StandardCharsets.US_ASCII))));
        }
        assertThat(blobs.identity()).contains("abc");
    }

    /** Two servers read the same damaged bytes; the first puts the file again before the second moves them. */
    @Test
    void whatAnotherServerHasPutAgainMeanwhileIsNotMovedAway() throws IOException {
        var name = ObjectServer.get().freshBucket();
        try (var bucket = Bucket.open(name)) {
            String key = BlobBucket.key(ABC_SHA256);
            bucket.put(key, "abd".getBytes(StandardCharsets.US_ASCII));
            String damaged = bucket.head(key).orElseThrow().eTag();
            bucket.put(key, ABC);
            assertThat(bucket.move(key, damaged, "damaged/abc")).isFalse();
            assertThat(bucket.head("damaged/abc")).isEmpty();
            assertThat(bucket.get(key, 0)).hasBinaryContent(ABC);
            bucket.delete(key);
            assertThat(bucket.move(key, damaged, "damaged/abc"))
                    .as("or has moved itself")
                    .isFalse();
        }
    }

    /** A mean neighbour on the machine shall not read a recording on its way out. */
    @Test
    void aCopyIsItsUsersAlone() throws IOException {
        var blobs = BlobBucket.open(ObjectServer.get().freshBucket(), new FileTurns(null, false), Clock.systemUTC());
        blobs.put(ABC);
        try (var local = blobs.local(ABC_SHA256)) {
            assertThat(Files.getPosixFilePermissions(local.path()))
                    .isEqualTo(PosixFilePermissions.fromString("rw-------"));
            assertThat(Files.getPosixFilePermissions(local.path().getParent()))
                    .isEqualTo(PosixFilePermissions.fromString("rwx------"));
        }
    }

    private static void assertAway(ThrowableAssert.ThrowingCallable asking) {
        assertThatThrownBy(asking)
                .isInstanceOf(FilesAway.class)
                .hasMessageContaining("s3://bucket-")
                .hasMessageNotContaining("of no use elsewhere"); // the key that the client has
    }

    @Test
    void aBucketThatIsNotThereIsAwayToo() throws IOException {
        var nowhere = new BucketName("nobody-has-made-this", "");
        var blobs = BlobBucket.open(nowhere, new FileTurns(null, false), Clock.systemUTC());
        assertThatThrownBy(() -> blobs.put(ABC)).isInstanceOf(FilesAway.class);
        assertThatThrownBy(() -> blobs.identity()).isInstanceOf(FilesAway.class);
    }

    @Test
    void aBucketsAddressIsReadStrictly() {
        assertThat(BucketName.parse("s3://grooves")).contains(new BucketName("grooves", ""));
        assertThat(BucketName.parse("s3://grooves/low-tide/files/"))
                .contains(new BucketName("grooves", "low-tide/files/"));
        for (String text :
                List.of("", "grooves", "s3://", "s3://Grooves", "s3://g", "s3://grooves//x", "s3://grooves/ü")) {
            assertThat(BucketName.parse(text)).as(text).isEmpty();
        }
    }

    private static List<Sha256> names(BlobStore blobs) throws IOException {
        var names = new ArrayList<Sha256>();
        blobs.forEach(names::add);
        return names;
    }
}
