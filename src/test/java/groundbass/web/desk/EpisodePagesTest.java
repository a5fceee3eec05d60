package groundbass.web.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.not;

import groundbass.catalog.episode.Episode;
import groundbass.document.EpisodeDocument;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.time.Duration;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

public class EpisodePagesTest {
    /** Fret 58 is on no neck; README.md shows what such a mistake gets. */
    private static final String MISTAKEN = "bar 1\n1-4  E5, E58\n";

    static final Studio studio = new Studio();

    @AfterAll
    static void close() {
        studio.close();
    }

    @Test
    void whatIsTypedIsSavedWhole() {
        var episode = studio.episode("Rope Ladder");
        typed(studio.form(), 0, Studio.LINE)
                .formParam("exerciseName", "Slowly")
                .formParam("exerciseText", "bar 1\n1-4 E0\n")
                .formParam("grooveName", "Shuffle")
                .post(path(episode))
                .then()
                .statusCode(303)
                .header("Location", endsWith(path(episode)));
        var document = document(episode);
        assertThat(document.title()).isEqualTo("Rope Ladder, second try");
        assertThat(document.mainLine().text()).isEqualTo(Studio.LINE);
        assertThat(document.exercises()).hasSize(1);
        assertThat(document.exercises().get(0).name()).isEqualTo("Slowly");
        assertThat(document.groove().name()).isEqualTo("Shuffle");
        assertThat(document.rights().statement()).isEqualTo("Own work.");
        assertThat(studio.now(episode).title()).isEqualTo("Rope Ladder, second try");
    }

    @ParameterizedTest
    @ValueSource(strings = {"-3", "0", "seven", "10000"})
    void aNumberThatIsNoneIsToldAsItWasTyped(String number) {
        var episode = studio.episode("Numbered");
        typed(studio.form(), 0, Studio.LINE)
                .formParam("number", number)
                .post(path(episode))
                .then()
                .statusCode(422)
                .body(
                        containsString("value=\"" + number + "\""),
                        containsString("9,999; “"),
                        not(containsString("this is 0")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"trial", "publish", "promise", "withdraw", "exercises", "exercises/0/remove"})
    void theAddressOfAButtonLeadsBackToTheEpisode(String button) {
        var episode = studio.episode("Asked for again");
        studio.browser()
                .redirects()
                .follow(false)
                .get(path(episode) + "/" + button)
                .then()
                .statusCode(303)
                .header("Location", endsWith(path(episode)));
    }

    @Test
    void anEmptyLineShowsHowOneIsWrittenAndNoPicture() {
        String page = studio.browser().get(path(studio.episode("Blank"))).asString();
        assertThat(page).contains("<details class=\"help\" open").doesNotContain("<svg");
    }

    @Test
    void theMistakeIsToldWithItsPlaceAndTheRestIsDrawn() {
        var episode = studio.episode("Mistaken");
        typed(studio.form(), 0, MISTAKEN).post(path(episode));
        String page = studio.browser().get(path(episode)).asString();
        assertThat(page)
                .contains("Line 2, column 10:", "Fret 58 on string E", "Did you mean", "^^^", "1 mistake")
                .contains("<svg");
        assertThat(Studio.mistakes(page)).isEmpty();
    }

    @Test
    void aPreviewSavesNothing() {
        var episode = studio.episode("Only looking");
        typed(studio.form(), 0, Studio.LINE)
                .post(path(episode) + "/preview")
                .then()
                .statusCode(200)
                .body(containsString("<svg"), containsString("id=\"live-mainLine\""), not(containsString("<html")));
        assertThat(document(episode).mainLine().isBlank()).isTrue();
    }

    @Test
    void twoWindowsLoseNothing() {
        var episode = studio.episode("Two windows");
        typed(studio.form(), 0, "bar 1\n1-4 E1\n").post(path(episode)).then().statusCode(303);
        var late = typed(studio.form(), 0, "bar 1\n1-4 E2\n").post(path(episode));
        assertThat(late.statusCode()).isEqualTo(409);
        assertThat(late.asString()).contains("1-4 E1", "1-4 E2", "Saved elsewhere in the meantime");
        assertThat(Studio.mistakes(late.asString())).isEmpty();
        assertThat(document(episode).mainLine().text()).contains("E1");

        typed(studio.form(), 1, "bar 1\n1-4 E2\n").post(path(episode)).then().statusCode(303);
        assertThat(document(episode).mainLine().text()).contains("E2");
    }

    @Test
    void whoseSignInHasRunOutGetsTheTextBackAndSavesItBySigningIn() {
        var episode = studio.episode("Long afternoon");
        var expired = typed(studio.site.form(), 0, Studio.LINE).post(path(episode));
        assertThat(expired.statusCode()).isEqualTo(401);
        assertThat(expired.asString())
                .contains("bar 1 over Am7", "Please sign in again", "Rope Ladder, second try")
                .doesNotContain("Low Tide");
        assertThat(Studio.mistakes(expired.asString())).isEmpty();

        signingIn(episode, "not the password")
                .then()
                .statusCode(401)
                .body(containsString("do not fit together"), containsString("bar 1 over Am7"));
        assertThat(document(episode).mainLine().isBlank()).isTrue();

        var saved = signingIn(episode, "a password for trials");
        assertThat(saved.statusCode()).isEqualTo(303);
        assertThat(saved.cookies()).containsKey("session");
        assertThat(document(episode).mainLine().text()).isEqualTo(Studio.LINE);
    }

    /** Nothing is drawn, read or told for whom may not ask; 37 kB once took a server's whole heap. */
    @ParameterizedTest
    @ValueSource(strings = {"", "/trial", "/publish", "/promise", "/withdraw", "/revisions", "/exercises"})
    void whoIsNotSignedInGetsTheTextBackUndrawn(String button) {
        var episode = studio.episode("Nobody's");
        String heavy = "bar 1\n1-4 " + "E5, ".repeat(199) + "E5\n" + "bar = bar 1\n".repeat(240);
        var answer = typed(studio.site.form(), 0, heavy).post(path(episode) + button);
        assertThat(answer.statusCode()).isEqualTo(401);
        assertThat(answer.asString())
                .contains(heavy.strip(), "Sign in to see the sheet")
                .doesNotContain("<svg");
        assertThat(answer.asString().length()).isLessThan(100_000);
    }

    @Test
    void whatIsTooMuchForAPageIsSavedAndNotDrawn() {
        var episode = studio.episode("Endless");
        String heavy = "bar 1\n1-4 " + "E5, ".repeat(199) + "E5\n" + "bar = bar 1\n".repeat(240);
        typed(studio.form(), 0, heavy).post(path(episode)).then().statusCode(303);
        String page = studio.browser().get(path(episode)).asString();
        assertThat(page)
                .contains("at most 8,000 notes and 1,000 bars", heavy.strip())
                .doesNotContain("<svg");
        assertThat(Studio.mistakes(page)).isEmpty();
        typed(studio.form(), 1, "bar 1\n1-4 E5\n")
                .formParam("exerciseName", "Endless")
                .formParam("exerciseText", heavy)
                .post(path(episode))
                .then()
                .statusCode(303);
        String again = studio.browser().get(path(episode)).asString();
        assertThat(again).contains("<svg", "at most 8,000 notes");
    }

    private static Response signingIn(Episode episode, String password) {
        studio.site.clock().advance(Duration.ofMinutes(15));
        return typed(studio.site.form(), 0, Studio.LINE)
                .formParam("email", "desk@trial.example")
                .formParam("password", password)
                .post(path(episode));
    }

    @Test
    void exercisesComeAndGo() {
        var episode = studio.episode("With exercises");
        typed(studio.form(), 0, Studio.LINE)
                .formParam("exerciseText", "bar 1\n1-4 E1\n")
                .post(path(episode) + "/exercises")
                .then()
                .statusCode(303)
                .header("Location", endsWith("#more"));
        assertThat(document(episode).exercises()).hasSize(2);
        typed(studio.form(), 1, Studio.LINE)
                .formParam("exerciseText", "bar 1\n1-4 E1\n", "bar 1\n1-4 E2\n")
                .post(path(episode) + "/exercises/0/remove")
                .then()
                .statusCode(303);
        assertThat(document(episode).exercises()).hasSize(1);
        assertThat(document(episode).exercises().get(0).text()).contains("E2");
    }

    @Test
    void anotherNumberMovesTheLessonAndAnImpossibleOneIsTold() {
        var first = studio.episode("To be moved");
        var second = studio.episode("Was after it");
        typed(studio.form(), 0, Studio.LINE)
                .formParam("number", String.valueOf(second.number()))
                .post(path(first))
                .then()
                .statusCode(303);
        assertThat(studio.now(first).number()).isEqualTo(second.number());
        typed(studio.form(), 1, "bar 1\n1-4 E9\n")
                .formParam("number", "none")
                .post(path(first))
                .then()
                .statusCode(422)
                .body(containsString("id=\"number-problem\""), containsString("name=\"base\" value=\"2\""));
        assertThat(document(first).mainLine().text()).contains("E9");
    }

    @Test
    void markupInTheTextIsOnlyText() {
        var episode = studio.episode("<script>x</script>");
        typed(studio.form(), 0, "title </svg><script>x</script>\nbar 1\n1-4 \"<b>\" E5\n")
                .post(path(episode));
        String page = studio.browser().get(path(episode)).asString();
        assertThat(page).doesNotContain("<script>x", "<b>").contains("&lt;script&gt;");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "/trial", "/preview", "/exercises", "/publish", "/promise", "/withdraw"})
    void somebodyElsesEpisodeIsNotThere(String action) {
        String theirs = path(studio.strangersEpisode) + action;
        typed(studio.form(), 0, Studio.LINE).post(theirs).then().statusCode(404);
        typed(studio.form(), 0, Studio.LINE)
                .post("/desk/episodes/no-such-id" + action)
                .then()
                .statusCode(404);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "/calendar"})
    void somebodyElsesEpisodeCannotBeRead(String part) {
        studio.browser().get(path(studio.strangersEpisode) + part).then().statusCode(404);
        studio.site.browser().get(path(studio.strangersEpisode) + part).then().statusCode(303);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "/trial", "/preview", "/exercises", "/publish", "/promise", "/withdraw"})
    void noOtherSiteCanSendTheForm(String action) {
        var episode = studio.episode("Not from elsewhere");
        typed(studio.browser(), 0, Studio.LINE)
                .header("Sec-Fetch-Site", "cross-site")
                .post(path(episode) + action)
                .then()
                .statusCode(403);
        assertThat(document(episode).mainLine().isBlank()).isTrue();
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de"})
    void thePageConformsToHtmlAndCarriesItsCautions(String language) {
        var episode = studio.episode("Conforming");
        typed(studio.form(), 0, Studio.LINE)
                .formParam("exerciseText", MISTAKEN)
                .formParam("groove", "no groove at all")
                .post(path(episode));
        String page = studio.browser()
                .header("Accept-Language", language)
                .get(path(episode))
                .asString();
        assertThat(Studio.mistakes(page)).isEmpty();
        String law = language.equals("en") ? "ocal law decides" : "örtliche Recht";
        assertThat(page.split(law, -1)).as("rights, upload, publish").hasSize(4);
    }

    public static RequestSpecification typed(RequestSpecification request, int base, String line) {
        return request.contentType("application/x-www-form-urlencoded; charset=utf-8")
                .formParam("base", base)
                .formParam("title", "Rope Ladder, second try")
                .formParam("level", "advanced")
                .formParam("summary", "Up and down.")
                .formParam("notes", "## Left hand\n\nRelax.")
                .formParam("mainLine", line)
                .formParam("rights.statement", "Own work.")
                .formParam("rights.clearance", "own")
                .formParam("settings.language", "en")
                .formParam("settings.tempos", "60 100");
    }

    private static String path(Episode episode) {
        return "/desk/episodes/" + episode.id();
    }

    private static EpisodeDocument document(Episode episode) {
        return studio.writing
                .draft(studio.site.educator(), episode.id())
                .orElseThrow()
                .document();
    }
}
