package groundbass.web.desk.facts;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;

import groundbass.catalog.episode.Episode;
import groundbass.document.Clearance;
import groundbass.document.EpisodeDocument;
import groundbass.document.LessonFacts.CoursePointer;
import groundbass.document.Level;
import groundbass.document.Licence;
import groundbass.document.LineSource;
import groundbass.publishing.preflight.LessonRemark;
import groundbass.publishing.preflight.Preflight;
import groundbass.web.desk.OpenRoom;
import groundbass.web.desk.Studio;
import java.util.List;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

class FactsPagesTest {
    static final Studio studio = new Studio();

    @AfterAll
    static void close() {
        studio.close();
    }

    @Test
    void whatIsTypedReachesTheDraftAndAFreeRowIsPassedOver() {
        var episode = studio.episode("Buoy");
        typed(episode, "https://video.example/watch/7", "waiting").save().then().statusCode(303);
        var document = document(episode);
        assertThat(document.level()).isEqualTo(Level.ADVANCED);
        assertThat(document.facts().gear()).isEqualTo("A fifth string.");
        assertThat(document.facts().video()).isEqualTo("https://video.example/watch/7");
        assertThat(document.facts().courses())
                .containsExactly(new CoursePointer("Octaves", "https://school.example/octaves"));
        assertThat(document.rights().clearance()).isEqualTo(Clearance.WAITING);
        String page = studio.browser().get(path(episode)).asString();
        assertThat(page).contains("value=\"https://video.example/watch/7\"", "A fifth string.");
        assertThat(Studio.mistakes(page)).isEmpty();
    }

    /** What is no day is kept as it was typed, told, and stays a draft. */
    @Test
    void aPermissionIsKeptWithItsReferenceAndItsEnd() {
        var episode = studio.episode("Buoy");
        typed(episode, "", "given")
                .type("rights.licence.reference", "No. 12")
                .type("rights.licence.from", "A publisher")
                .type("rights.licence.until", "2020-02-30")
                .save()
                .then()
                .statusCode(303);
        assertThat(document(episode).rights().licence()).isEqualTo(new Licence("No. 12", "A publisher", "2020-02-30"));
        var page = Jsoup.parse(studio.browser().get(path(episode)).asString());
        assertThat(page.getElementById("rights.licence.until").val()).isEqualTo("2020-02-30");
        assertThat(page.getElementById("rights.licence.until-problem").text()).contains("is no day");
    }

    @Test
    void whatTheLineTellsIsNotAskedFor() {
        var episode = studio.episode("Buoy");
        var line = new LineSource("", "strings B E A D G\nstyle slap\nbar 1\n1-2 E5\n3-4 D7 pop\n");
        var document = document(episode).edit().mainLine(line).done();
        Studio.done(studio.writing.saveDraft(studio.site.educator(), episode.id(), 0, document));
        var facts = Jsoup.parse(studio.browser().get(path(episode)).asString())
                .select(".facts dd")
                .eachText();
        // the open strings of a five-string bass as instrument makers give them (rule: open-strings)
        assertThat(facts.subList(0, 2)).containsExactly("slap, pop", "B0 E1 A1 D2 G2");
        assertThat(studio.browser().get(path(episode)).asString())
                .contains("The line suggests:</span> <strong>Beginner");
    }

    @Test
    void anAddressThatCannotBeLinkedIsToldAndKept() {
        var episode = studio.episode("Buoy");
        typed(episode, "javascript:alert(1)", "own").save().then().statusCode(303);
        studio.browser()
                .get(path(episode))
                .then()
                .body(
                        containsString("id=\"facts.video-problem\""),
                        containsString("“javascript:alert(1)” is not a web address"));
        assertThat(document(episode).facts().video()).isEqualTo("javascript:alert(1)");
    }

    @Test
    void nothingGoesOutWhilePermissionIsAwaited() {
        var episode = studio.episode("Buoy");
        typed(episode, "https://video.example/1", "waiting").save();
        assertThat(fields(episode)).contains("rights.clearance");
        typed(episode, "https://video.example/1", "given").save();
        assertThat(fields(episode)).isNotEmpty().doesNotContain("rights.clearance");
    }

    private static List<String> fields(Episode episode) {
        return new Preflight(() -> "https://example.org")
                .remarks(episode.id(), document(episode)).stream()
                        .map(LessonRemark::field)
                        .toList();
    }

    private static OpenRoom typed(Episode episode, String video, String clearance) {
        return OpenRoom.of(studio, episode, "facts")
                .type("level", "advanced")
                .type("facts.gear", "A fifth string.")
                .type("facts.video", video)
                .type("courseTitle", "Octaves", "")
                .type("courseAddress", "https://school.example/octaves", "")
                .type("rights.statement", "Own work.")
                .type("rights.clearance", clearance);
    }

    private static EpisodeDocument document(Episode episode) {
        return studio.writing
                .draft(studio.site.educator(), episode.id())
                .orElseThrow()
                .document();
    }

    private static String path(Episode episode) {
        return "/desk/episodes/" + episode.id().value() + "/facts";
    }
}
