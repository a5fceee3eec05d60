package groundbass.web.desk.publish;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;

import groundbass.catalog.episode.Episode;
import groundbass.document.Clearance;
import groundbass.document.LineSource;
import groundbass.document.Rights;
import groundbass.publishing.preflight.Checkpoint;
import groundbass.web.desk.Studio;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

/** The page of everything that is checked before a lesson goes out. */
class PreflightPageTest {
    /** A stretch of four frets so low is for few hands (test of the rules: stretch-hard). */
    private static final String UNWISE = "bar 1\n1-4 E1\n\nbar 2\n1 E5+A9\n2-4 rest\n";

    private static final Studio studio = new Studio();

    @AfterAll
    static void close() {
        studio.close();
    }

    @Test
    void everyCheckpointStandsThereWithItsStateAndTheWayToWhereItIsMended() {
        var episode = studio.episode("Looked over");
        studio.write(episode, Studio.LINE);
        var page = page(episode);
        var words = Stream.of(Checkpoint.values())
                .map(point -> "check-" + point.name().toLowerCase(Locale.ROOT))
                .toList();
        assertThat(page.select(".checkpoint").eachAttr("id")).containsExactlyElementsOf(words);
        assertThat(page.select(".checkpoint-state").eachText())
                .hasSize(words.size())
                .containsOnly("Fine");
        assertThat(page.select("#checkpoints-sum").text()).isEqualTo("Nothing keeps this lesson back.");
        assertThat(page.select(".checkpoint h3 a").eachAttr("href"))
                .hasSize(words.size())
                .allSatisfy(way ->
                        studio.browser().get(way.replaceFirst("#.*", "")).then().statusCode(200));
        assertThat(Studio.mistakes(page.outerHtml())).isEmpty();
    }

    @Test
    void whatKeepsItBackSaysSoAndTheRestIsStillFine() {
        var episode = studio.episode("Not cleared");
        studio.write(episode, Studio.LINE);
        studio.change(episode, edit -> edit.rights(new Rights("", "", "Asked.", Clearance.WAITING))
                .notes("![](bars:1)"));
        var page = page(episode);
        assertThat(page.select("#checkpoints-sum").text()).isEqualTo("One thing keeps this lesson back.");
        assertThat(page.select(".checkpoint-keeps-back").eachAttr("id")).containsExactly("check-rights");
        assertThat(page.select("#check-rights .checkpoint-holding a").attr("href"))
                .isEqualTo(path(episode) + "/facts#rights.clearance");
        assertThat(page.select(".checkpoint-open").eachAttr("id")).containsExactly("check-pictures");
        studio.browser()
                .header("Accept-Language", "de")
                .get(path(episode) + "/preflight")
                .then()
                .body(containsString("Hält sie zurück"), containsString("Einen Blick wert"));
    }

    @Test
    void aFindingLeadsToItsBarAndIsLetStandHere() {
        var episode = studio.episode("Far apart");
        studio.write(episode, UNWISE);
        var page = page(episode);
        assertThat(page.select("#check-findings .checkpoint-holding a").eachAttr("href"))
                .isNotEmpty()
                .containsOnly(path(episode) + "/line#bar-2");
        String accepting = page.select("input[name=accepted]").attr("value");
        studio.form()
                .formParam("accepted", accepting)
                .post(path(episode) + "/preflight")
                .then()
                .statusCode(303)
                .header("Location", endsWith(path(episode) + "/preflight"));
        var after = page(episode);
        assertThat(after.select(".checkpoint-keeps-back")).isEmpty();
        assertThat(after.select("input[name=accepted]")).isEmpty();
    }

    /** Looking again is looking at what is saved by then. */
    @Test
    void checkingAgainShowsWhatIsSavedMeanwhile() {
        var episode = studio.episode("Mended");
        studio.change(episode, edit -> edit.mainLine(new LineSource("", "bar 1\n1-4 E58\n")));
        assertThat(page(episode).select(".checkpoint-keeps-back").eachAttr("id"))
                .contains("check-lines", "check-rights");
        studio.write(episode, Studio.LINE);
        assertThat(page(episode).select(".checkpoint-keeps-back")).isEmpty();
    }

    @Test
    void itIsSeenByItsEducatorAlone() {
        studio.browser()
                .get(path(studio.strangersEpisode) + "/preflight")
                .then()
                .statusCode(404);
        studio.form().post(path(studio.strangersEpisode) + "/preflight").then().statusCode(404);
        studio.site
                .form()
                .post(path(studio.strangersEpisode) + "/preflight")
                .then()
                .statusCode(401);
    }

    @Test
    void theRoomOfPublishingLeadsThere() {
        var episode = studio.episode("Led there");
        String room = studio.browser().get(path(episode) + "/publish").asString();
        assertThat(Jsoup.parse(room).select("a[href=" + path(episode) + "/preflight]"))
                .hasSize(1);
    }

    /** Settings, imprint and e-mails are the site owner's: others are told so, and are not led there. */
    @Test
    void nobodyIsLedToAPageThatIsClosedToThem() {
        var episode = studio.episode("Of a teacher");
        studio.write(episode, Studio.LINE);
        String owner = owner();
        become(stranger());
        try {
            var page = page(episode);
            assertThat(page.select(".checkpoint h3 a").eachAttr("href"))
                    .hasSize(Checkpoint.values().length - 3)
                    .allSatisfy(way -> studio.browser()
                            .get(way.replaceFirst("#.*", ""))
                            .then()
                            .statusCode(200));
            for (String of : List.of("teacher", "address", "mail")) {
                assertThat(page.select("#check-" + of + " h3").text()).endsWith("The owner of the site mends this.");
            }
            assertThat(Studio.mistakes(page.outerHtml())).isEmpty();
        } finally {
            become(owner);
        }
    }

    private static String owner() {
        return studio.site.groundbass().database().jdbi().withHandle(handle -> handle.createQuery(
                        "select educator_id from site_owner")
                .mapTo(String.class)
                .one());
    }

    private static String stranger() {
        return studio.site.groundbass().database().jdbi().withHandle(handle -> handle.createQuery("""
                        select series.educator_id from series join episode on episode.series_id = series.id
                        where episode.id = :id""")
                .bind("id", studio.strangersEpisode.id())
                .mapTo(String.class)
                .one());
    }

    private static void become(String owner) {
        studio.site
                .groundbass()
                .database()
                .jdbi()
                .useHandle(handle -> handle.execute("update site_owner set educator_id = ?", owner));
    }

    private static Document page(Episode episode) {
        var answer = studio.browser().get(path(episode) + "/preflight");
        answer.then().statusCode(200);
        return Jsoup.parse(answer.asString());
    }

    private static String path(Episode episode) {
        return "/desk/episodes/" + episode.id();
    }
}
