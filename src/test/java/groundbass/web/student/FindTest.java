package groundbass.web.student;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.endsWith;

import groundbass.catalog.episode.Revisions;
import groundbass.release.find.LessonIndex;
import groundbass.web.Html;
import groundbass.web.Site;
import io.restassured.response.Response;
import java.util.List;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The form that lessons are found by, over requests alone: it needs no script. */
class FindTest {
    static final Site site = Site.open();
    static final Shelf shelf = Shelf.fill(site);

    @BeforeAll
    static void read() {
        var jdbi = site.groundbass().database().jdbi();
        new LessonIndex(jdbi, shelf.releases, new Revisions(jdbi, site.clock())).catchUp(10);
    }

    @AfterAll
    static void close() {
        site.close();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "/lessons                          | Second Plank, First <Plank>",
                "/lessons?q=first                  | First <Plank>",
                "/lessons?q=eighths sec            | Second Plank",
                "/lessons?technique=slap           | Second Plank, First <Plank>",
                "/lessons?key=A minor&order=number | First <Plank>, Second Plank",
                "/lessons?slowest=121              | ",
                "/lessons?q=Nobody                 | ",
                "/lessons?series=none              | ",
                "/lessons?technique=none           | Second Plank, First <Plank>"
            })
    void whatIsAskedForIsFound(String path, String titles) {
        var page = Jsoup.parse(get(path, "en").asString());
        assertThat(String.join(", ", page.select(".card h3 a").eachText())).isEqualTo(titles == null ? "" : titles);
        assertThat(page.select(".empty").isEmpty()).isEqualTo(titles != null);
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de"})
    void thePageConformsToHtmlAndSpeaksItsLanguage(String language) {
        String page = get("/lessons?q=plank&slowest=fast", language).asString();
        assertThat(Html.mistakes(page)).isEmpty();
        var parsed = Jsoup.parse(page);
        assertThat(parsed.select(".card h3 a").eachAttr("lang")).isNotEmpty().containsOnly("en");
        assertThat(parsed.select("#q").val()).isEqualTo("plank");
        assertThat(parsed.select("#slowest").val()).isEqualTo("fast");
        assertThat(parsed.select(".problem").text()).contains("fast");
        assertThat(parsed.select(".card-meta").eachText())
                .contains(
                        language.equals("de")
                                ? "A-Moll · 4/4 · 120 Schläge pro Minute · 4 Saiten"
                                : "A minor · 4/4 · 120 beats a minute · 4 strings");
    }

    /** A form sends all its fields; what is handed on says no more than it need. */
    @Test
    void theAddressSaysOnlyWhatIsAskedFor() {
        site.browser()
                .get("/lessons?q=plank&technique=&level=&key=A minor&order=")
                .then()
                .statusCode(302)
                .header("Location", endsWith("/lessons?q=plank&key=A+minor"));
    }

    @Test
    void onlyWhatTellsLessonsApartIsOffered() {
        var page = Jsoup.parse(get("/lessons", "en").asString());
        assertThat(page.select("form.find [name]").eachAttr("name"))
                .isEqualTo(List.of("q", "technique", "slowest", "fastest", "order"));
        assertThat(page.select("#technique option").eachText())
                .startsWith("Any")
                .contains("Slap", "Pop");
    }

    @Test
    void aPageThatIsNotThereIsNotFound() {
        site.browser().get("/lessons?page=2").then().statusCode(404);
    }

    private static Response get(String path, String language) {
        return site.browser().header("Accept-Language", language).get(path);
    }
}
