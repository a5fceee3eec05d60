package groundbass.web.desk.editor;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.episode.Episode;
import groundbass.document.LineSource;
import groundbass.linetext.LineText;
import groundbass.musicxml.MusicXmlFile;
import groundbass.web.desk.Studio;
import io.restassured.response.Response;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

/** A file becomes a lesson's line: shown first, taken when the educator says so, and what stood there is kept. */
class BringInTest {
    private static final String LINE = "title Slack Water\n\nbar 1\n1-4 E0, E3\n";
    private static final byte[] FILE = MusicXmlFile.of(LineText.read(LINE).line());

    static final Studio studio = new Studio();

    @AfterAll
    static void close() {
        studio.close();
    }

    private static String path(Episode episode) {
        return "/desk/episodes/" + episode.id() + "/line/bring";
    }

    private static Response send(Episode episode, byte[] file) {
        return studio.form()
                .contentType("multipart/form-data")
                .multiPart("file", "slack.musicxml", file, "application/vnd.recordare.musicxml+xml")
                .post(path(episode));
    }

    private static Document page(Response response) {
        return Jsoup.parse(response.asString());
    }

    private static Response take(Episode episode, Document page) {
        return studio.form()
                .formParam("base", page.select("input[name=base]").val())
                .formParam("mainLine", page.select("textarea[name=mainLine]").val())
                .post(path(episode) + "/take");
    }

    private static List<String> revisions(Episode episode) {
        return studio.site.groundbass().database().jdbi().withHandle(handle -> handle.createQuery(
                        "select note from revision where episode_id = :episode")
                .bind("episode", episode.id().toString())
                .mapTo(String.class)
                .list());
    }

    @Test
    void theWayThereIsOpenFromTheLineAndFromANewLesson() {
        var episode = studio.episode("Slack water");
        var room =
                studio.browser().get("/desk/episodes/" + episode.id() + "/line").asString();
        assertThat(Jsoup.parse(room).select("a[href=" + path(episode) + "]")).hasSize(1);
        var answer = studio.browser().get(path(episode));
        answer.then().statusCode(200);
        assertThat(Studio.mistakes(answer.asString())).isEmpty();
        var begun = studio.form()
                .formParam("title", "From a file")
                .formParam("then", "bring")
                .post("/desk/series/" + studio.series.id() + "/episodes");
        assertThat(begun.getHeader("Location")).endsWith("/line/bring");
    }

    @Test
    void nothingIsReplacedBeforeItIsAccepted() {
        var episode = studio.episode("Slack water");
        studio.write(episode, Studio.LINE);
        var answer = send(episode, FILE);
        answer.then().statusCode(200);
        var page = page(answer);
        assertThat(Studio.mistakes(answer.asString())).isEmpty();
        assertThat(page.select("figure svg")).isNotEmpty();
        assertThat(studio.document(episode).mainLine().text()).isEqualTo(Studio.LINE);
        take(episode, page).then().statusCode(303);
        assertThat(LineText.read(studio.document(episode).mainLine().text()).line())
                .isEqualTo(LineText.read(LINE).line());
        assertThat(revisions(episode)).containsExactly("Before a file was brought in");
    }

    /** A lesson that is half done could not go out, and its line is kept all the same. */
    @Test
    void theLineOfAHalfDoneLessonIsKeptToo() {
        var episode = studio.episode("Slack water");
        studio.write(episode, Studio.LINE);
        studio.change(episode, edit -> edit.exercises(List.of(new LineSource("", ""))));
        take(episode, page(send(episode, FILE))).then().statusCode(303);
        assertThat(LineText.read(studio.document(episode).mainLine().text()).line())
                .isEqualTo(LineText.read(LINE).line());
        assertThat(revisions(episode)).containsExactly("Before a file was brought in");
    }

    @Test
    void whatAnotherWindowWroteMeanwhileIsShownBesideIt() {
        var episode = studio.episode("Slack water");
        var page = page(send(episode, FILE));
        studio.write(episode, Studio.LINE);
        var answer = take(episode, page);
        answer.then().statusCode(409);
        assertThat(answer.asString()).contains("A5*2");
        assertThat(studio.document(episode).mainLine().text()).isEqualTo(Studio.LINE);
    }

    @Test
    void whatCannotBeReadIsToldAtTheField() {
        var episode = studio.episode("Slack water");
        var answer = send(episode, "just words".getBytes(StandardCharsets.UTF_8));
        answer.then().statusCode(422);
        assertThat(page(answer).select("#file-problem").text())
                .startsWith("This is neither a MusicXML nor a MIDI file");
        assertThat(Studio.mistakes(answer.asString())).isEmpty();
        studio.form()
                .contentType("multipart/form-data")
                .multiPart("other", "x")
                .post(path(episode))
                .then()
                .statusCode(422);
    }

    @Test
    void aLessonOfSomebodyElseIsNotThere() {
        send(studio.strangersEpisode, FILE).then().statusCode(404);
        studio.browser().get(path(studio.strangersEpisode)).then().statusCode(404);
    }
}
