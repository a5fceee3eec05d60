package groundbass.web.desk;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.assertions.LocatorAssertions;
import com.microsoft.playwright.assertions.PlaywrightAssertions;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.FilePayload;
import groundbass.catalog.episode.Episode;
import groundbass.document.Clearance;
import groundbass.document.LessonFacts;
import groundbass.document.LessonFacts.CoursePointer;
import groundbass.document.LineSource;
import groundbass.document.Rights;
import groundbass.web.Browser;
import groundbass.web.Looks;
import groundbass.web.desk.sound.TrackPagesTest;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The desk as an educator sees it; pictures by {@link Looks}. */
@Tag("browser")
class DeskLooksTest {
    private static final String SCRIPT = "WEBVTT\n\n00:01.000 --> 00:04.000\nHello, and welcome.\n\n"
            + "00:05.000 --> 00:09.000\nBar one is all there is.\nThe third fret of the A string is a D,\n\n"
            + "00:09.000 --> 00:12.000\nand the fifth fret of the E string is an A.\n";

    /** Milliseconds; a build takes seconds. */
    private static final double TWO_MINUTES = 120_000;

    /** Line, exercises and walkthrough are as long as the music. */
    private static final Set<String> ROOMS_OF_TWO_SCREENS =
            Set.of("LESSON/sound", "LESSON/notes", "LESSON/script", "LESSON/facts", "LESSON/publish");

    /** Of a telephone, in CSS pixels: common practice, no source. */
    private static final int TWO_SCREENS = 2 * 844;

    @RegisterExtension
    static final DeskVisit desk = new DeskVisit();

    private static Studio studio;
    private static Episode written;
    private static Episode begun;

    /** A lesson as a teacher has it: every room has something in it. */
    @BeforeAll
    static void open() {
        studio = desk.studio();
        written = studio.episode("Rope Ladder");
        studio.write(written, Studio.LINE);
        studio.change(written, edit -> edit.exercises(List.of(new LineSource("Slowly", "bar 1\n1-4  E5, E58\n")))
                .notes("## Left hand\n\nRelax.\n\n![Bar one](bars:1)\n" + "Slowly, and evenly.\n\n".repeat(20))
                .script(SCRIPT)
                .summary("One bar that goes up by thirds and comes down by steps, for the first finger.")
                .rights(new Rights(
                        "Quay Studio", "Fingered by Quay Studio.", "Own work of the trial studio.", Clearance.OWN))
                .facts(new LessonFacts(
                        "https://video.example/rope",
                        "A metronome, a capo",
                        List.of(new CoursePointer("Thirds", "https://courses.example/thirds")),
                        "0:00 Start\n")));
        for (String take : List.of("Slow band.wav", "Evening take, without the bass.wav")) {
            studio.form()
                    .contentType("application/octet-stream")
                    .body(TrackPagesTest.wav())
                    .queryParam("name", take)
                    .put(DeskVisit.path(written) + "/tracks")
                    .then()
                    .statusCode(201);
        }
        begun = studio.episode("Night Bridge");
    }

    @ParameterizedTest
    @CsvSource({
        "/desk/sign-in, LIGHT, DARK",
        "/desk, DARK, LIGHT",
        "/desk/series/new, LIGHT, DARK",
        "LESSON/line, LIGHT, DARK",
        "LESSON/exercises/1, DARK, LIGHT",
        "LESSON/sound, LIGHT, DARK",
        "LESSON/notes, DARK, LIGHT",
        "LESSON/walkthrough, LIGHT, DARK",
        "LESSON/script, DARK, LIGHT",
        "LESSON/facts, LIGHT, DARK",
        "LESSON/publish, DARK, LIGHT",
        "/desk/outbox, LIGHT, DARK",
        "/desk/settings, DARK, LIGHT",
        "/desk/account, LIGHT, DARK"
    })
    void pagesFitAndHaveNoBarriers(String path, ColorScheme narrow, ColorScheme wide) {
        var page = desk.signedIn(390, narrow);
        Browser.open(page, address(path.replaceFirst("^LESSON", "/desk/episodes/" + written.id())));
        hasNoBarriers(page, path, 390, narrow);
        if (ROOMS_OF_TWO_SCREENS.contains(path)) {
            assertThat(height(page)).as("pixels of the room on a telephone").isLessThanOrEqualTo(TWO_SCREENS);
        }
        page.evaluate("() => document.querySelectorAll('details').forEach((folded) => folded.open = true)");
        assertThat(Browser.overflow(page))
                .as("pixels wider than a telephone, all unfolded")
                .isZero();
        page.navigate(page.url());
        Browser.turn(page, 1280, wide);
        hasNoBarriers(page, path, 1280, wide);
    }

    /** With all that is still missing told, and in the language whose words are longer. */
    @ParameterizedTest
    @ValueSource(strings = {"en", "de"})
    void theRoomsOfALessonJustBegunAreTwoScreensLong(String language) {
        var page = desk.signedIn(390, ColorScheme.LIGHT);
        if (language.equals("de")) {
            page.navigate(address("/desk"));
            page.click(".languages [lang=de]");
        }
        for (String room : ROOMS_OF_TWO_SCREENS) {
            Browser.open(page, address(room.replaceFirst("^LESSON", "/desk/episodes/" + begun.id())));
            assertThat(page.locator("html").getAttribute("lang")).isEqualTo(language);
            assertThat(height(page)).as("pixels of %s on a telephone", room).isLessThanOrEqualTo(TWO_SCREENS);
        }
    }

    private static int height(Page page) {
        return (int) page.evaluate("() => document.documentElement.scrollHeight");
    }

    private static void hasNoBarriers(Page page, String path, int width, ColorScheme scheme) {
        Looks.keep(page, path, width, scheme);
        assertThat(Browser.overflow(page))
                .as("pixels wider than the screen of " + width)
                .isZero();
        assertThat(Browser.barriers(page)).as("on a screen of " + width).isEmpty();
        assertThat(desk.complaints()).as("the browser's own complaints").isEmpty();
    }

    @Test
    void aMistakeIsToldWhileOneTypesAndGoesWhenItIsMended() {
        var episode = studio.episode("Typed by hand");
        var page = desk.signedIn(1280, ColorScheme.LIGHT);
        page.navigate(address("/desk/episodes/" + episode.id()));
        page.waitForURL("**/line");
        DeskVisit.atWork(page);
        Browser.write(page, "Line text", "bar 1\n1-4  E5, E58\n");
        var remarks = page.locator(".stand-remarks").first();
        PlaywrightAssertions.assertThat(remarks).containsText("Fret 58 on string E");
        PlaywrightAssertions.assertThat(page.locator("#live-said")).hasText("1 mistake");
        page.click(".stand-remarks a");
        assertThat(page.evaluate("() => String(document.querySelector('.line-text').shadowRoot.getSelection())"))
                .isEqualTo("E58");

        page.keyboard().type("E8");
        PlaywrightAssertions.assertThat(page.locator("#live-said")).hasText("No mistakes");
        PlaywrightAssertions.assertThat(remarks).hasText("");
        var sheet = page.locator(".stand-sheet svg").first();
        PlaywrightAssertions.assertThat(sheet).isVisible();
        String before = sheet.innerHTML();
        page.keyboard().press("Control+End");
        page.keyboard().insertText("bar 2\n1-4  A5 slap\n");
        page.click("[data-part='walk'] summary >> nth=0");
        PlaywrightAssertions.assertThat(page.locator("[data-part='walk']").first())
                .containsText(Pattern.compile("slap", Pattern.CASE_INSENSITIVE));
        assertThat(sheet.innerHTML()).isNotEqualTo(before);

        page.click(".bar button >> nth=0");
        PlaywrightAssertions.assertThat(page.locator("#draft-word")).hasText("All saved");
        assertThat(studio.document(episode).mainLine().text()).contains("A5 slap");
    }

    @Test
    void theHourIsExplainedWhileItIsChosen() {
        var ready = studio.episode("Ready to go out");
        studio.write(ready, Studio.LINE);
        var page = desk.signedIn(390, ColorScheme.LIGHT);
        page.navigate(address("/desk/episodes/" + ready.id() + "/publish"));
        assertThat(height(page)).as("pixels of the room on a telephone").isLessThanOrEqualTo(TWO_SCREENS);
        page.click("#hour-zone summary");
        page.fill("#zone", "Europe/Vienna");
        page.fill("#local", "2026-07-03T18:00");
        PlaywrightAssertions.assertThat(page.locator("#live-hour")).containsText("CEST");
    }

    @Test
    void aRecordingIsSentWithoutLeavingThePage() {
        var episode = studio.episode("Sent by script");
        var page = desk.signedIn(390, ColorScheme.DARK);
        page.navigate(address("/desk/episodes/" + episode.id() + "/sound"));
        page.click("#send summary");
        page.setInputFiles("#file", new FilePayload("letter.wav", "audio/wav", "Dear all".getBytes(UTF_8)));
        page.click(".upload button");
        PlaywrightAssertions.assertThat(page.locator("#file-problem")).containsText("no WAV, FLAC or MP3");
        page.setInputFiles("#file", new FilePayload("Slow band.wav", "audio/wav", TrackPagesTest.wav()));
        page.click(".upload button");
        PlaywrightAssertions.assertThat(page.locator("#track-list")).containsText("Slow band.wav: WAV");
        assertThat(page.isChecked("#track-list input[type=checkbox]")).isTrue();
        assertThat(Browser.barriers(page)).isEmpty();
        assertThat(Browser.overflow(page)).isZero();
    }

    @Test
    void aBuildIsFollowedUntilTheLessonIsOut() {
        var episode = studio.episode("Followed");
        studio.write(episode, Studio.LINE);
        studio.form().post("/desk/episodes/" + episode.id() + "/publish");
        var page = desk.signedIn(1280, ColorScheme.LIGHT);
        page.navigate(address("/desk/episodes/" + episode.id() + "/publish"));
        var patience = new LocatorAssertions.ContainsTextOptions().setTimeout(TWO_MINUTES);
        PlaywrightAssertions.assertThat(page.locator("#calendar .standing")).containsText("Out since", patience);
        PlaywrightAssertions.assertThat(page.locator("#publish-head")).hasText("Correct the lesson");
        page.click("#calendar summary");
        PlaywrightAssertions.assertThat(page.locator("#calendar")).containsText("sheet.pdf");
        assertThat(Browser.barriers(page)).isEmpty();
        Looks.keep(page, "out", 1280, ColorScheme.LIGHT);
        page.reload();
        Browser.turn(page, 390, ColorScheme.LIGHT);
        Looks.keep(page, "out", 390, ColorScheme.LIGHT);
        assertThat(height(page)).as("pixels of the room on a telephone").isLessThanOrEqualTo(TWO_SCREENS);
        assertThat(Studio.mistakes(studio.browser()
                        .get("/desk/episodes/" + episode.id() + "/publish")
                        .asString()))
                .isEmpty();
    }

    private static String address(String path) {
        return desk.address() + path;
    }
}
