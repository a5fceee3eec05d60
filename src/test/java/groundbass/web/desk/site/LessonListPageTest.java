package groundbass.web.desk.site;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.web.Html;
import groundbass.web.desk.Studio;
import java.time.Instant;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A series of 55 lessons, the first 50 of them out. */
class LessonListPageTest {
    static final Studio studio = new Studio();
    private static final String ALL = "/desk/series/" + studio.series.id() + "/lessons";

    @BeforeAll
    static void fill() {
        for (int number = 1; number <= 55; number++) {
            studio.episode("Lesson " + number);
        }
        studio.site
                .groundbass()
                .database()
                .jdbi()
                .useHandle(handle -> handle.execute(
                        "update episode set published_at = ? where series_id = ? and number <= 50",
                        Instant.parse("2030-01-01T12:00:00Z"),
                        studio.series.id().value()));
    }

    @AfterAll
    static void close() {
        studio.close();
    }

    @Test
    void theDeskShowsWhatIsInHandAndLeadsToAll() {
        var desk = page("/desk");
        var titles = desk.select(".ledger li > a").eachText();
        assertThat(titles).hasSize(17).startsWith("Lesson 39").endsWith("Lesson 55");
        assertThat(desk.select("a[href=" + ALL + "]").text()).isEqualTo("All 55 lessons");
    }

    @Test
    void allStandOnPagesOfFifty() {
        var first = page(ALL);
        assertThat(first.select(".ledger li > a").eachText()).hasSize(50).startsWith("Lesson 1");
        assertThat(first.select("a[rel=next]").attr("href")).isEqualTo(ALL + "?page=2");
        assertThat(page(ALL + "?page=2").select(".ledger li > a").eachText())
                .containsExactly("Lesson 51", "Lesson 52", "Lesson 53", "Lesson 54", "Lesson 55");
        studio.browser().get(ALL + "?page=3").then().statusCode(404);
    }

    @Test
    void pagesConformToHtml() {
        assertThat(Html.mistakes(studio.browser().get(ALL).asString())).isEmpty();
    }

    @Test
    void somebodyElsesLessonsAreNotThere() {
        studio.browser()
                .get("/desk/series/" + studio.strangersEpisode.series() + "/lessons")
                .then()
                .statusCode(404);
    }

    private static Document page(String path) {
        return Jsoup.parse(studio.browser().get(path).asString());
    }
}
