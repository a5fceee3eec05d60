package groundbass.web.desk.script;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;

import groundbass.catalog.episode.Episode;
import groundbass.document.EpisodeDocument;
import groundbass.document.LineSource;
import groundbass.web.desk.OpenRoom;
import groundbass.web.desk.Studio;
import io.restassured.response.Response;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

class ScriptPagesTest {
    private static final String LINE =
            "title Plank\nkey A minor\nmeter 4/4\ntempo 80\nstrings E A D G\nstyle finger\n\n"
                    + "bar 1\n1 2 3 4  A0, A3\nbar 2\n1-2 E5\n3-4 D7 pop\n";

    /** Three of its five statements are wrong by the line above and by the neck (rule: twelve-frets-an-octave). */
    private static final String SCRIPT = "Bar one starts on the open A. The third fret of the A string is a D.\n"
            + "Bar two: the first note is an A, fifth fret of the E string, for a quarter note.\n"
            + "Then on beat three of bar two we hammer the seventh fret of the D string <b>.";

    private static final String CAPTIONS = "WEBVTT\n\n00:01.000 --> 00:04.000\nHello there.\n\n"
            + "00:05.000 --> 00:09.000\nBar one is A and C.\n\nnonsense here\n\n"
            + "01:10.000 --> 01:20.000\nBar two starts on the fifth fret\n\n"
            + "01:20.000 --> 01:30.000\nof the A string.\n";

    static final Studio studio = new Studio();

    @AfterAll
    static void close() {
        studio.close();
    }

    @Test
    void threePlantedContradictionsAreSeenWithWhatWouldBeRight() {
        var episode = written();
        send(episode, SCRIPT, "").then().statusCode(303);
        var page = page(episode);
        assertThat(page.select(".script-wrong > li")).hasSize(3);
        assertThat(page.select(".script-wrong").text())
                .contains(
                        "Fret 3 of the A string is C; D lies at fret 5, 17.",
                        "In bar 2 at count 1 the line has A (E string, fret 5), a half note.",
                        "In bar 2 at count 3 the line has pop A (D string, fret 7).");
        assertThat(page.select("a.said-wrong-words")).isNotEmpty();
        assertThat(page.select(".script-words").text()).contains("<b>.");
        assertThat(page.select(".said-agrees").text()).contains("open A");
        assertThat(page.select(".script-wrong a[href$=#bar-2]")).hasSize(2);
        assertThat(document(episode).script()).isEqualTo(SCRIPT);
        assertThat(Studio.mistakes(page.outerHtml())).isEmpty();
    }

    @Test
    void whatWasSavedCanAlwaysBeOpened() {
        var episode = written();
        String odd = "Play the 41st fret, an E. Then a dead 0 sixteenth.";
        send(episode, odd, "").then().statusCode(303);
        assertThat(page(episode).select(".script-words").text()).contains("41st");
    }

    @Test
    void captionsComeFromAFileAndSuggestChapters() {
        var episode = written();
        file(episode, CAPTIONS.getBytes(UTF_8)).then().statusCode(303);
        var page = page(episode);
        assertThat(page.select(".script-proposed").text()).contains("0:00 Introduction", "0:05 Bar 1", "1:10 Bar 2");
        assertThat(page.select(".problems").text()).contains("Line 9: “nonsense here” is neither a cue nor a note");
        assertThat(page.select(".script-time").eachText()).containsExactly("at 1:10");
        send(episode, CAPTIONS, "", "take").then().statusCode(303);
        assertThat(document(episode).facts().chapters()).isEqualTo("0:00 Introduction\n0:05 Bar 1\n1:10 Bar 2\n");
        String vtt = studio.browser()
                .get(path(episode) + "/chapters.vtt")
                .then()
                .statusCode(200)
                .contentType("text/vtt")
                .extract()
                .asString();
        assertThat(vtt).startsWith("WEBVTT\n\n").endsWith("\n00:01:10.000 --> 00:01:30.000\nBar 2\n");
        studio.browser()
                .get(path(episode) + "/chapters.txt")
                .then()
                .statusCode(200)
                .body(containsString("1:10 Bar 2"));
    }

    @Test
    void aFileThatIsNoTextLosesNothingThatWasTyped() {
        var episode = written();
        studio.form()
                .contentType("multipart/form-data")
                .multiPart("base", base(episode))
                .multiPart("script", "Bar one.")
                .multiPart("chapters", "")
                .multiPart("file", "a.vtt", new byte[] {1, 0, 2}, "text/vtt")
                .post(path(episode))
                .then()
                .statusCode(422)
                .body(containsString("Bar one."), containsString("The file is no text"));
    }

    @Test
    void aScriptThatIsTooLongComesBackWhole() {
        String end = "the very end";
        send(written(), "word ".repeat(90_000) + end, "").then().statusCode(422).body(containsString(end));
    }

    @Test
    void aRowThatIsNoChapterIsToldAndKept() {
        var episode = written();
        send(episode, "", "0:00 Start\nlater\n").then().statusCode(303);
        var page = page(episode);
        assertThat(page.select(".problems").text()).contains("Chapters, row 2");
        assertThat(page.select("#chapters").text()).contains("later");
    }

    @Test
    void nobodyElseSeesAScript() {
        studio.browser().get(path(studio.strangersEpisode)).then().statusCode(404);
    }

    @Test
    void thePageSpeaksGerman() {
        var page = studio.browser()
                .header("Accept-Language", "de")
                .get(path(written()))
                .asString();
        assertThat(page).contains("Was gesagt wird", "Kapitel des Videos");
    }

    private static Response send(Episode episode, String script, String chapters) {
        return send(episode, script, chapters, "check");
    }

    private static Response send(Episode episode, String script, String chapters, String then) {
        return OpenRoom.of(studio, episode, "script")
                .type("script", script)
                .type("chapters", chapters)
                .press(then);
    }

    private static Response file(Episode episode, byte[] bytes) {
        return studio.form()
                .contentType("multipart/form-data")
                .multiPart("base", base(episode))
                .multiPart("script", "")
                .multiPart("chapters", "")
                .multiPart("file", "talk.vtt", bytes, "text/vtt")
                .post(path(episode));
    }

    private static String base(Episode episode) {
        return OpenRoom.of(studio, episode, "script").said("base");
    }

    private static Episode written() {
        var episode = studio.episode("Plank");
        var document =
                document(episode).edit().mainLine(new LineSource("", LINE)).done();
        Studio.done(studio.writing.saveDraft(studio.site.educator(), episode.id(), 0, document));
        return episode;
    }

    private static Document page(Episode episode) {
        return Jsoup.parse(studio.browser().get(path(episode)).asString());
    }

    private static EpisodeDocument document(Episode episode) {
        return studio.writing
                .draft(studio.site.educator(), episode.id())
                .orElseThrow()
                .document();
    }

    private static String path(Episode episode) {
        return "/desk/episodes/" + episode.id().value() + "/script";
    }
}
