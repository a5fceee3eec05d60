package groundbass.archive;

import static groundbass.archive.ArchiveSite.done;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.episode.Episode;
import groundbass.document.Clearance;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Lines and notes that somebody wrote, as a folder or a zip. */
class WrittenSeriesTest {
    private static final Path DEMO = Path.of("seed-data", "harbour-rounds");

    @TempDir
    Path folder;

    private Database database;
    private ArchiveSite site;

    @BeforeEach
    void open() throws IOException {
        database = BothDatabases.freshH2();
        site = new ArchiveSite(database, folder.resolve("files"));
    }

    @AfterEach
    void close() {
        database.close();
    }

    @Test
    void theDemonstrationsFolderComesInAsDrafts() throws IOException {
        var brought = done(site.bringIn(DEMO));
        assertThat(brought.findings()).isEmpty();
        assertThat(brought.lessons()).isEqualTo(6);
        var lessons = site.lessons(brought.series());
        assertThat(lessons).extracting(Episode::number).containsExactly(1, 2, 3, 4, 5, 6);
        assertThat(lessons).isNotEmpty().noneMatch(Episode::isPublished);
        var first = site.parts
                .desk()
                .draft(site.owner, lessons.get(0).id())
                .orElseThrow()
                .document();
        assertThat(first.mainLine().text()).isEqualTo(Files.readString(DEMO.resolve("01-rope-and-pulley/line.txt")));
        assertThat(first.notes()).isEqualTo(Files.readString(DEMO.resolve("01-rope-and-pulley/notes.md")));
        assertThat(first.exercises()).hasSize(2);
        assertThat(first.rights().clearance()).isEqualTo(Clearance.OWN);

        var again = done(site.bringIn(DEMO));
        assertThat(again.lessons()).isZero();
        assertThat(again.already()).isEqualTo(6);
        assertThat(site.lessons(brought.series())).hasSize(6);
    }

    /** As file managers zip a folder: the folder itself is in it, and things of their own. */
    private Path zipped(String... files) throws IOException {
        var file = folder.resolve("lines.zip");
        try (var zip = new ZipOutputStream(Files.newOutputStream(file), StandardCharsets.UTF_8)) {
            for (int i = 0; i < files.length; i += 2) {
                zip.putNextEntry(new ZipEntry("My lines/".replace(' ', '-') + files[i]));
                zip.write(files[i + 1].getBytes(StandardCharsets.ISO_8859_1));
                zip.closeEntry();
            }
            zip.putNextEntry(new ZipEntry("__MACOSX/._line.txt"));
            zip.closeEntry();
        }
        return file;
    }

    @Test
    void aZipNeedsNoMoreThanTitleZoneAndLines() throws IOException {
        var brought = done(site.bringIn(zipped(
                "series.properties", "title = Low Water\nzone = UTC\n",
                "07-night-ferry/line.txt", "bar 1\n1-4 E5\n",
                "02-slow/notes.md", "no lesson: no line\n",
                "old-one/episode.properties", "title = Old One\nlevel = beginner\n")));
        var lessons = site.lessons(brought.series());
        assertThat(lessons).extracting(Episode::title).containsExactly("Old One", "Night ferry");
        assertThat(lessons).extracting(Episode::number).containsExactly(1, 7);
        assertThat(brought.series().slug().value()).isEqualTo("low-water");
        var ferry = site.parts
                .desk()
                .draft(site.owner, lessons.get(1).id())
                .orElseThrow()
                .document();
        assertThat(ferry.mainLine().text()).isEqualTo("bar 1\n1-4 E5\n");
        assertThat(ferry.rights().clearance()).isEqualTo(Clearance.OPEN);
    }

    @Test
    void aTextThatIsNotUtf8IsNamedAndTheOthersComeIn() throws IOException {
        var brought = done(site.bringIn(zipped(
                "series.properties", "title = Low Water\nzone = UTC\n",
                "01-one/line.txt", "bar 1\n1-4 E5\n",
                "01-one/notes.md", "\u00fcber\n",
                "02-two/line.txt", "bar 1\n1-4 E5\n")));
        assertThat(brought.lessons()).isEqualTo(1);
        assertThat(brought.findings()).hasSize(2);
        assertThat(brought.findings()).first().satisfies(finding -> {
            assertThat(finding.what().key()).isEqualTo("archive.passed-over");
            assertThat(finding.what().args()).containsExactly(1);
        });
        assertThat(brought.findings()).last().satisfies(finding -> {
            assertThat(finding.where()).isEqualTo("01-one/notes.md");
            assertThat(finding.what().key()).isEqualTo("archive.problem.utf-8");
        });
    }

    @Test
    void aSeriesWithoutAZoneIsRefused() throws IOException {
        var refused = site.bringIn(zipped("series.properties", "title = Low Water\n", "01-one/line.txt", ""));
        assertThat(refused.problems()).extracting(problem -> problem.key()).containsExactly("catalog.problem.zone");
    }
}
