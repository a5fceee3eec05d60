package groundbass.cli;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.Main;
import groundbass.archive.ArchiveSite;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.settings.Imprint;
import groundbass.catalog.settings.Settings;
import groundbass.store.Database;
import groundbass.store.SettableClock;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A series out of one site and into another, as an operator does it. */
class ArchiveCommandsTest {
    @TempDir
    Path folder;

    private record Ran(int code, String out, String err) {}

    private Ran admin(String data, String... args) {
        var out = new StringWriter();
        var err = new StringWriter();
        var line = Main.commandLine(Map.of()).setOut(new PrintWriter(out)).setErr(new PrintWriter(err));
        var all = new ArrayList<>(List.of("admin"));
        all.addAll(List.of(args));
        all.addAll(List.of("--data", folder.resolve(data).toString()));
        return new Ran(line.execute(all.toArray(String[]::new)), out.toString(), err.toString());
    }

    private ArchiveSite site(Database database, String data) throws IOException {
        var clock = SettableClock.at("2026-03-02T09:00:00Z");
        var jdbi = database.jdbi();
        var audit = new Audit(jdbi, Clock.systemUTC());
        var owner = new Educators(jdbi, audit, Clock.systemUTC())
                .create("Quay Studio", "desk@example.org", "a password for trials")
                .result()
                .orElseThrow()
                .id();
        new Settings(jdbi, audit).saveImprint(owner, new Imprint("Quay Studio", "desk@example.org", "", "", ""));
        return new ArchiveSite(database, folder.resolve(data).resolve("files"), clock, Optional.of(owner));
    }

    @Test
    void aSeriesGoesFromOneSiteToAnother() throws IOException {
        try (var database = Database.embedded(folder.resolve("one"))) {
            var site = site(database, "one");
            site.write(site.series(), "Rope", edit -> edit);
        }
        try (var database = Database.embedded(folder.resolve("other"))) {
            site(database, "other");
        }
        String file = folder.resolve("low-tide.zip").toString();
        assertThat(admin("one", "export", "nowhere", "--to", file).err()).contains("no series with the address");
        var out = admin("one", "export", "low-tide", "--to", file);
        assertThat(out.code()).as(out.err()).isZero();
        assertThat(out.out()).contains("lessons 1, files ");
        var again = admin("one", "export", "low-tide", "--to", file);
        assertThat(again.code()).isEqualTo(1);
        assertThat(again.err()).contains("already");

        var in = admin("other", "import", file);
        assertThat(in.code()).as(in.err() + in.out()).isZero();
        assertThat(in.out()).contains("Low Tide (/series/low-tide): One lesson was brought in.");
        assertThat(admin("other", "import", file).out())
                .contains("No lesson was brought in. Here before, and left as they are: 1.");
        assertThat(admin("other", "audit").out()).contains("series.imported", "series.brought", "episode.brought");

        var folderIn = admin("other", "import", "seed-data/harbour-rounds", "--address", "low-tide-too");
        assertThat(folderIn.code()).as(folderIn.err()).isZero();
        assertThat(folderIn.out()).contains("(/series/low-tide-too): 6 lessons were brought in.");

        var broken = Files.write(folder.resolve("broken.zip"), new byte[] {1, 2});
        var refused = admin("other", "import", broken.toString());
        assertThat(refused.code()).isEqualTo(1);
        assertThat(refused.err()).contains("broken.zip: This is no zip");
    }
}
