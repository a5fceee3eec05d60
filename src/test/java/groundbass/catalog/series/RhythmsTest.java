package groundbass.catalog.series;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.CatalogFixture;
import groundbass.catalog.educator.Audit;
import groundbass.store.AtOnce;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class RhythmsTest {
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aRhythmIsKeptChangedAndTakenAway(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var series = fixture.series.id();
            var rhythms = new Rhythms(database.jdbi(), new Audit(database.jdbi(), fixture.clock));
            assertThat(rhythms.of(series)).isEmpty();
            var typed = new RhythmForm("2030-05-01", "17:00", "2", "2030-12-25\n2031-01-01");
            rhythms.save(fixture.owner, series, typed);
            assertThat(rhythms.of(series)).isEqualTo(typed.read().result().orElseThrow());
            var changed = new RhythmForm("2030-05-02", "07:30", "1", "");
            rhythms.save(fixture.owner, series, changed);
            assertThat(rhythms.of(series)).isEqualTo(changed.read().result().orElseThrow());
            assertThat(rhythms.save(fixture.owner, series, new RhythmForm("soon", "", "", ""))
                            .problems())
                    .isNotEmpty();
            assertThat(rhythms.of(series)).isPresent();
            rhythms.save(fixture.owner, series, new RhythmForm("", "", "", ""));
            assertThat(rhythms.of(series)).isEmpty();
        }
    }

    /** Two windows save at once what has no row yet. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void windowsThatSaveAtOnceBothSucceed(Database database) throws Exception {
        try (database) {
            var fixture = new CatalogFixture(database);
            var series = fixture.series.id();
            var rhythms = new Rhythms(database.jdbi(), new Audit(database.jdbi(), fixture.clock));
            var none = new RhythmForm("", "", "", "");
            var typed = new RhythmForm("2030-05-01", "17:00", "2", "2030-12-25\n2031-01-01");
            for (int i = 0; i < 9; i++) {
                rhythms.save(fixture.owner, series, none);
                AtOnce.twice(() -> rhythms.save(fixture.owner, series, typed));
                assertThat(rhythms.of(series)).isEqualTo(typed.read().result().orElseThrow());
            }
        }
    }
}
