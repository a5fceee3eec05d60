package groundbass.catalog.episode;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.CatalogFixture;
import groundbass.document.Clearance;
import groundbass.document.DocumentSettings;
import groundbass.document.EpisodeDocument;
import groundbass.document.Level;
import groundbass.document.Rights;
import groundbass.form.FieldProblem;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class BeginningsTest {
    private static final EpisodeDocument OWN_WORK = EpisodeDocument.titled("", Level.ADVANCED)
            .edit()
            .notes("## How to play it\n")
            .rights(new Rights("Me", "", "Own work.", Clearance.OWN))
            .done();

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void isKeptOnceForEachSeriesAndAsksForNeitherTitleNorLine(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var beginnings = new Beginnings(fixture.jdbi, fixture.audit);
            var series = fixture.series.id();
            assertThat(beginnings.of(series)).isEmpty();
            assertThat(beginnings.save(fixture.owner, series, OWN_WORK).problems())
                    .isEmpty();
            var changed = OWN_WORK.edit().level(Level.BEGINNER).done();
            beginnings.save(fixture.owner, series, changed);
            assertThat(beginnings.of(series)).contains(changed);
            assertThat(fixture.auditedWords()).startsWith("beginning.changed", "beginning.changed");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatIsWrongIsRefusedAndTheOldStays(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var beginnings = new Beginnings(fixture.jdbi, fixture.audit);
            beginnings.save(fixture.owner, fixture.series.id(), OWN_WORK);
            var wrong =
                    OWN_WORK.edit().settings(new DocumentSettings("en", "fast")).done();
            assertThat(beginnings
                            .save(fixture.owner, fixture.series.id(), wrong)
                            .problems())
                    .extracting(FieldProblem::field)
                    .containsExactly("settings.tempos");
            assertThat(beginnings.of(fixture.series.id())).contains(OWN_WORK);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aLessonBeginsWithWhatItIsGiven(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var begun = OWN_WORK.edit().title("First").done();
            var episode = fixture.desk
                    .create(fixture.owner, fixture.series.id(), begun)
                    .result()
                    .orElseThrow();
            assertThat(episode.title()).isEqualTo("First");
            assertThat(episode.level()).isEqualTo(Level.ADVANCED);
            assertThat(fixture.desk.draft(fixture.owner, episode.id()))
                    .map(Draft::document)
                    .contains(begun);
            assertThat(fixture.desk
                            .create(fixture.owner, fixture.series.id(), OWN_WORK)
                            .problems())
                    .extracting(FieldProblem::field)
                    .containsExactly("title");
        }
    }
}
