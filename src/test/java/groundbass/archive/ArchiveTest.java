package groundbass.archive;

import static groundbass.archive.ArchiveSite.done;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.episode.EpisodeState;
import groundbass.catalog.episode.Withdrawal;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.Series;
import groundbass.identity.Sha256;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Clob;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

/** A series into an archive and into an empty site, on the other kind of database. */
class ArchiveTest {
    @TempDir
    Path folder;

    /** Out and corrected, with a recording; taken back; a draft. */
    private static Series fill(ArchiveSite site) throws IOException {
        var series = site.series();
        var first = site.write(series, "Rope and Pulley", edit -> edit);
        site.record(first);
        site.picture(first);
        site.publish(first);
        site.clock.advance(Duration.ofDays(7));
        site.correct(first, "The third bar is told \u201canew\u201d.");
        var second = site.write(series, "Taken Back", edit -> edit.notes("# Notes\r\n"));
        site.publish(second);
        var withdrawal = new Withdrawal(site.clock.instant(), "A permission was withdrawn.");
        site.parts.jdbi().useTransaction(handle -> site.parts.episodes().takeBack(handle, second.id(), withdrawal));
        site.write(series, "Being written", edit -> edit.script("Say this."));
        return site.find(series);
    }

    /** Rows of the series but for whose they are: an importer's rows are the importer's. */
    private static List<Map<String, Object>> rows(ArchiveSite site, String columns, String table) {
        return site.parts.jdbi().withHandle(handle -> handle.createQuery(
                        "select " + columns + " from " + table + " order by 1, 2")
                .mapToMap()
                .list());
    }

    private static void assertSameRows(ArchiveSite one, ArchiveSite other) {
        for (var table : Map.of(
                        "episode",
                        "id, series_id, number, slug, title, level, summary, published_at, withdrawn_at, withdrawn_why, created_at",
                        "revision",
                        "id, episode_id, number, form_version, document, note, created_at",
                        "release",
                        "id, episode_id, revision_id, number, recipe, state, created_at, published_at, note, note_by_letter",
                        "release_file",
                        "release_id, place, name, role, media_type, byte_count, sha256",
                        "upload",
                        "id, episode_id, original_name, media_type, byte_count, sha256, facts, created_at",
                        "picture",
                        "id, episode_id, original_name, words, format, wide, high, byte_count, sha256, created_at",
                        "draft",
                        "episode_id, document, saved_at")
                .entrySet()) {
            var rows = rows(one, table.getValue(), table.getKey());
            assertThat(rows).as(table.getKey()).isNotEmpty();
            assertThat(texts(rows(other, table.getValue(), table.getKey())))
                    .as(table.getKey())
                    .isEqualTo(texts(rows));
        }
    }

    /** Instants of either database, and long texts, as text. */
    private static List<String> texts(List<Map<String, Object>> rows) {
        return rows.stream()
                .map(row ->
                        row.values().stream().map(ArchiveTest::text).toList().toString())
                .toList();
    }

    private static String text(Object value) {
        if (value instanceof Timestamp stamp) {
            return stamp.toInstant().toString();
        }
        if (value instanceof OffsetDateTime time) {
            return time.toInstant().toString();
        }
        if (value instanceof Clob clob) {
            try {
                return clob.getSubString(1, (int) clob.length());
            } catch (SQLException e) {
                throw new IllegalStateException(e);
            }
        }
        return String.valueOf(value);
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatComesInIsWhatWentOut(Database database) throws IOException {
        try (database;
                var other = BothDatabases.otherThan(database, database.migration())) {
            var site = new ArchiveSite(database, folder.resolve("one"));
            var series = fill(site);
            byte[] archive = site.export(series);
            var file = Files.write(folder.resolve("series.zip"), archive);

            var to = new ArchiveSite(other, folder.resolve("other"));
            to.clock.set(site.clock.instant());
            var brought = done(to.bringIn(file));
            assertThat(brought.findings()).isEmpty();
            assertThat(brought.lessons()).isEqualTo(3);
            assertThat(brought.series().id()).isEqualTo(series.id());
            assertSameRows(site, to);
            for (var row : rows(site, "sha256, name", "release_file")) {
                var sha256 = new Sha256(row.get("sha256").toString());
                assertThat(to.blobs.open(sha256).readAllBytes())
                        .isEqualTo(site.blobs.open(sha256).readAllBytes());
            }
            // settings, texts and all: the archive of what came in is the same archive
            assertThat(to.export(brought.series())).isEqualTo(archive);

            var again = done(to.bringIn(file));
            assertThat(again.lessons()).isZero();
            assertThat(again.already()).isEqualTo(3);
            assertSameRows(site, to);
            assertThat(to.parts.catalog().open(to.owner, Deed.KEEP)).hasSize(1);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aPromiseStaysWithTheSiteThatGaveIt(Database database) throws IOException {
        try (database;
                var other = BothDatabases.freshH2()) {
            var site = new ArchiveSite(database, folder.resolve("one"));
            var series = site.series();
            var lesson = site.write(series, "Promised", edit -> edit);
            var hour = LocalDateTime.parse("2026-04-02T17:00");
            var zone = ZoneId.of("Europe/Berlin");
            var promise =
                    new EpisodeState.Scheduled(hour.atZone(zone).toInstant(), zone, hour, site.clock.instant(), 1);
            site.parts.jdbi().useTransaction(handle -> site.parts.episodes().schedule(handle, lesson.id(), promise));
            var file = Files.write(folder.resolve("series.zip"), site.export(series));

            var to = new ArchiveSite(other, folder.resolve("other"));
            var brought = done(to.bringIn(file));
            assertThat(brought.findings()).singleElement().satisfies(finding -> assertThat(
                            finding.what().args())
                    .containsExactly("2026-04-02 17:00", "Europe/Berlin"));
            assertThat(to.parts.episodes().scheduled()).isEmpty();
            assertThat(to.lessons(series)).hasSize(1);
        }
    }
}
