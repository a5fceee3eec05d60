package groundbass.web.desk.site;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.store.AskedStatements;
import groundbass.web.Html;
import groundbass.web.desk.Studio;
import java.time.Instant;
import java.util.List;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** Three lessons, written on the first, the third and the second of a month. */
class LessonFindPageTest {
    private static final String FIND = "/desk/lessons";
    static final Studio studio = new Studio();

    @BeforeAll
    static void fill() {
        write("Low Tide", 1);
        write("High Tide 50%", 3);
        write("Ébb", 2);
    }

    private static void write(String title, int day) {
        var episode = studio.episode(title);
        studio.write(episode, "bar 1\n1-4 E5\n");
        studio.site
                .groundbass()
                .database()
                .jdbi()
                .useHandle(handle -> handle.execute(
                        "update draft set saved_at = ? where episode_id = ?",
                        Instant.parse("2020-01-0" + day + "T12:00:00Z"),
                        episode.id().value()));
    }

    @AfterAll
    static void close() {
        studio.close();
    }

    @Test
    void whatWasWrittenLastStandsFirst() {
        assertThat(found("")).containsExactly("High Tide 50%", "Ébb", "Low Tide");
        var first = page(FIND).select(".ledger li").get(0);
        assertThat(first.select("time[datetime=2020-01-03T12:00:00Z]")).hasSize(1);
        assertThat(first.text()).contains(studio.series.title());
    }

    @Test
    void wordsOfTheTitleAreFoundWhateverTheirCase() {
        assertThat(found("tide")).containsExactly("High Tide 50%", "Low Tide");
        assertThat(found("  TIDE low ")).containsExactly("Low Tide");
        assertThat(found("ébb")).containsExactly("Ébb");
    }

    @Test
    void aSignThatStandsForOthersInADatabaseStandsForItself() {
        assertThat(found("%")).containsExactly("High Tide 50%");
        assertThat(found("_")).isEmpty();
        assertThat(found("!")).isEmpty();
    }

    @Test
    void whatIsNotFoundIsSaid() {
        var page = page(FIND + "?title=<b>");
        assertThat(page.select(".empty").text()).isEqualTo("No lesson has “<b>” in its title.");
        assertThat(page.select("#find-title").val()).isEqualTo("<b>");
    }

    @Test
    void aPageBehindTheLastIsNotThere() {
        assertThat(found("")).hasSize(3);
        for (String behind : List.of("?page=2", "?page=9", "?title=tide&page=2")) {
            studio.browser().get(FIND + behind).then().statusCode(404);
        }
    }

    /** A row may ask about its lesson; the lesson itself it has from the list. */
    @Test
    void theLessonsOfAPageAreAskedForOnce() {
        var jdbi = studio.site.groundbass().database().jdbi();
        var asked = AskedStatements.during(jdbi, () -> assertThat(found("tide")).hasSize(2));
        assertThat(asked)
                .filteredOn(statement -> statement.contains("from episode e"))
                .hasSize(1);
    }

    @Test
    void thePageConformsToHtmlAndTheDeskLeadsToIt() {
        assertThat(Html.mistakes(studio.browser().get(FIND).asString())).isEmpty();
        assertThat(page("/desk").select("a[href=" + FIND + "]").text()).isEqualTo("Find a lesson");
    }

    private static List<String> found(String words) {
        var html = studio.browser().queryParam("title", words).get(FIND).asString();
        return Jsoup.parse(html).select(".ledger li > a").eachText();
    }

    private static Document page(String path) {
        return Jsoup.parse(studio.browser().get(path).asString());
    }
}
