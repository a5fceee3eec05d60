package groundbass.audience.download;

import static groundbass.audience.Audience.ANNA;
import static groundbass.audience.Audience.BERT;
import static groundbass.audience.Audience.FIRST;
import static groundbass.audience.Audience.ROBOT;
import static groundbass.audience.Audience.VISITOR;
import static groundbass.audience.Audience.file;
import static groundbass.audience.Audience.range;
import static groundbass.audience.Audience.whole;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.Audience;
import groundbass.audience.student.StudentId;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class DownloadsTest {
    private static final ReleasedFile SHEET = file(FIRST, "sheet.pdf", 1000);

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void isThereBeforeTheFirstByteAndCompleteAfterTheLast(Database database) {
        try (database) {
            var audience = new Audience(database);
            StudentId anna = audience.student(ANNA);
            DownloadId id = audience.downloads
                    .begin(whole(SHEET, new Requester.Known(anna)))
                    .id();
            Download begun = audience.download(id);
            assertThat(begun.state()).isEqualTo(DownloadState.STARTED);
            assertThat(begun.file()).isEqualTo(SHEET);
            assertThat(begun.student()).contains(anna);
            assertThat(begun.startedAt()).isEqualTo(audience.clock.instant());

            audience.downloads.sent(id, ByteSpan.of(0, 1000));
            assertThat(audience.download(id).state()).isEqualTo(DownloadState.COMPLETE);
            assertThat(audience.download(id).bytesSent()).isEqualTo(1000);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void rangesWithATokenAreOneDownload(Database database) {
        try (database) {
            var audience = new Audience(database);
            StartedDownload first = audience.downloads.begin(range(SHEET, VISITOR));
            audience.downloads.sent(first.id(), new ByteSpan(600, 1000));
            audience.clock.advance(Duration.ofHours(23));
            // from another place, so that only the token can join them
            var elsewhere = new Requester.Anonymous("198.51.100.4", "A player/3");
            var next = new FileRequest(SHEET, elsewhere, false, Optional.of(first.token()));
            assertThat(audience.downloads.begin(next).id()).isEqualTo(first.id());
            assertThat(audience.download(first.id()).state()).isEqualTo(DownloadState.STARTED);
            audience.downloads.sent(first.id(), new ByteSpan(0, 650));
            assertThat(audience.download(first.id()).state()).isEqualTo(DownloadState.COMPLETE);
            assertThat(audience.download(first.id()).bytesSent()).isEqualTo(1050);
            assertThat(audience.all()).hasSize(1);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aTokenJoinsNeitherAnotherFileNorAnotherReaderNorAnotherDay(Database database) {
        try (database) {
            var audience = new Audience(database);
            var anna = new Requester.Known(audience.student(ANNA));
            var bert = new Requester.Known(audience.student(BERT));
            Optional<String> token =
                    Optional.of(audience.downloads.begin(range(SHEET, anna)).token());
            audience.downloads.begin(new FileRequest(file(FIRST, "line.mid", 50), anna, false, token));
            audience.downloads.begin(new FileRequest(SHEET, bert, false, token));
            audience.clock.advance(Duration.ofHours(24));
            audience.downloads.begin(new FileRequest(SHEET, anna, false, token));
            audience.downloads.begin(new FileRequest(SHEET, VISITOR, false, Optional.of("forged.token")));
            assertThat(audience.all()).hasSize(5);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aReaderWithoutTokenIsJoinedForAnHour(Database database) {
        try (database) {
            var audience = new Audience(database);
            for (Requester requester : new Requester[] {VISITOR, new Requester.Known(audience.student(ANNA))}) {
                DownloadId first =
                        audience.downloads.begin(whole(SHEET, requester)).id();
                audience.downloads.brokenOff(first, new ByteSpan(0, 300));
                assertThat(audience.download(first).state()).isEqualTo(DownloadState.BROKEN_OFF);
                audience.clock.advance(Duration.ofMinutes(59));
                assertThat(audience.downloads.begin(range(SHEET, requester)).id())
                        .isEqualTo(first);
                assertThat(audience.download(first).state()).isEqualTo(DownloadState.STARTED);
                audience.downloads.sent(first, new ByteSpan(300, 1000));
                assertThat(audience.download(first).state()).isEqualTo(DownloadState.COMPLETE);
                audience.clock.advance(Duration.ofMinutes(1));
                assertThat(audience.downloads.begin(range(SHEET, requester)).id())
                        .isNotEqualTo(first);
            }
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void theWholeFileOnceMoreAfterTheEndIsAnotherDownload(Database database) {
        try (database) {
            var audience = new Audience(database);
            var anna = new Requester.Known(audience.student(ANNA));
            DownloadId first = audience.take(SHEET, anna);
            assertThat(audience.downloads.begin(range(SHEET, anna)).id()).isEqualTo(first);
            DownloadId second = audience.take(SHEET, anna);
            assertThat(second).isNotEqualTo(first);
            assertThat(audience.download(second).repeated()).isFalse();
            assertThat(audience.download(first).state()).isEqualTo(DownloadState.COMPLETE);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void theSecondRequestOfAVisitorWithinADayIsMarked(Database database) {
        try (database) {
            var audience = new Audience(database);
            audience.take(SHEET, VISITOR);
            audience.clock.advance(Duration.ofHours(23));
            assertThat(audience.download(audience.take(SHEET, VISITOR)).repeated())
                    .isTrue();
            var other = audience.take(file(FIRST, "line.mid", 50), VISITOR);
            assertThat(audience.download(other).repeated()).isFalse();
            audience.clock.advance(Duration.ofHours(1));
            assertThat(audience.download(audience.take(SHEET, VISITOR)).repeated())
                    .isFalse();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void robotsAreKeptApartAndStudentsAreNone(Database database) {
        try (database) {
            var audience = new Audience(database);
            var robot = audience.take(SHEET, ROBOT);
            var anna = audience.take(SHEET, new Requester.Known(audience.student(ANNA)));
            assertThat(audience.download(robot).robot()).isTrue();
            assertThat(audience.download(anna).robot()).isFalse();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aFrontServerLeavesTheEndUnknown(Database database) {
        try (database) {
            var audience = new Audience(database);
            DownloadId id = audience.downloads.begin(whole(SHEET, VISITOR)).id();
            audience.downloads.handedOver(id);
            audience.clock.advance(Duration.ofDays(1));
            audience.downloads.sweep();
            assertThat(audience.download(id).state()).isEqualTo(DownloadState.HANDED_OVER);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void anHourOfSilenceIsBrokenOffUntilTheRestComes(Database database) {
        try (database) {
            var audience = new Audience(database);
            DownloadId id = audience.downloads.begin(whole(SHEET, VISITOR)).id();
            audience.clock.advance(Duration.ofHours(1).minusMillis(1));
            assertThat(audience.downloads.sweep()).isZero();
            audience.clock.advance(Duration.ofMillis(1));
            assertThat(audience.downloads.sweep()).isEqualTo(1);
            assertThat(audience.downloads.sweep()).isZero();
            assertThat(audience.download(id).state()).isEqualTo(DownloadState.BROKEN_OFF);
            audience.downloads.sent(id, ByteSpan.of(0, 1000));
            assertThat(audience.download(id).state()).isEqualTo(DownloadState.COMPLETE);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void nothingOfAVisitorIsStored(Database database) {
        try (database) {
            var audience = new Audience(database);
            audience.take(SHEET, VISITOR);
            String digest = VISITOR.visitor(audience.visitors).orElseThrow();
            assertThat(audience.contents("download")).doesNotContain("192.0.2.7", "browser", digest);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void theEndOfADownloadIsWaitedForByNobodyAndSettledOnClose(Database database) {
        try (database) {
            var audience = new Audience(database);
            DownloadId id = audience.downloads.begin(whole(SHEET, VISITOR)).id();
            audience.downloads.sent(id, ByteSpan.of(0, 1000));
            audience.downloads.close();
            assertThat(audience.downloads.find(id).orElseThrow().state()).isEqualTo(DownloadState.COMPLETE);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void rangesThatEndAtOnceAreAllRemembered(Database database) {
        try (database) {
            var audience = new Audience(database);
            DownloadId id = audience.downloads.begin(range(SHEET, VISITOR)).id();
            var ranges = IntStream.range(0, 20)
                    .mapToObj(i ->
                            CompletableFuture.runAsync(() -> audience.downloads.sent(id, ByteSpan.of(50L * i, 50))))
                    .toArray(CompletableFuture[]::new);
            CompletableFuture.allOf(ranges).join();
            assertThat(audience.download(id).state()).isEqualTo(DownloadState.COMPLETE);
            assertThat(audience.download(id).bytesSent()).isEqualTo(1000);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aDoubleClickIsOneDownload(Database database) {
        try (database) {
            var audience = new Audience(database);
            var clicks = IntStream.range(0, 8)
                    .mapToObj(i -> CompletableFuture.supplyAsync(() ->
                            audience.downloads.begin(whole(SHEET, VISITOR)).id()))
                    .toList();
            assertThat(clicks.stream().map(CompletableFuture::join).distinct()).hasSize(1);
            assertThat(audience.all()).hasSize(1);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void idsFollowTheClock(Database database) {
        try (database) {
            var audience = new Audience(database);
            DownloadId first = audience.downloads.begin(whole(SHEET, VISITOR)).id();
            audience.clock.advance(Duration.ofMillis(1));
            DownloadId second = audience.downloads
                    .begin(whole(file(FIRST, "line.mid", 5), VISITOR))
                    .id();
            assertThat(first.value()).isLessThan(second.value());
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aSweepAfterAMonthSwitchedOffCatchesUp(Database database) {
        try (database) {
            var before = new Audience(database);
            DownloadId id = before.downloads.begin(whole(SHEET, VISITOR)).id();
            var after = new Audience(database);
            after.clock.advance(Duration.ofDays(30));
            assertThat(after.downloads.sweep()).isEqualTo(1);
            assertThat(after.download(id).state()).isEqualTo(DownloadState.BROKEN_OFF);
        }
    }
}
