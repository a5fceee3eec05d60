package groundbass.web.desk.editor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.endsWith;

import groundbass.catalog.episode.Episode;
import groundbass.document.LineSource;
import groundbass.document.WalkthroughEdit;
import groundbass.web.desk.OpenRoom;
import groundbass.web.desk.Studio;
import java.util.List;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class EditorPagesTest {
    /** Fret 58 is on no neck; README.md shows what such a mistake gets. */
    private static final String MISTAKEN = "bar 1\n1-4  E5, E58\n";

    private static final String ENDLESS = "bar 1\n1-4 " + "E5, ".repeat(199) + "E5\n" + "bar = bar 1\n".repeat(240);

    static final Studio studio = new Studio();

    @AfterAll
    static void close() {
        studio.close();
    }

    @Test
    void anEmptyLineShowsHowOneIsWrittenAndNoPicture() {
        String page = page(studio.episode("Blank"), "line");
        assertThat(page).contains("<details class=\"help\" open").doesNotContain("<svg");
    }

    /** A page from before the program was renewed sends its whole form to an address that no longer saves. */
    @ParameterizedTest
    @ValueSource(strings = {"", "/draft", "/look"})
    void whatAnOlderPageSendsIsGivenBack(String way) {
        var episode = studio.episode("From an older page");
        var before = studio.document(episode);
        var answer = studio.form()
                .formParam("version", "3")
                .formParam("mainLine", "bar 1\n1-4  E5  # <b>mine</b>\n")
                .formParam("summary", "")
                .post("/desk/episodes/" + episode.id() + way);
        answer.then().statusCode(410);
        var page = Jsoup.parse(answer.asString());
        assertThat(page.select("textarea").eachText()).containsExactly("3", "bar 1\n1-4  E5  # <b>mine</b>");
        assertThat(page.select("main a.button").eachAttr("href")).containsExactly("/desk/episodes/" + episode.id());
        assertThat(Studio.mistakes(answer.asString())).isEmpty();
        assertThat(studio.document(episode)).isEqualTo(before);
    }

    @Test
    void theMistakeIsToldWithItsPlaceAndTheRestIsDrawn() {
        var episode = studio.episode("Mistaken");
        studio.write(episode, MISTAKEN);
        String page = page(episode, "line");
        assertThat(page)
                .contains("Line 2, column 10:", "Fret 58 on string E", "Did you mean", "^^^", "1 mistake")
                .contains("<svg");
        assertThat(Studio.mistakes(page)).isEmpty();
    }

    @Test
    void whatIsTooMuchForAPageIsSavedAndNotDrawn() {
        var episode = studio.episode("Endless");
        OpenRoom.of(studio, episode, "line")
                .type("mainLine", ENDLESS)
                .save()
                .then()
                .statusCode(303);
        String page = page(episode, "line");
        assertThat(page)
                .contains("at most 8,000 notes and 1,000 bars", ENDLESS.strip())
                .doesNotContain("<svg");
        assertThat(Studio.mistakes(page)).isEmpty();
    }

    /** Nothing is drawn, read or told for whom may not ask; 37 kB once took a server's whole heap. */
    @Test
    void whoIsNotSignedInGetsTheTextBackUndrawn() {
        var episode = studio.episode("Nobody's");
        var answer =
                OpenRoom.of(studio, episode, "line").type("mainLine", ENDLESS).send(studio.site.form(), "");
        assertThat(answer.statusCode()).isEqualTo(401);
        assertThat(answer.asString()).contains(ENDLESS.strip()).doesNotContain("<svg");
        assertThat(answer.asString().length()).isLessThan(100_000);
    }

    @Test
    void markupInTheTextIsOnlyText() {
        var episode = studio.episode("<script>x</script>");
        studio.write(episode, "title </svg><script>x</script>\nbar 1\n1-4 \"<b>\" E5\n");
        assertThat(page(episode, "line")).doesNotContain("<script>x", "<b>").contains("&lt;script&gt;");
    }

    @Test
    void theFirstExerciseIsBegunFromAnEmptyRoom() {
        var episode = studio.episode("No exercise");
        assertThat(page(episode, "exercises")).contains("No exercise yet");
        studio.form()
                .post(path(episode) + "/exercises")
                .then()
                .statusCode(303)
                .header("Location", endsWith("/exercises/1"));
        assertThat(studio.document(episode).exercises()).containsExactly(LineSource.EMPTY);
    }

    @Test
    void anExerciseIsSavedBeforeTheNextIsAddedAndEachHasAPage() {
        var episode = studio.episode("With exercises");
        studio.change(episode, edit -> edit.exercises(List.of(LineSource.EMPTY)));
        OpenRoom.of(studio, episode, "exercises/1")
                .type("exerciseName", "Slowly")
                .type("exerciseText", "bar 1\n1-4 E1\n")
                .press("add")
                .then()
                .statusCode(303)
                .header("Location", endsWith("/exercises/2"));
        assertThat(studio.document(episode).exercises())
                .containsExactly(new LineSource("Slowly", "bar 1\n1-4 E1\n"), LineSource.EMPTY);
        var second = Jsoup.parse(page(episode, "exercises/2"));
        assertThat(second.select(".exercise-list a").eachText()).containsExactly("1 Slowly", "Exercise 2");
        assertThat(second.select(".exercise-list [aria-current]").eachText()).containsExactly("Exercise 2");
    }

    /** Lines are counted from the main one, which is 0. */
    @Test
    void anExerciseThatIsRemovedTakesItsWordsAlongAndNoOthers() {
        var episode = studio.episode("One fewer");
        studio.change(episode, edit -> edit.exercises(
                        List.of(new LineSource("", "bar 1\n1-4 E1\n"), new LineSource("", "bar 1\n1-4 E2\n")))
                .walkthroughEdits(List.of(words(0, "Main."), words(1, "First."), words(2, "Second."))));
        OpenRoom.of(studio, episode, "exercises/1")
                .press("remove")
                .then()
                .statusCode(303)
                .header("Location", endsWith("/exercises"));
        var document = studio.document(episode);
        assertThat(document.exercises()).extracting(LineSource::text).containsExactly("bar 1\n1-4 E2\n");
        assertThat(document.walkthroughEdits()).containsExactly(words(0, "Main."), words(1, "Second."));
    }

    private static WalkthroughEdit words(int line, String said) {
        return new WalkthroughEdit(line, "0123456789abcdef..", 1, said);
    }

    private static String page(Episode episode, String way) {
        return studio.browser().get(path(episode) + "/" + way).asString();
    }

    private static String path(Episode episode) {
        return "/desk/episodes/" + episode.id();
    }
}
