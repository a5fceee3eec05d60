package groundbass.web.student;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;

import groundbass.audience.statistics.Statistics;
import groundbass.audience.student.Person;
import groundbass.catalog.educator.TrialEducators;
import groundbass.release.ReleaseId;
import groundbass.release.play.ExactStems;
import groundbass.web.Html;
import groundbass.web.Site;
import io.restassured.http.Cookie;
import java.time.Duration;
import java.util.List;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Element;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A lesson that is built and not out: seen by its educator and by whom they give a link, and by nobody else. */
class PreviewTest {
    static final Site site = Site.open();
    static final Shelf shelf = Shelf.fill(site);
    static ReleaseId release;
    static Cookie desk;

    @BeforeAll
    static void build() {
        release = shelf.release(3, "Not out yet.", false);
        desk = site.atTheDesk();
    }

    @AfterAll
    static void close() {
        site.close();
    }

    @Test
    void itsEducatorSeesThePageWithEverySheetAndSound() {
        var answer = site.browser().cookie(desk).get("/preview/" + release);
        answer.then()
                .statusCode(200)
                .header("Cache-Control", equalTo("no-store"))
                .header("X-Robots-Tag", containsString("noindex"))
                .body(containsString(Shelf.DRAFT_TITLE), containsString("Only you see this page"));
        assertThat(Html.mistakes(answer.asString().replace(" font-variant=\"lining-nums\"", "")))
                .isEmpty();
        var links = Jsoup.parse(answer.asString()).select("a[href*=/files/], audio[src], [data-manifest]").stream()
                .map(one -> one.hasAttr("href")
                        ? one.attr("href")
                        : one.hasAttr("src") ? one.attr("src") : one.attr("data-manifest"))
                .distinct()
                .toList();
        assertThat(links).hasSizeGreaterThan(10).allMatch(link -> link.startsWith("/preview/" + release + "/"));
        // the last for a browser that cannot decode what the page names
        var exact = "/preview/" + release + "/play/" + ExactStems.manifest("line", 100);
        for (String link : Stream.concat(links.stream(), Stream.of(exact)).toList()) {
            site.program()
                    .cookie(desk)
                    .get(link)
                    .then()
                    .statusCode(200)
                    .header("Cache-Control", equalTo("private, no-store"))
                    .header("X-Robots-Tag", containsString("noindex"));
        }
        assertThat(counted()).as("no look is a download").isZero();
    }

    /** What is seen before is what is seen afterwards: the same page but for the note above and the addresses of files. */
    @Test
    void itIsThePageThatStudentsGet() {
        var out = shelf.current(2).id();
        String preview =
                lesson(site.browser().cookie(desk).get("/preview/" + out).asString());
        String shown = lesson(site.browser()
                .cookie(desk)
                .get("/series/" + Shelf.SERIES + "/2")
                .asString());
        assertThat(preview.replace("/preview/" + out + "/files/", "/files/" + out + "/")
                        .replace("/preview/" + out + "/play/", "/play/" + out + "/"))
                .isEqualTo(shown);
    }

    /**
     * Without what remembers a reader's practice, keeps the lesson on a device, asks who teaches, or draws anew for a music
     * stand: of a lesson that may change nothing is remembered, kept or asked, and only what is out is drawn for any width.
     */
    private static String lesson(String page) {
        var article = Jsoup.parse(page).select("article.episode");
        assertThat(article).hasSize(1);
        article.select(".for-me").remove();
        article.select("form.track-form").remove(); // a track is made for what is out
        article.removeAttr("data-sitting"); // what is done in a preview counts as nothing
        article.select("a[href$=/ask], a[href$=/rights-problem]").parents().select("p").stream()
                .filter(paragraph -> !paragraph
                        .select("a[href$=/ask], a[href$=/rights-problem]")
                        .isEmpty())
                .forEach(Element::remove);
        article.select("[data-fitted]").removeAttr("data-fitted");
        return article.outerHtml().replaceAll("\\s+", " ").replace("> <", "><"); // what was removed leaves its blanks
    }

    @Test
    void nobodyElseSeesAnyOfIt() {
        var jdbi = site.groundbass().database().jdbi();
        site.clock().advance(Duration.ofMinutes(1));
        var other = TrialEducators.create(
                jdbi, site.clock(), "Other Studio", "other@trial.example", "quartz lantern boat seven");
        var stranger = site.signedIn(new Person.OfEducator(other.id()));
        for (String path : List.of("", "/files/sheet.pdf", "/play/full-100.mp3", "/files/page.json")) {
            site.program().get("/preview/" + release + path).then().statusCode(401);
            site.program()
                    .cookie(stranger)
                    .get("/preview/" + release + path)
                    .then()
                    .statusCode(404);
            site.program().get("/look/" + "x".repeat(43) + path).then().statusCode(404);
        }
        site.program()
                .cookie(desk)
                .get("/preview/" + release + "/files/page.json")
                .then()
                .statusCode(404);
    }

    @Test
    void aPrivateLinkShowsItUntilItEndsOrIsWithdrawn() {
        String first = share("7");
        String second = share("2");
        site.browser()
                .get(first)
                .then()
                .statusCode(200)
                .header("X-Robots-Tag", containsString("noindex"))
                .header("Cache-Control", equalTo("no-store"))
                .body(containsString("private preview"), not(containsString("Make a link")));
        site.program().get(first + "/files/sheet.pdf").then().statusCode(200).header("ETag", startsWith("\""));
        assertThat(counted()).isZero();
        site.clock().advance(Duration.ofDays(2));
        site.browser().get(second).then().statusCode(404);
        site.browser().get(first).then().statusCode(200);

        var open = site.browser().cookie(site.atTheDesk()).get("/preview/" + release);
        open.then().body(containsString("A. Colleague"));
        String withdraw = Jsoup.parse(open.asString())
                .select("form[action$=/withdraw]")
                .first()
                .attr("action");
        site.form().post(withdraw).then().statusCode(401);
        site.form().cookie(site.atTheDesk()).post(withdraw).then().statusCode(303);
        site.browser().get(first).then().statusCode(404);
        site.program().get(first + "/files/sheet.pdf").then().statusCode(404);
        desk = site.atTheDesk();
    }

    @Test
    void ofADraftThatWasThrownAwayNothingIsShown() {
        String link = share("2");
        String manifest = Jsoup.parse(site.browser().get(link).asString())
                .select("[data-manifest]")
                .first()
                .attr("data-manifest");
        var jdbi = site.groundbass().database().jdbi();
        String draft = shelf.episode(3).id().value();
        var paths = List.of(link, link + "/files/sheet.pdf", manifest);
        paths.forEach(path -> site.program().get(path).then().statusCode(200));
        jdbi.useHandle(handle -> handle.execute(
                "update episode set deleted_at = ? where id = ?", site.clock().instant(), draft));
        try {
            paths.forEach(path -> site.program().get(path).then().statusCode(404));
        } finally {
            jdbi.useHandle(handle -> handle.execute("update episode set deleted_at = null where id = ?", draft));
        }
    }

    @Test
    void theLinkIsKeptAsAHash() {
        String path = share("2");
        String token = path.substring(path.lastIndexOf('/') + 1);
        String kept = site.groundbass().database().jdbi().withHandle(handle -> handle.createQuery(
                        "select * from preview_link")
                .mapToMap()
                .list()
                .toString());
        assertThat(kept).contains("A. Colleague").doesNotContain(token);
    }

    private static String share(String days) {
        var answer = site.form()
                .cookie(site.atTheDesk())
                .formParam("reader", "A. Colleague")
                .formParam("days", days)
                .post("/preview/" + release + "/links");
        assertThat(answer.statusCode()).isEqualTo(200);
        String address = Jsoup.parse(answer.asString()).select("#address").val();
        return address.substring(address.indexOf("/look/"));
    }

    private static long counted() {
        return new Statistics(site.groundbass().database().jdbi())
                .ofEpisode(shelf.episode(3).id())
                .files()
                .size();
    }
}
