package groundbass.catalog.episode;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.CatalogFixture;
import groundbass.catalog.series.Deed;
import groundbass.document.Level;
import groundbass.identity.Slug;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class EpisodesTest {
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void anEpisodeIsFoundByIdAndByItsAddress(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var episode = fixture.episode("Döner & Octaves");
            assertThat(episode.slug()).isEqualTo(new Slug("doner-octaves"));
            assertThat(fixture.now(episode)).isEqualTo(episode);
            assertThat(fixture.episodes.find(fixture.series.slug(), 1)).contains(episode);
            assertThat(fixture.episodes.find(fixture.series.slug(), 2)).isEmpty();
            assertThat(fixture.episodes.open(fixture.owner, Deed.WRITE, episode.id()))
                    .contains(episode);
            assertThat(fixture.episodes.open(fixture.stranger, Deed.WRITE, episode.id()))
                    .isEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aPromiseKeepsItsZoneAndItsLocalTime(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var episode = fixture.episode("First");
            // the hour that the end of summer time repeats in Vienna (EU directive 2000/84/EC: 01:00 UTC)
            assertThat(fixture.schedule(episode, "2030-10-27T02:30:00")).isTrue();
            assertThat(fixture.now(episode).state())
                    .isEqualTo(new EpisodeState.Scheduled(
                            Instant.parse("2030-10-27T00:30:00Z"),
                            CatalogFixture.VIENNA,
                            LocalDateTime.parse("2030-10-27T02:30:00"),
                            fixture.clock.instant(),
                            1));
            assertThat(fixture.episodes.scheduled()).containsExactly(fixture.now(episode));
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void manyAreNamedAtOnce(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var out = fixture.episode("First");
            var draft = fixture.episode("Second");
            fixture.publish(out);
            assertThat(fixture.episodes.titles(List.of())).isEmpty();
            var found = fixture.episodes.titles(List.of(out.id(), draft.id(), EpisodeId.next(), out.id()));
            assertThat(found).containsOnlyKeys(out.id(), draft.id());
            assertThat(found.get(out.id()))
                    .isEqualTo(new EpisodeTitle(out.id(), "First", fixture.series.title(), true));
            assertThat(found.get(draft.id()).published()).isFalse();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aPromiseCanBeMovedAndTakenBackUntilItIsKept(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var episode = fixture.episode("First");
            fixture.schedule(episode, "2030-03-08T18:00:00");
            fixture.schedule(episode, "2030-03-15T18:00:00");
            assertThat(fixture.now(episode).state())
                    .isInstanceOfSatisfying(EpisodeState.Scheduled.class, promised -> assertThat(promised.at())
                            .isEqualTo(Instant.parse("2030-03-15T17:00:00Z")));
            assertThat(fixture.unschedule(episode)).isTrue();
            assertThat(fixture.unschedule(episode)).isFalse();
            assertThat(fixture.now(episode).state()).isEqualTo(new EpisodeState.Unscheduled());
            fixture.publish(episode);
            assertThat(fixture.schedule(episode, "2030-03-22T18:00:00")).isFalse();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void ofAllWhoPublishOneIsToldAndTheFirstTimeStays(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var episode = fixture.episode("First");
            fixture.schedule(episode, "2030-03-01T10:00:00");
            var first = fixture.clock.instant();
            assertThat(fixture.publish(episode)).isTrue();
            fixture.clock.advance(Duration.ofHours(1));
            assertThat(fixture.publish(episode)).isFalse();
            assertThat(fixture.now(episode).publishedAt()).contains(first);
            assertThat(fixture.episodes.scheduled()).isEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void listsForEveryoneHoldOnlyWhatIsPublished(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var all = fixture.episodes(4);
            fixture.publish(all.get(2));
            fixture.clock.advance(Duration.ofDays(7));
            fixture.publish(all.get(0));
            var series = fixture.series.id();
            assertThat(fixture.episodes.publishedIn(series))
                    .extracting(Episode::number)
                    .containsExactly(1, 3);
            assertThat(fixture.episodes.in(series)).extracting(Episode::number).containsExactly(1, 2, 3, 4);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void neighboursAreThePublishedOnesNextByNumber(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var all = fixture.episodes(5);
            fixture.publish(all.get(0));
            fixture.publish(all.get(4));
            var middle = fixture.episodes.neighbours(all.get(2));
            assertThat(middle.earlier()).map(Episode::number).contains(1);
            assertThat(middle.later()).map(Episode::number).contains(5);
            assertThat(fixture.episodes.neighbours(all.get(0)).earlier()).isEmpty();
            assertThat(fixture.episodes.neighbours(all.get(4)).later()).isEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aPublishedEpisodeKeepsItsSlugUnderANewTitle(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var episode = fixture.episode("First");
            fixture.jdbi.useTransaction(
                    h -> fixture.episodes.describe(h, episode.id(), CatalogFixture.document("Second")));
            assertThat(fixture.now(episode).slug()).isEqualTo(new Slug("second"));
            fixture.publish(episode);
            fixture.jdbi.useTransaction(
                    h -> fixture.episodes.describe(h, episode.id(), CatalogFixture.document("Third")));
            assertThat(fixture.now(episode).title()).isEqualTo("Third");
            assertThat(fixture.now(episode).level()).isEqualTo(Level.ADVANCED);
            assertThat(fixture.now(episode).slug()).isEqualTo(new Slug("second"));
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void inHandAreTheUnpublishedOnesAndTheLatestOfTheOthers(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            fixture.publish(fixture.episode("1, out"));
            fixture.episode("2, a draft that was passed over");
            for (int number = 3; number <= 6; number++) {
                fixture.publish(fixture.episode(number + ", out"));
            }
            fixture.episode("7, a draft");
            var series = fixture.series.id();
            assertThat(fixture.episodes.inHand(series, 2))
                    .extracting(Episode::number)
                    .containsExactly(2, 5, 6, 7);
            assertThat(fixture.episodes.inHand(series, 9)).hasSize(7);
            assertThat(fixture.episodes.inHand(series, 0))
                    .extracting(Episode::number)
                    .containsExactly(2, 7);
            assertThat(fixture.episodes.countIn(series)).isEqualTo(7);
            assertThat(fixture.episodes.in(series, 2, 3))
                    .extracting(Episode::number)
                    .containsExactly(3, 4, 5);
            assertThat(fixture.episodes.in(series, 7, 3)).isEmpty();
        }
    }
}
