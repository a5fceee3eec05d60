package groundbass.web.desk.walkthrough;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.episode.Episode;
import groundbass.document.EpisodeDocument;
import groundbass.document.LineSource;
import groundbass.document.WalkthroughEdit;
import groundbass.web.desk.Studio;
import io.restassured.response.ValidatableResponse;
import io.restassured.specification.RequestSpecification;
import java.util.List;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

class WalkthroughPagesTest {
    private static final String LINE =
            "title Plank\nkey C major\nmeter 4/4\ntempo 60\nstrings E A D G\nstyle finger\n\nbar 1\n1-4 A3\nbar 2\n1-4 D5\n";

    static final Studio studio = new Studio();

    @AfterAll
    static void close() {
        studio.close();
    }

    @Test
    void everyStepCanBeRewordedAndTheWordsReachTheDraft() {
        var episode = written(LINE);
        var page = page(episode);
        assertThat(page.select("textarea[name=said]").eachText())
                .contains(
                        "Bar 1. Hand in position, index finger at fret 3, one finger per fret. With the plucking hand, alternate index and middle finger unless something else is said. Beats 1 to 4: play C (A string, fret 3), for four beats.");
        save(episode, page, "Bar 1.", "Let the low C ring.").statusCode(303);
        assertThat(document(episode).walkthroughEdits())
                .extracting(WalkthroughEdit::sentence)
                .containsExactly("Let the low C ring.");
        assertThat(page(episode).text())
                .contains(
                        "The program says: Bar 1. Hand in position, index finger at fret 3, one finger per fret. With the plucking hand");
        assertThat(Studio.mistakes(page(episode).outerHtml())).isEmpty();
    }

    @Test
    void wordsMoveWithTheirNotesAndAreToldWhenTheirNotesChange() {
        var episode = written(LINE);
        save(episode, page(episode), "Bar 2:", "Up to the G.");
        line(episode, LINE.replace("bar 1\n", "bar 1\n1-4 E0\nbar 2\n").replace("bar 2\n1-4 D5", "bar 3\n1-4 D5"));
        assertThat(page(episode).select(".is-edited textarea").eachText()).containsExactly("Up to the G.");
        line(episode, LINE.replace("D5", "D7"));
        var changed = page(episode);
        assertThat(changed.text()).contains("Words whose notes changed");
        assertThat(changed.select(".problems textarea").eachText()).containsExactly("Up to the G.");
        save(episode, changed, "Bar 1.", "Still here.");
        assertThat(document(episode).walkthroughEdits()).hasSize(2);
    }

    /** The line is written in another room; words of notes that are gone are kept, and asked about. */
    @Test
    void wordsTypedWhileTheLineChangesElsewhereAreKept() {
        var episode = written(LINE);
        var old = page(episode);
        line(episode, LINE.replace("D5", "D7"));
        save(episode, old, "Bar 2:", "My words.").statusCode(303);
        assertThat(document(episode).mainLine().text()).contains("D7");
        assertThat(page(episode).select(".problems textarea").eachText()).containsExactly("My words.");
    }

    /** A step keeps the id of its field while other bars come and go, so that a browser's copy finds it again. */
    @Test
    void aFieldIsNamedAfterWhatItsStepTells() {
        var episode = written(LINE);
        String id = field(page(episode), "Bar 2:");
        line(episode, LINE.replace("bar 1\n", "bar 1\n1-4 E0\nbar 2\n").replace("bar 2\n1-4 D5", "bar 3\n1-4 D5"));
        assertThat(field(page(episode), "Bar 3:")).isEqualTo(id);
    }

    private static String field(Document page, String step) {
        return page.select("textarea[name=said]").stream()
                .filter(field -> field.wholeText().startsWith(step))
                .findFirst()
                .orElseThrow()
                .id();
    }

    @Test
    void thePrompterShowsTheWordsAsTheyAreSaid() {
        var episode = written(LINE);
        save(episode, page(episode), "Bar 1.", "Let the low C ring.");
        String prompter = studio.browser()
                .get(path(episode).replace("walkthrough", "prompter"))
                .asString();
        assertThat(Jsoup.parse(prompter).select("#prompter-text p").eachText())
                .contains("Let the low C ring.")
                .noneMatch(text -> text.contains("play C"));
        assertThat(Studio.mistakes(prompter)).isEmpty();
    }

    @Test
    void thePrompterShowsTheScriptInItsParagraphsAndCaptionsOneByOne() {
        var episode = written(LINE);
        assertThat(script(episode, "")).containsExactly("Nothing is written in the script yet.");
        assertThat(script(episode, "Hello.\r\nToday one line.\r\n\r\nFirst <slowly>."))
                .containsExactly("Hello. Today one line.", "First <slowly>.");
        String captions = "WEBVTT\n\n00:01.000 --> 00:02.000\nHello.\n\n00:02.000 --> 00:03.000\nOne line.\n";
        assertThat(script(episode, captions)).containsExactly("Hello.", "One line.");
    }

    private static List<String> script(Episode episode, String script) {
        studio.change(episode, edit -> edit.script(script));
        String page = studio.browser()
                .get(path(episode).replace("walkthrough", "prompter/script"))
                .asString();
        assertThat(Studio.mistakes(page)).isEmpty();
        return Jsoup.parse(page).select("#prompter-text p").eachText();
    }

    private static ValidatableResponse save(Episode episode, Document page, String step, String words) {
        return fields(studio.form(), page, step, words).post(path(episode)).then();
    }

    /** The fields of the page as a browser would send them, with other words for one step. */
    private static RequestSpecification fields(RequestSpecification form, Document page, String step, String words) {
        for (var field : page.select("form[action$=walkthrough] [name]")) {
            String value = field.tagName().equals("textarea") ? field.wholeText() : field.val();
            form.formParam(
                    field.attr("name"),
                    value.startsWith(step) && field.attr("name").equals("said") ? words : value);
        }
        return form;
    }

    private static Episode written(String line) {
        var episode = studio.episode("Plank");
        line(episode, line);
        return episode;
    }

    private static void line(Episode episode, String line) {
        studio.change(episode, edit -> edit.mainLine(new LineSource("", line)));
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
        return "/desk/episodes/" + episode.id().value() + "/walkthrough";
    }
}
