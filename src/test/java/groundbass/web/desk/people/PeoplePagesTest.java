package groundbass.web.desk.people;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.SiteStanding;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesForm;
import groundbass.catalog.series.SeriesPart;
import groundbass.document.Level;
import groundbass.document.LineSource;
import groundbass.post.EmailAddress;
import groundbass.post.Outbox;
import groundbass.web.Html;
import groundbass.web.Site;
import io.restassured.http.Cookie;
import io.restassured.response.Response;
import java.time.Duration;
import java.util.List;
import java.util.regex.Pattern;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.Test;

/** Ours, all of it: from an invitation to the end of it, as browsers see it. */
class PeoplePagesTest {
    private static final Pattern LINK = Pattern.compile("/desk/invitation/[\\w-]{43}");
    private static final String BEA = "bea@trial.example";

    private static String colleagues(Company company) {
        return "/desk/series/" + company.series.id() + "/colleagues";
    }

    private static Response invite(Company company, String email, SeriesPart part) {
        return company.form(company.owner)
                .formParam("email", email)
                .formParam("part", part.value())
                .post(colleagues(company));
    }

    private static String link(String text) {
        var matcher = LINK.matcher(text);
        assertThat(matcher.find()).as(text).isTrue();
        return matcher.group();
    }

    private static String mailed(Company company, String email) {
        return link(new Outbox(company.jdbi, company.site.clock())
                .to(new EmailAddress(email))
                .get(0)
                .message()
                .text());
    }

    private static Response comeIn(Company company, String link, String name) {
        return company.site
                .form()
                .formParam("name", name)
                .formParam("password", Company.PASSWORD)
                .post(link + "/new");
    }

    private static String conforming(Response page) {
        assertThat(Html.mistakes(page.asString())).isEmpty();
        return Jsoup.parse(page.asString()).text();
    }

    @Test
    void aColleagueIsInvitedByMailWritesAndIsGoneAtTheNextClick() {
        try (var company = new Company(Company::withMail)) {
            var lesson = company.episode("Rope Ladder");
            invite(company, BEA, SeriesPart.EDITOR)
                    .then()
                    .statusCode(303)
                    .header("Location", endsWith(colleagues(company)));
            String page = conforming(company.browser(company.owner).get(colleagues(company)));
            assertThat(page).contains(BEA, "to write in the series", "The link works until");
            String link = mailed(company, BEA);

            for (int i = 0; i < 3; i++) { // as mail scanners do
                assertThat(conforming(company.site.browser().get(link))).contains("Olga Owner", "Low Tide");
            }
            assertThat(company.educators.withEmail(BEA)).isEmpty();
            company.site
                    .browser()
                    .header("Sec-Fetch-Site", "cross-site")
                    .contentType("application/x-www-form-urlencoded")
                    .formParam("name", "Bea")
                    .formParam("password", Company.PASSWORD)
                    .post(link + "/new")
                    .then()
                    .statusCode(403);
            company.site
                    .form()
                    .formParam("name", "Bea")
                    .formParam("password", "password1234")
                    .post(link + "/new")
                    .then()
                    .statusCode(422)
                    .body(containsString("password-problem"), containsString("value=\"Bea\""));
            var in = comeIn(company, link, "Bea");
            in.then().statusCode(303).header("Location", endsWith("/desk"));
            comeIn(company, link, "Bea").then().statusCode(410);
            assertThat(conforming(company.site.browser().get(link))).contains("does not work any more");

            var bea = new Cookie.Builder("session", in.cookie("session")).build();
            String desk = conforming(company.site.browser().cookie(bea).get("/desk"));
            assertThat(desk)
                    .contains("Low Tide", "A series of Olga Owner", "Rope Ladder")
                    .doesNotContain("E-mails");
            String facts = "/desk/episodes/" + lesson.id() + "/notes";
            company.site
                    .form()
                    .cookie(bea)
                    .formParam("notes", "By Bea.")
                    .formParam("base", "")
                    .post(facts);
            company.site
                    .form()
                    .cookie(bea)
                    .formParam("revisionNote", "first")
                    .post("/desk/episodes/" + lesson.id() + "/revisions")
                    .then()
                    .statusCode(303);
            String who = company.educators.withEmail(BEA).orElseThrow().id().value();
            assertThat(company.site.browser().cookie(bea).get(facts).statusCode())
                    .isEqualTo(200);
            assertThat(conforming(company.browser(company.owner).get(colleagues(company))))
                    .contains("Bea", "Editor");

            company.form(company.owner)
                    .formParam("who", who)
                    .post(colleagues(company) + "/end")
                    .then()
                    .statusCode(303);
            assertThat(company.site.browser().cookie(bea).get(facts).statusCode())
                    .isEqualTo(404);
            assertThat(conforming(company.site.browser().cookie(bea).get("/desk")))
                    .contains("Nothing is shared with you")
                    .doesNotContain("Low Tide");
            String record = conforming(company.browser(company.keeper).get("/desk/audit"));
            assertThat(record).contains("Bea", "Ended somebody’s access to a series", "Invitation accepted");
            assertThat(record).doesNotContain(BEA);
        }
    }

    @Test
    void whoHasADeskSignsInAndAcceptsThere() {
        try (var company = new Company(Company::withMail)) {
            var bea = company.educator("Bea", BEA, true);
            invite(company, BEA, SeriesPart.READER_OF_FIGURES).then().statusCode(303);
            String link = mailed(company, BEA);
            String unknown = "cem@trial.example";
            invite(company, unknown, SeriesPart.READER_OF_FIGURES).then().statusCode(303);
            assertThat(shape(company, mailed(company, unknown), unknown))
                    .as("the page tells nobody whether there is a desk")
                    .isEqualTo(shape(company, link, BEA));
            String list = conforming(company.browser(company.owner).get(colleagues(company)));
            assertThat(list).doesNotContain("Bea ");

            assertThat(company.browser(bea).get(link).asString()).contains("action=\"" + link + "\"");
            company.browser(company.editor)
                    .get(link)
                    .then()
                    .body(containsString("another address"), not(containsString("action=\"" + link + "\"")));
            company.form(company.editor).post(link).then().statusCode(303);
            assertThat(company.catalog.part(bea, company.series.id())).isEmpty();
            company.site.form().post(link).then().statusCode(401);
            company.form(bea).post(link).then().statusCode(303).header("Location", endsWith("/desk"));
            assertThat(company.catalog.part(bea, company.series.id())).contains(SeriesPart.READER_OF_FIGURES);

            invite(company, BEA, SeriesPart.EDITOR);
            var offer = Jsoup.parse(company.browser(bea).get("/desk").asString())
                    .select("form[action$=accept]")
                    .attr("action");
            company.form(company.editor).post(offer).then().statusCode(404);
            company.form(bea).post(offer).then().statusCode(303);
            assertThat(company.catalog.part(bea, company.series.id())).contains(SeriesPart.EDITOR);
        }
    }

    /** The page behind a link, as nobody in particular sees it, without what names the reader. */
    private static String shape(Company company, String link, String email) {
        return company.site
                .browser()
                .get(link)
                .asString()
                .replace(link.substring(17), "LINK")
                .replace(email, "EMAIL");
    }

    @Test
    void withoutMailTheLinkIsShownOnce() {
        try (var company = new Company()) {
            var shown = invite(company, BEA, SeriesPart.EDITOR);
            shown.then().statusCode(200).header("Cache-Control", "no-store");
            String link = link(conforming(shown).isEmpty() ? "" : shown.asString());
            assertThat(new Outbox(company.jdbi, company.site.clock()).newest(5)).isEmpty();
            assertThat(company.browser(company.owner).get(colleagues(company)).asString())
                    .doesNotContain(link);
            String again = Jsoup.parse(company.browser(company.owner)
                            .get(colleagues(company))
                            .asString())
                    .select("form[action$=again]")
                    .attr("action");
            company.form(company.editor).post(again).then().statusCode(404);
            String second = link(company.form(company.owner).post(again).asString());
            comeIn(company, link, "Bea").then().statusCode(410);
            company.site.clock().advance(Duration.ofDays(7));
            comeIn(company, second, "Bea").then().statusCode(410);
            String over = Jsoup.parse(company.browser(company.owner)
                            .get(colleagues(company))
                            .asString())
                    .select("form[action$=withdraw]")
                    .attr("action");
            company.form(company.owner).post(over).then().statusCode(303);
            assertThat(conforming(company.browser(company.owner).get(colleagues(company))))
                    .contains("None.");
        }
    }

    @Test
    void aMistypedAddressComesBackAndInvitationsAreLimited() {
        try (var company = new Company(Company::withMail)) {
            invite(company, "bea at trial", SeriesPart.EDITOR)
                    .then()
                    .statusCode(422)
                    .body(containsString("bea at trial"), containsString("email-problem"));
            invite(company, "olga@trial.example", SeriesPart.EDITOR)
                    .then()
                    .statusCode(422)
                    .body(containsString("your own address"));
            for (int i = 0; i < 20; i++) {
                invite(company, "bea" + i + "@trial.example", SeriesPart.EDITOR)
                        .then()
                        .statusCode(303);
            }
            invite(company, BEA, SeriesPart.EDITOR).then().statusCode(429);
        }
    }

    @Test
    void whoReadsTheFiguresSeesNobodysAddress() {
        try (var company = new Company()) {
            var lesson = company.episode("Rope Ladder");
            company.jdbi.useTransaction(
                    handle -> new Episodes(company.jdbi).markPublished(handle, lesson.id(), Site.START));
            company.episode("Not yet to be seen");
            company.jdbi.useHandle(handle -> {
                handle.execute("insert into student (id, email, locale, created_at) values ('student000000001',"
                        + " 'learner@example.org', 'en', current_timestamp)");
                handle.execute(
                        "insert into download (id, release_id, episode_id, file_name, file_size, student_id, started_at,"
                                + " touched_at, state, covered, bytes_sent, robot, repeated) values"
                                + " ('download00000001', 'r', ?, 'sheet.pdf', 10, 'student000000001',"
                                + " current_timestamp, current_timestamp, 'complete', '0-10', 10, false, false)",
                        lesson.id());
            });
            var pages = List.of(
                    "/desk",
                    "/desk/statistics",
                    "/desk/statistics/episodes/" + lesson.id(),
                    "/desk/statistics/students",
                    "/desk/statistics/students.csv",
                    "/desk/statistics/episodes.csv",
                    "/desk/questions",
                    "/desk/weeks",
                    "/desk/thrown-away",
                    "/desk/audit");
            assertThat(company.browser(company.owner).get(pages.get(2)).asString())
                    .contains("learner@example.org");
            for (EducatorId who : List.of(company.figures, company.editor)) {
                for (String path : pages) {
                    var answer = company.browser(who).get(path);
                    assertThat(answer.statusCode()).as(path).isEqualTo(200);
                    assertThat(answer.asString()).as(path).doesNotContain("learner@example.org");
                }
            }
            for (String path : pages) {
                assertThat(company.browser(company.figures).get(path).asString())
                        .as(path)
                        .doesNotContain("Not yet to be seen");
            }
            assertThat(company.browser(company.figures).get("/desk/statistics").asString())
                    .contains("Rope Ladder");
        }
    }

    @Test
    void twoPeopleInOneLessonDoNotOverwriteEachOtherUnseen() {
        try (var company = new Company()) {
            var lesson = company.episode("Rope Ladder");
            String room = "/desk/episodes/" + lesson.id() + "/notes";
            String base = Jsoup.parse(company.browser(company.owner).get(room).asString())
                    .select("input[name=base]")
                    .val();
            company.form(company.editor)
                    .formParam("notes", "What Edgar wrote.")
                    .formParam("base", base)
                    .post(room)
                    .then()
                    .statusCode(303);
            assertThat(conforming(company.browser(company.owner).get(room)))
                    .contains("What Edgar wrote.", "Saved last by Edgar Editor");
            var met = company.form(company.owner)
                    .formParam("notes", "What Olga wrote.")
                    .formParam("base", base)
                    .post(room);
            met.then().statusCode(409);
            assertThat(conforming(met))
                    .contains("What Edgar wrote.", "What Olga wrote.", "or a colleague", "Saved last by Edgar Editor");
            company.form(company.owner)
                    .formParam("notes", "What Olga wrote.")
                    .formParam("base", base)
                    .post(room + "/draft")
                    .then()
                    .statusCode(409)
                    .body("by", equalTo("Saved last by Edgar Editor"));
            assertThat(company.writing
                            .draft(company.owner, lesson.id())
                            .orElseThrow()
                            .document()
                            .notes())
                    .isEqualTo("What Edgar wrote.");
            // what each types in another room is kept beside it
            Company.done(company.writing.saveDraft(
                    company.owner, lesson.id(), (stored, yours) -> true, before -> before.edit()
                            .mainLine(new LineSource("", "bar 1\n1-4  E5\n"))
                            .done()));
            assertThat(company.writing
                            .draft(company.editor, lesson.id())
                            .orElseThrow()
                            .document()
                            .mainLine()
                            .text())
                    .contains("E5");
            int drafts = company.jdbi.withHandle(handle -> handle.createQuery("select count(*) from draft")
                    .mapTo(Integer.class)
                    .one());
            assertThat(drafts).isEqualTo(1);
            company.form(company.editor)
                    .formParam("revisionNote", "by Edgar")
                    .post("/desk/episodes/" + lesson.id() + "/revisions")
                    .then()
                    .statusCode(303);
            var revisions = company.browser(company.owner).get("/desk/episodes/" + lesson.id() + "/revisions");
            assertThat(Jsoup.parse(revisions.asString()).select(".revisions").text())
                    .contains("Edgar Editor");
        }
    }

    @Test
    void aSeriesIsHandedOverAtTheDesk() {
        try (var company = new Company()) {
            var borrowed = company.form(company.owner)
                    .formParam("who", company.editor.value())
                    .formParam("present", "a guess")
                    .post(colleagues(company) + "/hand-over");
            borrowed.then().statusCode(422);
            conforming(borrowed);
            var again = Jsoup.parse(borrowed.asString());
            assertThat(again.select("#present-hand-problem").text()).contains("not your present password");
            assertThat(again.select("#hand-to option[selected]").val()).isEqualTo(company.editor.value());
            assertThat(company.invitations.to(company.editor)).isEmpty();
            company.form(company.owner)
                    .formParam("who", company.editor.value())
                    .formParam("present", Company.PASSWORD)
                    .post(colleagues(company) + "/hand-over")
                    .then()
                    .statusCode(303);
            assertThat(company.catalog.part(company.editor, company.series.id()))
                    .contains(SeriesPart.EDITOR);
            var offer = Jsoup.parse(company.browser(company.editor).get("/desk").asString());
            assertThat(offer.text()).contains("to take over the series “Low Tide”");
            company.form(company.editor)
                    .post(offer.select("form[action$=accept]").attr("action"))
                    .then()
                    .statusCode(303);
            assertThat(company.catalog.part(company.editor, company.series.id()))
                    .contains(SeriesPart.OWNER);
            assertThat(company.catalog.part(company.owner, company.series.id())).contains(SeriesPart.EDITOR);
            company.browser(company.owner).get(colleagues(company)).then().statusCode(404);
            company.browser(company.editor).get(colleagues(company)).then().statusCode(200);
        }
    }

    @Test
    void theSitesKeeperSeesWhoIsHereAndClosesADesk() {
        try (var company = new Company(Company::withMail)) {
            String page = conforming(company.browser(company.keeper).get("/desk/people"));
            assertThat(page)
                    .contains("Trial Studio", "Keeps the site", "Olga Owner", "Begins series of their own")
                    .contains("Edgar Editor", "Works on what is shared", "Low Tide Editor", "not in the last 90 days");
            company.browser(company.owner)
                    .get("/desk/people")
                    .then()
                    .statusCode(403)
                    .body(containsString("Only the site’s owner does this"));

            var borrowed = company.form(company.keeper)
                    .formParam("who", company.owner.value())
                    .formParam("heir", company.editor.value())
                    .post("/desk/people/end");
            borrowed.then().statusCode(422);
            conforming(borrowed);
            var again = Jsoup.parse(borrowed.asString());
            assertThat(again.select("#present-" + company.owner + "-problem").text())
                    .contains("not your present password");
            assertThat(again.select("details[open] #heir-" + company.owner + " option[selected]")
                            .val())
                    .isEqualTo(company.editor.value());
            assertThat(company.educators.standing(company.owner)).isPresent();
            var refused = company.form(company.keeper)
                    .formParam("who", company.owner.value())
                    .formParam("present", Site.PASSWORD)
                    .post("/desk/people/end");
            refused.then().statusCode(422).body(containsString("Choose who takes them over"));
            conforming(refused);
            var session = company.cookie(company.owner);
            company.form(company.keeper)
                    .formParam("who", company.owner.value())
                    .formParam("heir", company.editor.value())
                    .formParam("present", Site.PASSWORD)
                    .post("/desk/people/end")
                    .then()
                    .statusCode(303);
            assertThat(company.catalog.part(company.editor, company.series.id()))
                    .contains(SeriesPart.OWNER);
            company.site.browser().cookie(session).get("/desk").then().statusCode(303);
            company.site
                    .form()
                    .formParam("email", "olga@trial.example")
                    .formParam("password", Company.PASSWORD)
                    .post("/desk/sign-in")
                    .then()
                    .statusCode(422);

            company.form(company.keeper)
                    .formParam("email", BEA)
                    .post("/desk/people")
                    .then()
                    .statusCode(303);
            comeIn(company, mailed(company, BEA), "Bea").then().statusCode(303);
            var bea = company.educators.withEmail(BEA).orElseThrow().id();
            assertThat(company.educators.standing(bea)).contains(SiteStanding.TEACHER);
            company.browser(bea).get("/desk/series/new").then().statusCode(200);
            company.browser(company.figures)
                    .get("/desk/series/new")
                    .then()
                    .statusCode(403)
                    .body(containsString("what others share with you"));

            company.site.clock().advance(Duration.ofMinutes(1)); // so that it is clear which letter is the newer
            company.form(company.keeper)
                    .formParam("who", bea.value())
                    .post("/desk/people/hand-over")
                    .then()
                    .statusCode(422)
                    .body(containsString("id=\"present-hand-problem\""));
            assertThat(company.invitations.to(bea)).isEmpty();
            company.form(company.keeper)
                    .formParam("who", bea.value())
                    .formParam("present", Site.PASSWORD)
                    .post("/desk/people/hand-over")
                    .then()
                    .statusCode(303);
            company.browser(bea).get("/desk/settings").then().statusCode(403);
            company.form(bea).post(mailed(company, BEA)).then().statusCode(303);
            company.browser(bea).get("/desk/settings").then().statusCode(200);
            company.browser(company.keeper).get("/desk/settings").then().statusCode(403);
        }
    }

    @Test
    void whatIsSharedIsNoPartOfAnotherSeries() {
        try (var company = new Company()) {
            var other = Company.done(
                    company.catalog.create(company.owner, new SeriesForm("Harbour", "", "", "Europe/Vienna")));
            company.browser(company.editor)
                    .get("/desk/series/" + other.id())
                    .then()
                    .statusCode(404);
            assertThat(company.browser(company.editor)
                            .get("/desk/series/" + company.series.id())
                            .asString())
                    .contains("The owner of the series changes this")
                    .doesNotContain("<button type=\"submit\">Save</button>");
            theOwnerReadsWhatWasDoneInIt(company, other);
        }
    }

    /** Colleagues are seen by name, lessons by title; what was done elsewhere is not, and nobody else reads it. */
    private static void theOwnerReadsWhatWasDoneInIt(Company company, Series other) {
        Company.done(company.writing.create(company.editor, company.series.id(), "Sluice Gate", Level.BEGINNER));
        Company.done(company.writing.create(company.owner, other.id(), "Unseen Lesson", Level.BEGINNER));
        String path = "/desk/series/" + company.series.id() + "/record";
        String page = company.browser(company.owner).get(path).asString();
        assertThat(Html.mistakes(page)).isEmpty();
        assertThat(Jsoup.parse(page).select("tbody tr").eachText())
                .anySatisfy(row -> assertThat(row).contains("Edgar Editor", "Sluice Gate"))
                .anySatisfy(row -> assertThat(row).contains("Olga Owner"));
        assertThat(page).doesNotContain("Unseen Lesson");
        assertThat(company.browser(company.owner)
                        .get("/desk/series/" + other.id() + "/record")
                        .asString())
                .contains("Unseen Lesson")
                .doesNotContain("Sluice Gate");
        company.browser(company.editor).get(path).then().statusCode(404);
    }

    @Test
    void whoTypesAnAddressAsTheirOwnIsOfferedNothingThatWasSentToIt() {
        try (var company = new Company(Company::withMail)) {
            invite(company, BEA, SeriesPart.EDITOR).then().statusCode(303);
            var pending = company.invitations.of(company.series.id()).get(0);
            company.form(company.figures)
                    .formParam("name", "Fay Figures")
                    .formParam("email", BEA)
                    .formParam("known", Company.PASSWORD)
                    .post("/desk/account/who")
                    .then()
                    .statusCode(303);
            assertThat(company.educators.withEmail(BEA)).isPresent();
            assertThat(conforming(company.browser(company.figures).get("/desk")))
                    .doesNotContain("to write in the series");
            company.form(company.figures)
                    .post("/desk/invitations/" + pending.id() + "/accept")
                    .then()
                    .statusCode(404);
            assertThat(company.catalog.part(company.figures, company.series.id()))
                    .contains(SeriesPart.READER_OF_FIGURES);
        }
    }
}
