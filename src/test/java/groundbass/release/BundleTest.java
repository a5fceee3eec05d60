package groundbass.release;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.episode.RevisionId;
import groundbass.store.BlobFolder;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.List;
import java.util.TimeZone;
import java.util.zip.ZipInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class BundleTest {
    private static final BuildSpec SPEC = new BuildSpec(
            RevisionId.next(),
            1,
            "Low Tide",
            3,
            "low-tide-03-slack-water",
            "https://example.org/e/1",
            LocalDate.parse("2026-03-02"),
            BuildSpec.RENDERERS);

    @TempDir
    Path folder;

    /** ZIP file format (APPNOTE 4.4.6): the time of an entry is local and knows no zone. */
    @Test
    void theSameFilesGiveTheSameBytesWhereverTheServerStands() throws IOException {
        var before = TimeZone.getDefault();
        try {
            byte[] here = zip("Etc/UTC");
            assertThat(zip("Pacific/Auckland")).isEqualTo(here);
            assertThat(zip("America/Los_Angeles")).isEqualTo(here);
        } finally {
            TimeZone.setDefault(before);
        }
    }

    private byte[] zip(String zone) throws IOException {
        TimeZone.setDefault(TimeZone.getTimeZone(zone));
        var blobs = new BlobFolder(folder, Clock.systemUTC());
        var blob = blobs.put("bar 1\n1-4 E0\n".getBytes(StandardCharsets.UTF_8));
        var file = ReleaseFile.of("line.txt", FileRole.LINE_TEXT, "text/plain", blob);
        var out = new ByteArrayOutputStream();
        Bundle.write(SPEC, List.of(file), blobs, out);
        return out.toByteArray();
    }

    @Test
    void eachLessonUnpacksIntoAFolderOfItsOwnDatedAsItsRelease() throws IOException {
        try (var zip = new ZipInputStream(new ByteArrayInputStream(zip("Etc/UTC")))) {
            var entry = zip.getNextEntry();
            assertThat(entry.getName()).isEqualTo("low-tide-03-slack-water/low-tide-03-slack-water-line.txt");
            assertThat(entry.getTimeLocal().toLocalDate()).isEqualTo("2026-03-02");
        }
    }
}
