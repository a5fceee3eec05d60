package groundbass.web.student;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.download.DownloadState;
import groundbass.audience.statistics.Statistics;
import groundbass.release.FileRole;
import groundbass.store.bucket.BlobBucket;
import groundbass.store.bucket.BucketName;
import groundbass.store.bucket.FileTurns;
import groundbass.store.bucket.ObjectServer;
import groundbass.web.Site;
import groundbass.web.answer.SendfileOffload;
import groundbass.web.answer.SignedAddress;
import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

/** Behind a front server that sends files itself, told in the header that its operator chose (ours). */
class HandOverTest {
    static final Site site = Site.open(config -> config.handingOver(new SendfileOffload("/kept/", "X-Trial-File")));
    static final Shelf shelf = Shelf.fill(site);

    @AfterAll
    static void close() {
        site.close();
    }

    @Test
    void theFrontServerIsToldWhereTheFileLiesAndTheRecordSaysSo() {
        var answer = site.program().get(shelf.file(1, "sheet.pdf"));
        String place = answer.header("X-Trial-File");
        assertThat(place).startsWith("/kept/");
        assertThat(site.data().resolve(place.substring("/kept/".length()))).isRegularFile();
        assertThat(answer.asByteArray()).isEmpty();
        assertThat(answer.header("Content-Disposition")).contains("first-plank-sheet.pdf");
        assertThat(recorded(site, shelf)).containsExactly(DownloadState.HANDED_OVER);
    }

    private static List<DownloadState> recorded(Site site, Shelf shelf) {
        return new Statistics(site.groundbass().database().jdbi())
                .latest(shelf.episode(1).id(), 10).stream()
                        .map(taken -> taken.download().state())
                        .toList();
    }

    /** A reader has the file from the object store, and it is recorded as it is beside a front server. */
    @Test
    void whereFilesLieInABucketTheReaderIsSentThereAndTheRecordSaysSo() throws Exception {
        var bucket = ObjectServer.get().freshBucket();
        var store = URI.create("http://localhost:" + ObjectServer.get().relay().port());
        try (var inBucket = Site.open(config -> config.keptIn(bucket).handingOver(new SignedAddress(store)))) {
            var there = Shelf.fill(inBucket);
            carry(inBucket.data().resolve("files"), bucket);
            String file = there.file(1, "sheet.pdf");
            var answer = inBucket.program().header("Sec-Fetch-Mode", "navigate").get(file);
            assertThat(answer.statusCode()).isEqualTo(302);
            assertThat(recorded(inBucket, there)).containsExactly(DownloadState.HANDED_OVER);
            assertThat(answer.cookies())
                    .as("the mark that joins parts of a download")
                    .isNotEmpty();
            try (var in = URI.create(answer.header("Location")).toURL().openStream()) {
                assertThat(in.readNBytes(5)).isEqualTo("%PDF-".getBytes(StandardCharsets.US_ASCII));
            }
            assertThat(inBucket.program()
                            .header("Sec-Fetch-Mode", "no-cors")
                            .get(file)
                            .statusCode())
                    .as("asked for by a player of a page")
                    .isEqualTo(200);
            assertThat(inBucket.program().get(played(there)).statusCode())
                    .as("by a player whose browser does not say so")
                    .isEqualTo(200);
            assertThat(inBucket.browser().get("/privacy").asString())
                    .contains("another host, to which a download leads");
        }
    }

    private static String played(Shelf shelf) {
        var release = shelf.current(1).id();
        return shelf.releases.files().of(release).stream()
                .filter(file -> file.role() == FileRole.STEM)
                .map(file -> "/play/" + release + "/" + file.name())
                .findFirst()
                .orElseThrow();
    }

    private static void carry(Path folder, BucketName into) throws IOException {
        var bucket = BlobBucket.open(into, new FileTurns(null, false), Clock.systemUTC());
        try (var files = Files.walk(folder)) {
            for (var file : files.filter(Files::isRegularFile).toList()) {
                bucket.put(Files.readAllBytes(file));
            }
        }
    }
}
