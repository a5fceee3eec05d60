package groundbass.web.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;

import groundbass.archive.ArchiveSite;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditEntry;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesForm;
import groundbass.identity.Slug;
import groundbass.release.ReleaseFile;
import groundbass.release.Releases;
import groundbass.web.Site;
import io.restassured.response.Response;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A series is taken along at one desk and brought in at another. */
class ArchivePagesTest {
    private static Site from;
    private static Site to;
    private static Series series;
    private static ArchiveSite origin;

    @BeforeAll
    static void open() throws IOException {
        from = Site.open();
        to = Site.open();
        to.educator();
        origin = new ArchiveSite(
                from.groundbass().database(), from.data().resolve("files"), from.clock(), Optional.of(from.educator()));
        series = origin.series();
        var lesson = origin.write(series, "Rope and Pulley", edit -> edit);
        origin.record(lesson);
        origin.publish(lesson);
        origin.correct(lesson, "One sentence was corrected.");
        origin.write(series, "Being written", edit -> edit);
    }

    @AfterAll
    static void close() {
        from.close();
        to.close();
    }

    private static String way() {
        return "/desk/series/" + series.id() + "/archive";
    }

    private static byte[] archive() {
        return from.form()
                .cookie(from.atTheDesk())
                .post(way())
                .then()
                .statusCode(200)
                .header("Content-Disposition", containsString("low-tide-2026-02-02.zip"))
                .header("Cache-Control", "no-store")
                .extract()
                .asByteArray();
    }

    private static Response bringIn(byte[] zip, String address) {
        return bringIn(to, zip, address);
    }

    private static Response bringIn(Site site, byte[] zip, String address) {
        return site.browser()
                .header("Sec-Fetch-Site", "same-origin")
                .cookie(site.atTheDesk())
                .multiPart("file", "series.zip", zip, "application/zip")
                .multiPart("address", address)
                .post("/desk/bring-in");
    }

    /** What belongs to a site: its address. */
    private static String page(Site site, String path) {
        return site.browser()
                .get(path)
                .then()
                .statusCode(200)
                .extract()
                .asString()
                .replace(site.address(), "[site]");
    }

    @Test
    void pagesAndFilesAreTheSameInTheOtherSite() {
        bringIn(archive(), "").then().statusCode(200).body(containsString("2 lessons were brought in."));
        String address =
                from.browser().get("/e/" + origin.lessons(series).get(0).id()).header("Location");
        assertThat(to.browser()
                        .get("/e/" + origin.lessons(series).get(0).id())
                        .header("Location")
                        .replace(to.address(), ""))
                .isEqualTo(address.replace(from.address(), ""));
        String lesson = address.replace(from.address(), "");
        assertThat(page(from, lesson)).contains("Rope and Pulley", "One sentence was corrected.", "<svg");
        assertThat(page(to, lesson)).isEqualTo(page(from, lesson));
        assertThat(page(to, "/series/low-tide")).isEqualTo(page(from, "/series/low-tide"));

        var releases = new Releases(from.groundbass().database().jdbi());
        var all = releases.of(origin.lessons(series).get(0).id());
        assertThat(all).hasSize(2);
        for (var release : all) {
            for (ReleaseFile file : releases.files().of(release.id())) {
                if (file.role().isOffered()) {
                    String path = "/files/" + release.id() + "/" + file.name();
                    assertThat(to.program().get(path).asByteArray())
                            .as(path)
                            .isNotEmpty()
                            .isEqualTo(from.program().get(path).asByteArray());
                }
            }
        }
        bringIn(archive(), "").then().statusCode(200).body(containsString("left as they are: 2."));
        assertThat(audited(to)).contains("series.imported", "series.brought", "episode.brought");
        assertThat(audited(from)).contains("series.exported");
    }

    private static List<String> audited(Site site) {
        return new Audit(site.groundbass().database().jdbi(), site.clock())
                .latest(200).stream().map(AuditEntry::what).toList();
    }

    @Test
    void whatWasSentIsNotSentAgainForAnotherAddress() throws IOException {
        byte[] written = written("taken-one");
        bringIn(written, "").then().statusCode(200);
        // an archive of another series wants the same address
        origin.parts
                .catalog()
                .create(origin.owner, new SeriesForm("Taken", "taken-one", "", "UTC"))
                .result()
                .orElseThrow();
        var second = origin.parts.catalog().find(new Slug("taken-one")).orElseThrow();
        var refused = bringIn(origin.export(second), "");
        assertThat(refused.statusCode()).isEqualTo(422);
        var page = Jsoup.parse(refused.asString());
        assertThat(page.text()).contains("taken-one-2");
        String kept = page.select("input[name=kept]").attr("value");
        assertThat(kept).hasSize(64);
        to.browser()
                .header("Sec-Fetch-Site", "same-origin")
                .cookie(to.atTheDesk())
                .multiPart("kept", kept)
                .multiPart("address", "taken-one-2")
                .post("/desk/bring-in")
                .then()
                .statusCode(200)
                .body(containsString("No lesson was brought in."));
        assertThat(to.browser().cookie(to.atTheDesk()).get("/desk").asString()).contains("Taken");
    }

    /** Who teaches here may be said in another window meanwhile. */
    @Test
    void whatWasSentIsKeptUntilItIsSaidWhoTeaches() {
        try (var unnamed = Site.open()) {
            unnamed.educator();
            unnamed.groundbass()
                    .database()
                    .jdbi()
                    .useHandle(handle -> handle.execute("delete from setting where name like 'imprint.%'"));
            var refused = bringIn(unnamed, archive(), "");
            assertThat(refused.statusCode()).isEqualTo(422);
            var page = Jsoup.parse(refused.asString());
            assertThat(page.select(".problems").text()).contains("Say first who teaches here");
            assertThat(page.select("input[name=kept]").attr("value")).hasSize(64);
            assertThat(page.select("form .hint").eachText())
                    .isNotEmpty()
                    .noneMatch(hint -> hint.contains("another address"));
        }
    }

    private static byte[] written(String address) throws IOException {
        var out = new ByteArrayOutputStream();
        try (var zip = new ZipOutputStream(out)) {
            zip.putNextEntry(new ZipEntry("series.properties"));
            zip.write(("title = Written\nzone = UTC\nslug = " + address + "\n").getBytes(StandardCharsets.UTF_8));
            zip.closeEntry();
            zip.putNextEntry(new ZipEntry("01-one/line.txt"));
            zip.write("bar 1\n1-4 E5\n".getBytes(StandardCharsets.UTF_8));
            zip.closeEntry();
        }
        return out.toByteArray();
    }

    @Test
    void onlyItsEducatorTakesItAndOnlyFromOurPage() {
        from.browser().get(way()).then().statusCode(303);
        from.browser()
                .header("Sec-Fetch-Site", "cross-site")
                .cookie(from.atTheDesk())
                .contentType("application/x-www-form-urlencoded")
                .post(way())
                .then()
                .statusCode(403);
        from.form()
                .cookie(from.atTheDesk())
                .post("/desk/series/abcdefgh23456789/archive")
                .then()
                .statusCode(404);
        to.browser()
                .header("Sec-Fetch-Site", "cross-site")
                .cookie(to.atTheDesk())
                .multiPart("file", "series.zip", new byte[] {1}, "application/zip")
                .post("/desk/bring-in")
                .then()
                .statusCode(403);
    }

    @Test
    void whatIsNoArchiveIsRefusedInWords() {
        bringIn(new byte[] {1, 2, 3}, "").then().statusCode(422).body(containsString("This is no zip."));
        to.browser().cookie(to.atTheDesk()).get("/desk/bring-in").then().statusCode(200);
        from.browser().cookie(from.atTheDesk()).get(way()).then().statusCode(200);
    }
}
