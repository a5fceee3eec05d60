package groundbass.catalog.series;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.CatalogFixture;
import groundbass.catalog.educator.Audit;
import groundbass.document.HouseStyle;
import groundbass.document.SheetAbbreviations;
import groundbass.document.SheetAids;
import groundbass.document.SheetAids.CountsRow;
import groundbass.document.SheetLetters;
import groundbass.document.SheetPaper;
import groundbass.store.AtOnce;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.jdbi.v3.core.Handle;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class StylesTest {
    private static final Path MIGRATION = Path.of("migrations", "V22__series_style.sql");
    private static final HouseStyle CHOSEN = new HouseStyle(
            new SheetLetters(Map.of("slap", "S", "pop", "-")),
            new SheetAbbreviations(true, false),
            SheetPaper.LETTER,
            new SheetAids(CountsRow.NONE, true));

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aStyleIsKeptAndChanged(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var series = fixture.series.id();
            var styles = new Styles(database.jdbi(), new Audit(database.jdbi(), fixture.clock));
            assertThat(styles.of(series)).isEqualTo(HouseStyle.USUAL);
            styles.save(fixture.owner, series, CHOSEN);
            assertThat(styles.of(series)).isEqualTo(CHOSEN);
            var other = new HouseStyle(
                    SheetLetters.USUAL,
                    new SheetAbbreviations(false, true),
                    SheetPaper.A4,
                    new SheetAids(CountsRow.ALL, false));
            styles.save(fixture.owner, series, other);
            assertThat(styles.of(series)).isEqualTo(other);
        }
    }

    /** Two windows save at once what has no row yet. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void windowsThatSaveAtOnceBothSucceed(Database database) throws Exception {
        try (database) {
            var fixture = new CatalogFixture(database);
            var styles = new Styles(database.jdbi(), fixture.audit);
            for (int i = 0; i < 9; i++) {
                var series = fixture.catalog
                        .create(fixture.owner, new SeriesForm("Tide " + i, "", "", "UTC"))
                        .result()
                        .orElseThrow()
                        .id();
                AtOnce.twice(() -> styles.save(fixture.owner, series, CHOSEN));
                assertThat(styles.of(series)).isEqualTo(CHOSEN);
            }
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatStoodAmongTheSettingsIsCarriedOver(Database database) throws IOException {
        var statements = Files.readString(MIGRATION).split(";");
        try (database) {
            var fixture = new CatalogFixture(database);
            var series = fixture.series.id();
            database.jdbi().useTransaction(handle -> {
                set(handle, "letters." + series, "slap=S pop=-");
                set(handle, "abbreviations." + series, "simile");
                set(handle, "paper." + series, "letter");
                set(handle, "aids." + series, "counts-none numbers");
                set(handle, "site.name", "Quay Studio");
                handle.execute(statements[statements.length - 3]);
                handle.execute(statements[statements.length - 2]);
            });
            var styles = new Styles(database.jdbi(), new Audit(database.jdbi(), fixture.clock));
            assertThat(styles.of(series)).isEqualTo(CHOSEN);
            List<String> left = database.jdbi().withHandle(handle -> handle.createQuery("select name from setting")
                    .mapTo(String.class)
                    .list());
            assertThat(left).contains("site.name").noneMatch(name -> name.endsWith(series.value()));
        }
    }

    private static void set(Handle handle, String name, String chosen) {
        handle.execute("insert into setting (name, chosen) values (?, ?)", name, chosen);
    }
}
