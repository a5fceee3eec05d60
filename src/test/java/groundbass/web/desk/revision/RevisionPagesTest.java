package groundbass.web.desk.revision;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;

import groundbass.catalog.episode.Episode;
import groundbass.document.LineSource;
import groundbass.web.desk.Studio;
import java.util.List;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RevisionPagesTest {
    static final Studio studio = new Studio();
    private static final String TWO_BARS = "bar 1\n1-4 E5\n\nbar 2\n1-4 E3\n";
    private static final String OTHERWISE = "bar 1\n1-4 E5\n\nbar 2\n1-4 E8\n\nbar 3\n1-4 E1\n";

    @AfterAll
    static void close() {
        studio.close();
    }

    @Test
    void theListSaysWhatEachBroughtAndIsReachedFromEveryRoom() {
        var episode = kept("Listed", TWO_BARS, OTHERWISE);
        var line = page(episode, "/line");
        assertThat(line.select(".room-standing a").eachAttr("href")).contains(path(episode) + "/revisions");
        var page = page(episode, "/revisions");
        assertThat(page.select(".revisions li")).hasSize(2);
        assertThat(page.select(".revisions li").get(0).text())
                .contains("Revision 2", "state 1", "Changed: bar 2: count 1 (pitch); bar 3 is new");
        assertThat(page.select(".revisions li").get(1).text())
                .contains("Revision 1")
                .doesNotContain("Changed");
        assertThat(Studio.mistakes(page.outerHtml())).isEmpty();
    }

    @Test
    void aReleaseNamesTheRevisionThatItWasMadeFrom() {
        var episode = studio.episode("Released");
        studio.write(episode, TWO_BARS);
        studio.form().post(path(episode) + "/publish").then().statusCode(303);
        assertThat(page(episode, "/revisions").select(".revisions .state").eachText())
                .containsExactly("Release 1");
    }

    @Test
    void aRevisionStandsBarByBarBesideWhatIsWrittenNow() {
        var episode = kept("Compared", TWO_BARS);
        studio.change(episode, edit -> edit.mainLine(new LineSource("", OTHERWISE))
                .notes("Mind the tide.")
                .exercises(List.of(new LineSource("", TWO_BARS))));
        var answer = studio.browser().get(path(episode) + "/revisions/1").asString();
        var page = Jsoup.parse(answer);
        assertThat(page.select(".compared h3").eachText()).containsExactly("The line", "Exercise 1");
        assertThat(page.select(".compared-place > p").eachText())
                .containsExactly("bar 2: count 1 (pitch)", "bar 3 is new", "the whole line is new");
        assertThat(page.select(".compared-place").get(0).select("svg")).hasSize(2);
        assertThat(page.select(".compared-place").get(1).select("svg")).hasSize(1);
        assertThat(page.text()).contains("From “Revision 1” to “What is written now”", "Beside the lines: notes");
        assertThat(page.select("#revision-text").text()).contains("E3").doesNotContain("E8");
        assertThat(Studio.mistakes(answer)).isEmpty();
    }

    @Test
    void twoRevisionsAreComparedWithEachOther() {
        var episode = kept("Two of them", TWO_BARS, OTHERWISE, TWO_BARS);
        assertThat(page(episode, "/revisions/1?with=2")
                        .select(".compared-place > p")
                        .eachText())
                .containsExactly("bar 2: count 1 (pitch)", "bar 3 is new");
        assertThat(page(episode, "/revisions/1?with=3").text()).contains("The two say the same.");
        studio.browser().get(path(episode) + "/revisions/1?with=4").then().statusCode(404);
    }

    @Test
    void restoringKeepsWhatWasWrittenAndLeadsToTheLine() {
        var episode = kept("Restored", TWO_BARS);
        studio.write(episode, OTHERWISE);
        studio.form()
                .post(path(episode) + "/revisions/1/restore")
                .then()
                .statusCode(303)
                .header("Location", endsWith(path(episode) + "/line"));
        assertThat(studio.document(episode).mainLine().text()).isEqualTo(TWO_BARS);
        var list = page(episode, "/revisions");
        assertThat(list.select(".revisions li").get(0).text())
                .contains("Revision 2", "Kept before going back to revision 1");
        studio.form().post(path(episode) + "/revisions/2/restore").then().statusCode(303);
        assertThat(studio.document(episode).mainLine().text()).isEqualTo(OTHERWISE);
    }

    @Test
    void whatIsKeptIsShownInTheList() {
        var episode = studio.episode("Kept");
        studio.write(episode, TWO_BARS);
        studio.form()
                .formParam("revisionNote", "Before the change")
                .post(path(episode) + "/revisions")
                .then()
                .statusCode(303)
                .header("Location", endsWith(path(episode) + "/revisions"));
        studio.browser().get(path(episode) + "/revisions").then().body(containsString("Before the change"));
    }

    /** Twenty on a page; each address begins where the page before it ends. */
    @Test
    void earlierOnesStandOnFurtherPages() {
        var episode = studio.episode("Often kept");
        for (int i = 1; i <= RevisionPages.A_PAGE + 2; i++) {
            studio.write(episode, "bar 1\n1-4 E" + i + "\n");
            Studio.done(studio.writing.makeRevision(studio.site.educator(), episode.id(), ""));
        }
        var first = page(episode, "/revisions");
        assertThat(first.select(".revisions li")).hasSize(RevisionPages.A_PAGE);
        String older = first.select("a:contains(Earlier ones)").attr("href");
        var second = Jsoup.parse(studio.browser().get(older).asString());
        assertThat(second.select(".revisions li").eachAttr("value")).containsExactly("2", "1");
        assertThat(second.select("a:contains(Earlier ones)")).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(strings = {"0", "9", "one", "1000000"})
    void aRevisionThatIsNotThereIsNotFound(String number) {
        var episode = kept("Numbers of " + number, TWO_BARS);
        studio.browser().get(path(episode) + "/revisions/" + number).then().statusCode(404);
        studio.form()
                .post(path(episode) + "/revisions/" + number + "/restore")
                .then()
                .statusCode(404);
    }

    @Test
    void noOtherSiteCanBringARevisionBack() {
        var episode = kept("Not from elsewhere", TWO_BARS);
        studio.write(episode, OTHERWISE);
        studio.browser()
                .header("Sec-Fetch-Site", "cross-site")
                .post(path(episode) + "/revisions/1/restore")
                .then()
                .statusCode(403);
        assertThat(studio.document(episode).mainLine().text()).isEqualTo(OTHERWISE);
    }

    private static Episode kept(String title, String... lines) {
        var episode = studio.episode(title);
        for (int i = 0; i < lines.length; i++) {
            studio.write(episode, lines[i]);
            Studio.done(studio.writing.makeRevision(studio.site.educator(), episode.id(), "state " + i));
        }
        return episode;
    }

    private static Document page(Episode episode, String way) {
        return Jsoup.parse(studio.browser().get(path(episode) + way).asString());
    }

    private static String path(Episode episode) {
        return "/desk/episodes/" + episode.id();
    }
}
