package groundbass.web.desk;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.ColorScheme;
import groundbass.audience.news.Ask;
import groundbass.audience.news.AskedOn;
import groundbass.audience.news.NewsReaders;
import groundbass.audience.student.Person;
import groundbass.audience.student.Students;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.episode.Episode;
import groundbass.document.LineSource;
import groundbass.post.EmailAddress;
import groundbass.post.Outbox;
import groundbass.release.Releases;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Locale;
import java.util.function.BooleanSupplier;
import java.util.stream.IntStream;
import org.jdbi.v3.core.Jdbi;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** An educator fills eight weeks at the desk and goes away; the clock is moved; what students have and are told is counted. */
@Tag("browser")
class EightWeeksPathTest {
    private static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");
    private static final EmailAddress ANNA = new EmailAddress("anna@reader.example");
    private static final EmailAddress BERT = new EmailAddress("bert@reader.example");
    private static final int WEEKS = 8;

    /** Milliseconds in which the desk's work comes round and a build is done. */
    private static final double PATIENCE = 120_000;

    @RegisterExtension
    static final DeskVisit desk = new DeskVisit();

    @Test
    void eightWeeksGoOutByThemselvesAreToldOnceOneIsCorrectedAndOneTakenBack() {
        var first = Instant.parse("2026-02-11T16:00:00Z"); // a Wednesday, five in the afternoon in Vienna
        var lessons = IntStream.rangeClosed(1, WEEKS)
                .mapToObj(week -> desk.written("Week " + week, Studio.LINE))
                .toList();
        agree(ANNA);
        agree(BERT);
        fill(desk.signedIn(1280, ColorScheme.LIGHT), first);
        var visitor = desk.reader(390, ColorScheme.LIGHT);
        for (int week = 0; week < WEEKS; week++) {
            studio().site.clock().set(first.plus(Duration.ofDays(7L * week)).toString());
            int out = week + 1;
            waitFor(visitor, () -> subjects(ANNA).size() == out);
            assertThat(lessons.stream().filter(lesson -> now(lesson).isPublished()))
                    .hasSize(out);
        }
        var told = IntStream.rangeClosed(1, WEEKS)
                .mapToObj(week -> "New in Low Tide: Week " + week)
                .toList();
        assertThat(subjects(ANNA)).containsExactlyElementsOf(told);
        assertThat(subjects(BERT)).containsExactlyElementsOf(told);

        var page = desk.signedInAgain(1280, ColorScheme.LIGHT);
        takes(ANNA, lessons.get(1));
        correct(page, lessons.get(1));
        assertThat(subjects(ANNA)).contains("Corrected: Week 2 (Low Tide)").hasSize(WEEKS + 1);
        assertThat(subjects(BERT)).containsExactlyElementsOf(told);

        takeBack(page, lessons.get(4));
        visitor.navigate(desk.address() + "/series/" + studio().series.slug());
        assertThat(visitor.locator(".card h3"))
                .hasText(new String[] {"Week 1", "Week 2", "Week 3", "Week 4", "Week 6", "Week 7", "Week 8"});
        var gone =
                visitor.navigate(desk.address() + "/series/" + studio().series.slug() + "/5");
        assertThat(gone.status()).as("Gone, RFC 9110 section 15.5.11").isEqualTo(410);
        assertThat(visitor.locator("main")).containsText("Asked by its owner.");
    }

    private static Studio studio() {
        return desk.studio();
    }

    private static Jdbi jdbi() {
        return studio().site.groundbass().database().jdbi();
    }

    private static Episode now(Episode episode) {
        return studio().now(episode);
    }

    /** The rhythm of the series, and then each lesson takes the hour that it is proposed for. */
    private static void fill(Page page, Instant first) {
        page.navigate(desk.address() + "/desk/series/" + studio().series.id() + "/rhythm");
        page.fill("[name=first]", first.atZone(VIENNA).toLocalDate().toString());
        page.fill("[name=time]", "17:00");
        page.locator("main form button[type=submit]").first().click();
        page.navigate(desk.address() + "/desk/weeks");
        for (int week = 0; week < WEEKS; week++) {
            page.locator(".week-free form[action='/desk/weeks/promise'] button")
                    .first()
                    .click();
            assertThat(page.locator(".week-lesson")).hasCount(week + 1);
        }
        waitFor(
                page,
                () -> jdbi().withHandle(handle -> handle.createQuery(
                                        "select count(*) from release where state = 'ready'")
                                .mapTo(Integer.class)
                                .one())
                        == WEEKS);
    }

    private static void waitFor(Page page, BooleanSupplier condition) {
        page.waitForCondition(condition, new Page.WaitForConditionOptions().setTimeout(PATIENCE));
    }

    private static void agree(EmailAddress email) {
        new NewsReaders(jdbi(), studio().site.clock())
                .agree(new Ask(studio().series.id(), email, Locale.ENGLISH, "Yes.", AskedOn.ACCOUNT));
    }

    private static List<String> subjects(EmailAddress email) {
        return new Outbox(jdbi(), studio().site.clock())
                .to(email).stream()
                        .map(letter -> letter.message().subject())
                        .sorted()
                        .toList();
    }

    /** As a student who is signed in takes the sheet home. */
    private static void takes(EmailAddress email, Episode lesson) {
        var site = studio().site;
        var students =
                new Students(jdbi(), new Outbox(jdbi(), site.clock()), new Audit(jdbi(), site.clock()), site.clock());
        var id = jdbi().inTransaction(handle -> students.create(handle, email, Locale.ENGLISH))
                .id();
        var release = new Releases(jdbi()).current(lesson.id()).orElseThrow().id();
        site.browser()
                .cookie(site.signedIn(new Person.OfStudent(id)))
                .get("/files/" + release + "/sheet.pdf")
                .then()
                .statusCode(200);
    }

    private static void correct(Page page, Episode lesson) {
        studio().change(lesson, edit -> edit.mainLine(new LineSource("", Studio.LINE.replace("E5", "E7"))));
        page.navigate(desk.address() + DeskVisit.path(lesson) + "/publish");
        page.fill("#note", "Bar 1 is at the seventh fret.");
        page.locator("#byLetter").check();
        press(page, "Publish the correction");
        waitFor(page, () -> subjects(ANNA).size() > WEEKS);
    }

    private static void takeBack(Page page, Episode lesson) {
        page.navigate(desk.address() + DeskVisit.path(lesson) + "/publish");
        page.click("#rarely > summary");
        page.locator("#rarely details summary")
                .filter(new Locator.FilterOptions().setHasText("Take it back"))
                .click();
        page.fill("#why", "Asked by its owner.");
        press(page, "Take it back from students");
    }

    private static void press(Page page, String name) {
        page.getByRole(AriaRole.BUTTON, new Page.GetByRoleOptions().setName(name))
                .click();
    }
}
