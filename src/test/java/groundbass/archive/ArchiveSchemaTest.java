package groundbass.archive;

import static org.assertj.core.api.Assertions.assertThat;

import com.networknt.schema.InputFormat;
import com.networknt.schema.JsonSchema;
import com.networknt.schema.JsonSchemaFactory;
import com.networknt.schema.SchemaValidatorsConfig;
import com.networknt.schema.SpecVersion.VersionFlag;
import com.networknt.schema.ValidationMessage;
import groundbass.catalog.episode.Withdrawal;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What archives say of themselves is what the published schemas say (JSON Schema 2020-12), by a validator of others. */
class ArchiveSchemaTest {
    @TempDir
    static Path folder;

    private static Database database;
    private static Forged archive;

    @BeforeAll
    static void write() throws IOException {
        database = BothDatabases.freshH2();
        var site = new ArchiveSite(database, folder);
        var series = site.series();
        var first = site.write(series, "Rope", edit -> edit);
        site.record(first);
        site.picture(first);
        site.publish(first);
        var withdrawal = new Withdrawal(site.clock.instant(), "why");
        site.parts.jdbi().useTransaction(handle -> site.parts.episodes().takeBack(handle, first.id(), withdrawal));
        site.write(series, "Pulley", edit -> edit);
        archive = new Forged(site.export(series));
    }

    @AfterAll
    static void close() {
        database.close();
    }

    private static Set<ValidationMessage> problems(String schema, String json) throws IOException {
        var config =
                SchemaValidatorsConfig.builder().formatAssertionsEnabled(true).build();
        JsonSchema read = JsonSchemaFactory.getInstance(VersionFlag.V202012)
                .getSchema(Files.readString(Path.of("src/main/docs/archive", schema)), config);
        return read.validate(json, InputFormat.JSON);
    }

    @Test
    void theManifestIsAsItsSchemaSays() throws IOException {
        assertThat(problems("manifest.schema.json", archive.text("manifest.json")))
                .isEmpty();
    }

    @Test
    void theListOfEachLessonIsAsItsSchemaSays() throws IOException {
        for (String lesson : Set.of("01-rope/episode.json", "02-pulley/episode.json")) {
            assertThat(problems("episode.schema.json", archive.text(lesson)))
                    .as(lesson)
                    .isEmpty();
        }
    }

    @Test
    void theSchemasNoticeWhatIsWrong() throws IOException {
        String manifest = archive.text("manifest.json");
        String lesson = archive.text("01-rope/episode.json");
        assertThat(problems("manifest.schema.json", manifest.replace("\"format\" : 1", "\"format\" : 7")))
                .isNotEmpty();
        assertThat(problems("manifest.schema.json", manifest.replace("read-me.txt", "../read-me.txt")))
                .isNotEmpty();
        assertThat(problems("episode.schema.json", lesson.replaceFirst("\"created\" : \"", "\"created\" : \"on ")))
                .isNotEmpty();
        assertThat(problems("episode.schema.json", lesson.replace("\"why\"", "\"because\"")))
                .isNotEmpty();
    }
}
