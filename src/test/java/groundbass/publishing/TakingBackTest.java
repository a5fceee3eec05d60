package groundbass.publishing;

import static groundbass.publishing.Studio.done;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.news.Ask;
import groundbass.audience.news.AskedOn;
import groundbass.catalog.educator.AuditEntry;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.ThrownAway;
import groundbass.catalog.series.Deed;
import groundbass.document.BackingTrack;
import groundbass.document.UploadId;
import groundbass.identity.Sha256;
import groundbass.post.EmailAddress;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.time.Duration;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class TakingBackTest {
    /** What the page of drafts that were thrown away promises. */
    private static final Duration KEPT = Duration.ofDays(30);

    private static final Sha256 SHA256 = Sha256.of(new byte[] {1});
    private static final String FACTS =
            "{\"format\":\"WAV\",\"sampleRate\":44100,\"channels\":2,\"bitRate\":1411200,\"milliseconds\":1000}";

    private static EpisodeId out(Studio studio, String title) {
        var id = studio.episode(title);
        done(studio.bringOut(id));
        studio.buildAll();
        studio.publicationJob.pass();
        return id;
    }

    /** Another window put it back and took it back anew, for another reason. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void nothingIsDoneWithALessonThatStandsOtherwiseThanWasSeen(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = out(studio, "Rope and Pulley");
            var seenOut = studio.find(id);
            done(studio.takingBack.takeBack(studio.educator, seenOut, "The owner objects."));
            var seen = studio.find(id);
            done(studio.takingBack.putBack(studio.educator, seen));
            assertThat(studio.takingBack.putBack(studio.educator, seen).problems())
                    .isNotEmpty();
            studio.clock.advance(Duration.ofMinutes(1));
            done(studio.takingBack.takeBack(studio.educator, studio.find(id), "A wrong note."));
            assertThat(Seen.isOtherwise(
                            studio.takingBack.putBack(studio.educator, seen).problems()))
                    .isTrue();
            assertThat(Seen.isOtherwise(studio.takingBack
                            .takeBack(studio.educator, seenOut, "Again.")
                            .problems()))
                    .isTrue();
            assertThat(studio.find(id).withdrawal().orElseThrow().why()).isEqualTo("A wrong note.");
        }
    }

    private static List<String> audited(Studio studio) {
        return studio.audit.latest(100).stream()
                .map(AuditEntry::what)
                .filter(what -> what.startsWith("lesson.") || what.startsWith("draft."))
                .toList();
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatIsTakenBackIsNotOutUntilItIsPutBack(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = out(studio, "Rope and Pulley");
            var other = out(studio, "Slack Water");
            var series = studio.find(id).series();
            var release = studio.current(id);
            done(studio.takingBack.takeBack(studio.educator, studio.find(id), " The owner objects. "));

            var back = studio.find(id);
            assertThat(back.isOut()).isFalse();
            assertThat(back.isPublished()).as("its number and slug stay").isTrue();
            assertThat(back.withdrawal().orElseThrow().why()).isEqualTo("The owner objects.");
            assertThat(back.withdrawal().orElseThrow().at()).isEqualTo(studio.clock.instant());
            assertThat(studio.episodes.publishedIn(series))
                    .extracting(Episode::id)
                    .containsExactly(other);
            assertThat(studio.episodes.everPublishedIn(series)).hasSize(2);
            assertThat(studio.episodes.neighbours(studio.find(other)).earlier()).isEmpty();
            assertThat(studio.takingBack.takeBack(studio.educator, back, "").problems())
                    .isNotEmpty();

            done(studio.takingBack.putBack(studio.educator, back));
            assertThat(studio.find(id).isOut()).isTrue();
            assertThat(studio.find(id).publishedAt()).contains(Studio.NOW);
            assertThat(studio.current(id)).isEqualTo(release);
            assertThat(studio.takingBack
                            .putBack(studio.educator, studio.find(id))
                            .problems())
                    .isNotEmpty();
            assertThat(audited(studio)).containsExactly("lesson.restored", "lesson.withdrawn");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aSeriesOfWhichAllIsTakenBackIsNobodysToSee(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = out(studio, "Rope and Pulley");
            assertThat(studio.catalog.published()).hasSize(1);
            done(studio.takingBack.takeBack(studio.educator, studio.find(id), ""));
            assertThat(studio.catalog.published()).isEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void nobodyIsToldOfItWhileItIsTakenBackAndOnceAfterwards(Database database) {
        try (database) {
            var studio = new Studio(database);
            studio.episode("Begun");
            var series = studio.catalog.open(studio.educator, Deed.KEEP).get(0);
            studio.newsReaders.agree(
                    new Ask(series.id(), new EmailAddress("r@example.net"), Locale.ENGLISH, "Yes.", AskedOn.ACCOUNT));
            var id = out(studio, "Rope and Pulley");
            done(studio.takingBack.takeBack(studio.educator, studio.find(id), ""));
            assertThat(studio.newsRound.pass()).isZero();
            done(studio.takingBack.putBack(studio.educator, studio.find(id)));
            assertThat(studio.newsRound.pass()).isEqualTo(1);
            assertThat(studio.newsRound.pass()).isZero();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void howeverLongItWasTakenBackWhoWasNotToldOfItIsToldThen(Database database) {
        try (database) {
            var studio = new Studio(database);
            studio.episode("Begun");
            var series = studio.catalog.open(studio.educator, Deed.KEEP).get(0);
            studio.newsReaders.agree(
                    new Ask(series.id(), new EmailAddress("r@example.net"), Locale.ENGLISH, "Yes.", AskedOn.ACCOUNT));
            var id = out(studio, "Rope and Pulley");
            done(studio.takingBack.takeBack(studio.educator, studio.find(id), ""));
            studio.clock.advance(Duration.ofDays(31));
            studio.newsReaders.purge();
            done(studio.takingBack.putBack(studio.educator, studio.find(id)));
            studio.newsReaders.purge();
            assertThat(studio.newsRound.pass()).isEqualTo(1);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void onlyADraftThatNothingIsPromisedOfIsThrownAway(Database database) {
        try (database) {
            var studio = new Studio(database);
            var published = out(studio, "Out");
            var promised = studio.episode("Promised");
            done(studio.promise(promised, LocalDateTime.parse("2026-03-06T18:00")));
            assertThat(studio.bin
                            .throwAway(studio.educator, studio.find(published))
                            .problems())
                    .isNotEmpty();
            assertThat(studio.bin
                            .throwAway(studio.educator, studio.find(promised))
                            .problems())
                    .isNotEmpty();
            assertThat(studio.bin.of(studio.educator)).isEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aDraftCanBeFetchedBackForAMonthWithAllThatWasWritten(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = studio.episode("Mistake");
            var next = studio.episode("Kept");
            var draft = studio.desk.draft(studio.educator, id).orElseThrow();
            int number = studio.find(id).number();
            done(studio.bin.throwAway(studio.educator, studio.find(id)));
            assertThat(studio.episodes.find(id)).isEmpty();
            assertThat(studio.episodes.open(studio.educator, Deed.WRITE, id)).isEmpty();
            assertThat(studio.desk.draft(studio.educator, id)).isEmpty();
            assertThat(studio.episodes.countIn(studio.find(next).series())).isEqualTo(1);
            assertThat(studio.bin.of(studio.educator))
                    .extracting(ThrownAway::title)
                    .containsExactly("Mistake");
            // numbers of others may move; its own is taken meanwhile
            done(studio.desk.move(studio.educator, next, number));
            assertThat(studio.find(studio.episode("New")).number()).isEqualTo(3);

            studio.clock.advance(KEPT.minusSeconds(1));
            studio.bin.empty();
            done(studio.bin.fetchBack(studio.educator, id));
            assertThat(studio.desk.draft(studio.educator, id).orElseThrow().document())
                    .isEqualTo(draft.document());
            assertThat(studio.bin.fetchBack(studio.educator, id).problems()).isNotEmpty();
            assertThat(audited(studio)).containsExactly("draft.restored", "draft.deleted");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void afterAMonthNothingOfItIsLeft(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = studio.episode("Mistake");
            var kept = studio.episode("Kept");
            done(studio.publisher.trials().build(studio.educator, id));
            studio.buildAll();
            done(studio.desk.makeRevision(studio.educator, id, ""));
            done(studio.bin.throwAway(studio.educator, studio.find(id)));
            studio.clock.advance(KEPT.plus(Duration.ofSeconds(1)));
            studio.bin.empty();
            studio.bin.empty();
            for (String table : List.of("draft", "revision", "release", "upload")) {
                assertThat(rows(database, table + " where episode_id = '" + id + "'"))
                        .as(table)
                        .isZero();
            }
            assertThat(rows(database, "episode where id = '" + id + "'")).isZero();
            assertThat(studio.episodes.find(kept)).isPresent();
            assertThat(rows(database, "draft where episode_id = '" + kept + "'"))
                    .isEqualTo(1);
            assertThat(studio.bin.fetchBack(studio.educator, id).problems()).isNotEmpty();
            assertThat(audited(studio)).containsExactly("draft.purged", "draft.deleted");
        }
    }

    /** A duplicate plays what was sent for the first; that stays when the first is gone. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aRecordingThatAnotherLessonPlaysBecomesThatLessons(Database database) {
        try (database) {
            var studio = new Studio(database);
            var first = studio.episode("First");
            var duplicate = studio.episode("Duplicate");
            for (String id : List.of("played2345678923", "unplayed23456789")) {
                database.jdbi()
                        .useHandle(handle -> handle.execute(
                                "insert into upload (id, educator_id, episode_id, original_name, media_type, byte_count,"
                                        + " sha256, facts, created_at)"
                                        + " values (?, ?, ?, 'x.wav', 'audio/wav', 1, ?, ?, now())",
                                id,
                                studio.educator.value(),
                                first.value(),
                                SHA256.hex(),
                                FACTS));
            }
            var track =
                    new BackingTrack(new UploadId("played2345678923"), SHA256, "Band", BackingTrack.Kind.WITHOUT_BASS);
            studio.change(duplicate, edit -> edit.backingTracks(List.of(track)));
            done(studio.bin.throwAway(studio.educator, studio.find(first)));
            studio.clock.advance(KEPT.plus(Duration.ofSeconds(1)));
            studio.bin.empty();
            assertThat(rows(database, "upload")).isEqualTo(1);
            assertThat(rows(database, "upload where id = 'played2345678923' and episode_id = '" + duplicate + "'"))
                    .isEqualTo(1);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatIsFetchedBackInTimeIsNotDeletedAfterAll(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = studio.episode("Mistake");
            done(studio.bin.throwAway(studio.educator, studio.find(id)));
            studio.clock.advance(KEPT.plus(Duration.ofSeconds(1)));
            var before = studio.clock.instant().minus(KEPT);
            done(studio.bin.fetchBack(studio.educator, id));
            boolean still = database.jdbi().inTransaction(handle -> studio.episodes.lockThrownAway(handle, id, before));
            assertThat(still).isFalse();
            studio.bin.empty();
            assertThat(studio.desk.draft(studio.educator, id)).isPresent();
        }
    }

    private static long rows(Database database, String from) {
        return database.jdbi().withHandle(handle -> handle.createQuery("select count(*) from " + from)
                .mapTo(Long.class)
                .one());
    }
}
