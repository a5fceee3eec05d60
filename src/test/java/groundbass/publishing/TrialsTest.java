package groundbass.publishing;

import static groundbass.publishing.Studio.done;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.episode.EpisodeId;
import groundbass.release.ReleaseId;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.time.Duration;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

/** What was built to be looked at does not stay for ever. */
class TrialsTest {
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void anOldTrialIsForgottenUnlessALinkOpensIt(Database database) {
        try (database) {
            var studio = new Studio(database);
            var trial = trial(studio, studio.episode("Rope and Pulley"));
            var shared = trial(studio, studio.episode("Slack Water"));
            studio.buildAll();
            studio.clock.advance(Duration.ofDays(7)); // CHANGELOG.md: cleared away after a week
            forget(studio, shared);
            assertThat(studio.releases.find(trial)).as("not a moment too early").isPresent();
            studio.clock.advance(Duration.ofSeconds(1));
            forget(studio, shared);
            assertThat(studio.releases.find(trial)).isEmpty();
            assertThat(studio.releases.files().of(trial)).isEmpty();
            assertThat(studio.releases.find(shared)).isPresent();
            assertThat(studio.releases.files().of(shared)).isNotEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatWasPublishedStays(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = studio.episode("Rope and Pulley");
            var trial = trial(studio, id);
            studio.buildAll();
            assertThat(done(studio.bringOut(id))).as("it is built already").isEqualTo(trial);
            studio.publicationJob.pass();
            studio.clock.advance(Duration.ofDays(8));
            forget(studio, null);
            assertThat(studio.current(id)).isEqualTo(trial);
        }
    }

    private static ReleaseId trial(Studio studio, EpisodeId id) {
        return done(studio.publisher.trials().build(studio.educator, id));
    }

    private static void forget(Studio studio, ReleaseId linked) {
        studio.publisher.trials().forget(trial -> trial.equals(linked));
    }
}
