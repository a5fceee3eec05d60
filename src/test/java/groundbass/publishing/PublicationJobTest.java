package groundbass.publishing;

import static groundbass.publishing.Studio.done;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.EpisodeState;
import groundbass.release.Built;
import groundbass.release.Release;
import groundbass.release.ReleaseId;
import groundbass.release.ReleaseNote;
import groundbass.release.SeriesReleases;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class PublicationJobTest {
    private static final Instant NOW = Studio.NOW;

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void publishesAsSoonAsTheFilesAreBuilt(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = studio.episode("Rope and Pulley");
            var release = done(studio.bringOut(id));
            assertThat(studio.queue).containsExactly(release);

            studio.publicationJob.pass();
            assertThat(studio.find(id).isPublished()).isFalse();

            studio.buildAll();
            studio.publicationJob.pass();
            assertThat(studio.find(id).publishedAt()).contains(NOW);
            assertThat(studio.releases.current(id).orElseThrow().id()).isEqualTo(release);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void keepsTheHourPromisedToTheSecond(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = studio.episode("Rope and Pulley");
            // 18:00 in Berlin is 17:00 UTC in winter (IANA time zone database, CET = UTC+1)
            done(studio.promise(id, LocalDateTime.parse("2026-03-06T18:00")));
            studio.buildAll();

            studio.clock.set("2026-03-06T16:59:59Z");
            studio.publicationJob.pass();
            assertThat(studio.find(id).isPublished()).isFalse();

            studio.clock.set("2026-03-06T17:00:00Z");
            studio.publicationJob.pass();
            assertThat(studio.find(id).isPublished()).isTrue();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void publishesWhatBecameDueWhileSwitchedOffOnce(Database database) {
        try (database) {
            var studio = new Studio(database);
            var first = studio.episode("Rope and Pulley");
            var second = studio.episode("Slack Water");
            done(studio.promise(first, LocalDateTime.parse("2026-03-03T18:00")));
            done(studio.promise(second, LocalDateTime.parse("2026-03-04T18:00")));
            studio.buildAll();

            studio.clock.advance(Duration.ofDays(9));
            studio.publicationJob.pass();
            studio.publicationJob.pass();
            assertThat(studio.find(first).isPublished()).isTrue();
            assertThat(studio.find(second).isPublished()).isTrue();
            assertThat(studio.saidToLast).isEqualTo(2);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void oneThatCannotBeBuiltDoesNotHoldUpTheOthers(Database database) {
        try (database) {
            var studio = new Studio(database);
            var broken = studio.episode("Broken");
            var sound = studio.episode("Sound");
            Built.failed(studio.releases, done(studio.bringOut(broken)), studio.clock.instant());
            done(studio.bringOut(sound));
            studio.buildAll();
            studio.publicationJob.pass();
            assertThat(studio.find(broken).isPublished()).isFalse();
            assertThat(studio.find(sound).isPublished()).isTrue();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aCorrectionTakesThePlaceOfWhatIsOut(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = studio.episode("Rope and Pulley");
            var first = done(studio.bringOut(id));
            studio.buildAll();
            studio.publicationJob.pass();

            assertThat(studio.correct(id).problems()).as("nothing was changed").isNotEmpty();
            studio.write(id, "bar 1\n1-4 E7\n");
            studio.clock.advance(Duration.ofMinutes(1));
            var second = done(studio.correct(id));
            studio.publicationJob.pass();
            readersGet(studio, database, id, first);
            studio.buildAll();
            studio.publicationJob.pass();
            readersGet(studio, database, id, second);
            assertThat(studio.find(id).publishedAt()).contains(NOW);
            assertThat(studio.releases.of(id)).hasSize(2);
        }
    }

    /** Whoever asks: of one lesson, of a series, of a lesson in hand. */
    private static void readersGet(Studio studio, Database database, EpisodeId id, ReleaseId release) {
        var ofSeries =
                new SeriesReleases(database.jdbi()).current(studio.find(id).series());
        assertThat(studio.releases.current(id)).map(Release::id).contains(release);
        assertThat(ofSeries.get(id).id()).isEqualTo(release);
        assertThat(studio.look(id).current()).map(Release::id).contains(release);
    }

    /** The lesson was read at the beginning of a pass, and its educator was quicker. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void nobodyIsToldOfAnHourThatWasTakenBackMeanwhile(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = studio.episode("Rope and Pulley");
            done(studio.promise(id, LocalDateTime.parse("2026-03-03T18:00")));
            var read = studio.find(id);
            studio.clock.set(((EpisodeState.Scheduled) read.state()).at().toString());
            done(studio.publisher.withdraw(studio.educator, id, studio.seen(id)));
            studio.watch.look(read);
            assertThat(studio.letters()).isEmpty();
        }
    }

    /** A slip is put right, and a moment later a second one in its words, which nobody need be told of by letter. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatWasToBeToldOfACorrectionIsToldOfTheOneThatOvertakesIt(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = studio.episode("Rope and Pulley");
            done(studio.bringOut(id));
            studio.buildAll();
            studio.publicationJob.pass();

            studio.clock.advance(Duration.ofMinutes(1));
            studio.write(id, "bar 1\n1-4 E7\n");
            done(studio.publisher.correct(
                    studio.educator, id, new ReleaseNote("Bar 1 is at the seventh fret.", true), studio.seen(id)));
            studio.clock.advance(Duration.ofMinutes(1));
            studio.rename(id, "Rope and Pulleys");
            done(studio.publisher.correct(
                    studio.educator, id, new ReleaseNote("The title has its s.", false), studio.seen(id)));
            studio.buildAll();
            studio.publicationJob.pass();
            assertThat(studio.releases.current(id).orElseThrow().note())
                    .isEqualTo(new ReleaseNote("Bar 1 is at the seventh fret. The title has its s.", true));
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void anEpisodeThatMovedIsBuiltAgainUnderItsNewNumber(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = studio.episode("Rope and Pulley");
            studio.episode("Slack Water");
            done(studio.promise(id, LocalDateTime.parse("2026-03-03T18:00")));
            studio.buildAll();
            done(studio.desk.move(studio.educator, id, 2));

            studio.clock.advance(Duration.ofDays(2));
            studio.publicationJob.pass();
            assertThat(studio.find(id).isPublished()).isFalse();
            studio.buildAll();
            studio.publicationJob.pass();
            assertThat(studio.find(id).isPublished()).isTrue();
            assertThat(studio.releases.current(id).orElseThrow().spec().fileStem())
                    .isEqualTo("low-tide-02-rope-and-pulley");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aPromiseTakenBackIsNotKept(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = studio.episode("Rope and Pulley");
            done(studio.promise(id, LocalDateTime.parse("2026-03-03T18:00")));
            studio.buildAll();
            done(studio.withdraw(id));
            studio.clock.advance(Duration.ofDays(9));
            studio.publicationJob.pass();
            assertThat(studio.find(id).isPublished()).isFalse();
            assertThat(studio.withdraw(id).problems()).isNotEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aLaterReleaseNeverGivesWayToAnEarlierOne(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = studio.episode("Rope and Pulley");
            var first = done(studio.bringOut(id));
            assertThat(Built.progress(studio.releases, first, 1, 9)).isTrue();
            studio.write(id, "bar 1\n1-4 E7\n");
            var second = done(studio.bringOut(id));
            Built.ready(studio.releases, second, studio.clock.instant());
            studio.publicationJob.pass();
            assertThat(studio.current(id)).isEqualTo(second);
            assertThat(studio.releases.find(first).orElseThrow().isOvertaken()).isTrue();
            assertThat(Built.progress(studio.releases, first, 2, 9))
                    .as("it ends here")
                    .isFalse();

            Built.ready(studio.releases, first, studio.clock.instant());
            studio.clock.advance(Duration.ofMinutes(1));
            studio.publicationJob.pass();
            assertThat(studio.current(id)).isEqualTo(second);
        }
    }

    /** In whatever order the builds of several corrections end: readers see release numbers that only grow. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void readersSeeReleasesInOneOrderWhateverIsBuiltFirst(Database database) {
        try (database) {
            var studio = new Studio(database);
            long seed = new Random().nextLong();
            var chance = new Random(seed);
            int shown = 0;
            for (int round = 0; round < 5; round++) {
                var id = studio.episode("Round " + round);
                var made = new ArrayList<ReleaseId>();
                for (int fret = 1; fret <= 4; fret++) {
                    studio.write(id, "bar 1\n1-4 E" + fret + "\n");
                    made.add(done(studio.bringOut(id)));
                    Built.progress(studio.releases, made.get(made.size() - 1), 1, 9);
                    studio.clock.advance(Duration.ofSeconds(1));
                }
                Collections.shuffle(made, chance);
                int latest = 0;
                for (var one : made) {
                    Built.ready(studio.releases, one, studio.clock.instant());
                    studio.publicationJob.pass();
                    var now = studio.releases.current(id).map(release -> release.spec()
                            .release());
                    assertThat(now.orElse(0)).as("seed %d", seed).isGreaterThanOrEqualTo(latest);
                    latest = now.orElse(0);
                    shown++;
                }
                assertThat(latest).as("seed %d", seed).isEqualTo(4);
            }
            assertThat(shown).isEqualTo(20);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aBuildThatFailsIsTriedAgainAfterGrowingPauses(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = studio.episode("Rope and Pulley");
            var release = done(studio.bringOut(id));
            for (int minutes : List.of(1, 2, 4, 8, 15, 15)) {
                Built.failed(studio.releases, release, studio.clock.instant());
                studio.clock.advance(Duration.ofMinutes(minutes).minusSeconds(1));
                studio.queue.clear();
                studio.publicationJob.pass();
                assertThat(studio.queue).isEmpty();
                studio.clock.advance(Duration.ofSeconds(1));
                studio.publicationJob.pass();
                assertThat(studio.queue).containsExactly(release);
            }
            studio.buildAll();
            studio.publicationJob.pass();
            assertThat(studio.current(id)).isEqualTo(release);
        }
    }
}
