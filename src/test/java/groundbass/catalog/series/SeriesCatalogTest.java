package groundbass.catalog.series;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.CatalogFixture;
import groundbass.document.Level;
import groundbass.form.FieldProblem;
import groundbass.identity.Slug;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class SeriesCatalogTest {
    private static final SeriesForm FORM = CatalogFixture.FORM;

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aSeriesIsFoundByIdAndSlugAsItWasMade(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var series = fixture.series;
            assertThat(series.slug()).isEqualTo(new Slug("tide-patterns"));
            assertThat(series.zone()).isEqualTo(CatalogFixture.VIENNA);
            assertThat(fixture.catalog.find(series.id())).contains(series);
            assertThat(fixture.catalog.find(series.slug())).contains(series);
            assertThat(fixture.catalog.open(fixture.owner, Deed.KEEP)).containsExactly(series);
            assertThat(fixture.catalog.open(fixture.stranger, Deed.KEEP, series.id()))
                    .isEmpty();
            assertThat(fixture.catalog.find(SeriesId.next())).isEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void equalTitlesGetSlugsOfTheirOwnAndATypedSlugIsNeverChanged(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var second = fixture.catalog.create(fixture.owner, FORM).result().orElseThrow();
            assertThat(second.slug()).isEqualTo(new Slug("tide-patterns-2"));
            var typed = new SeriesForm("Tides", "tide-patterns", "", "Europe/Vienna");
            assertThat(fixture.catalog.create(fixture.owner, typed).problems())
                    .containsExactly(FieldProblem.of("slug", "catalog.problem.slug.taken", "tide-patterns"));
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void everyFaultIsToldAtOnceAndNothingIsMade(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var faulty = new SeriesForm(" ", "Not a slug", "x".repeat(2001), "+02:00");
            assertThat(fixture.catalog.create(fixture.owner, faulty).problems())
                    .extracting(FieldProblem::field)
                    .containsExactly("title", "slug", "summary", "zone");
            assertThat(fixture.catalog.open(fixture.owner, Deed.KEEP)).hasSize(1);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void itsOwnerEditsItAndNobodyElse(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var id = fixture.series.id();
            var form = new SeriesForm("Tide Studies", "tides", "", "Europe/Rome");
            assertThat(fixture.catalog.edit(fixture.stranger, id, form).problems())
                    .containsExactly(FieldProblem.of("", "catalog.problem.gone"));
            var edited = fixture.catalog.edit(fixture.owner, id, form).result().orElseThrow();
            assertThat(fixture.catalog.find(new Slug("tides"))).contains(edited);
            assertThat(edited.createdAt()).isEqualTo(fixture.series.createdAt());
            assertThat(SeriesForm.of(edited)).isEqualTo(form);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void theSlugStaysOnceSomethingIsPublishedUnderIt(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            fixture.publish(fixture.episode("First"));
            var other = new SeriesForm("New title", "new-slug", "", "Europe/Vienna");
            assertThat(fixture.catalog
                            .edit(fixture.owner, fixture.series.id(), other)
                            .problems())
                    .containsExactly(FieldProblem.of("slug", "catalog.problem.slug.published", "tide-patterns"));
            var same = new SeriesForm("New title", "", "", "Europe/Vienna");
            assertThat(fixture.catalog
                            .edit(fixture.owner, fixture.series.id(), same)
                            .result())
                    .map(Series::slug)
                    .contains(new Slug("tide-patterns"));
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void everyoneSeesSeriesWithSomethingPublishedTheLatestFirst(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var other = fixture.catalog.create(fixture.owner, FORM).result().orElseThrow();
            var empty = fixture.catalog.create(fixture.owner, FORM).result().orElseThrow();
            fixture.publish(fixture.episode("First"));
            fixture.clock.advance(Duration.ofDays(7));
            fixture.publish(fixture.desk
                    .create(fixture.owner, other.id(), "Second", Level.BEGINNER)
                    .result()
                    .orElseThrow());
            assertThat(fixture.catalog.published()).isEqualTo(List.of(other, fixture.series));
            assertThat(fixture.catalog.published()).doesNotContain(empty);
        }
    }
}
