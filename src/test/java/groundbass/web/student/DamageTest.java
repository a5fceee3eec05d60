package groundbass.web.student;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.identity.Sha256;
import groundbass.release.ReleaseFile;
import groundbass.web.Site;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** One damaged file costs a part of one lesson, and only until it is made again. */
class DamageTest {
    /** The site mends at the same time; it never sends what is damaged, and nothing fails. */
    private static final List<Integer> OUT_OR_BEING_MENDED = List.of(200, 503);

    @Test
    void oneBadFileTakesNothingElseDown() throws IOException {
        try (var site = Site.open()) {
            var shelf = Shelf.fill(site);
            damage(site, shelf, "page.json");
            assertOut(site, "/");
            assertOut(site, "/series/" + Shelf.SERIES);
            assertOut(site, "/series/" + Shelf.SERIES + "/2");
            var lesson = site.browser().get("/series/" + Shelf.SERIES + "/1");
            assertThat(lesson.statusCode()).isIn(OUT_OR_BEING_MENDED);
            assertThat(lesson.asString()).contains("</html>");
        }
    }

    @Test
    void aDamagedFileIsNotSentAsGood() throws IOException {
        try (var site = Site.open()) {
            var shelf = Shelf.fill(site);
            damage(site, shelf, "sheet.pdf");
            Files.delete(place(site, shelf, "line.mid"));
            for (String name : List.of("sheet.pdf", "line.mid")) {
                var answer = site.browser().get(shelf.file(1, name));
                assertThat(answer.statusCode()).as(name).isIn(OUT_OR_BEING_MENDED);
                if (answer.statusCode() == 200) {
                    assertThat(Sha256.of(answer.asByteArray())).isEqualTo(digest(shelf, name));
                }
            }
            assertOut(site, shelf.file(1, "line.txt"));
        }
    }

    @Test
    void aLessonIsReadWithoutADamagedPicture() throws IOException {
        try (var site = Site.open()) {
            var shelf = Shelf.fill(site);
            var pictures = shelf.releases.files().of(shelf.current(1).id()).stream()
                    .map(ReleaseFile::name)
                    .filter(name -> name.endsWith(".svg"))
                    .toList();
            assertThat(pictures).isNotEmpty();
            for (String name : pictures) {
                damage(site, shelf, name);
            }
            assertOut(site, "/series/" + Shelf.SERIES + "/1");
        }
    }

    private static void assertOut(Site site, String path) {
        site.browser().get(path).then().statusCode(200);
    }

    private static void damage(Site site, Shelf shelf, String name) throws IOException {
        Path file = place(site, shelf, name);
        byte[] bytes = Files.readAllBytes(file);
        for (int i = 0; i < bytes.length; i += 2) {
            bytes[i] = 0;
        }
        Files.write(file, bytes);
    }

    private static Sha256 digest(Shelf shelf, String name) {
        return shelf.releases
                .files()
                .named(shelf.current(1).id(), name)
                .orElseThrow()
                .sha256();
    }

    private static Path place(Site site, Shelf shelf, String name) {
        String hex = digest(shelf, name).hex();
        return site.data().resolve("files").resolve(hex.substring(0, 2)).resolve(hex);
    }
}
