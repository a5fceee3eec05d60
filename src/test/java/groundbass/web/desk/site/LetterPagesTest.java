package groundbass.web.desk.site;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;

import groundbass.catalog.educator.Audit;
import groundbass.catalog.series.Styles;
import groundbass.document.SheetAids.CountsRow;
import groundbass.document.SheetPaper;
import groundbass.web.Html;
import groundbass.web.desk.Studio;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

class LetterPagesTest {
    static final Studio studio = new Studio();
    private static final String PATH = "/desk/series/" + studio.series.id() + "/letters";

    @AfterAll
    static void close() {
        studio.close();
    }

    @Test
    void whatIsChosenIsKeptAndShown() {
        studio.form()
                .formParam("slap", "S")
                .formParam("paper", "letter")
                .formParam("simile", "yes")
                .formParam("counts", "all")
                .formParam("everyBar", "yes")
                .post(PATH)
                .then()
                .statusCode(303);
        var jdbi = studio.site.groundbass().database().jdbi();
        var style = new Styles(jdbi, new Audit(jdbi, studio.site.clock())).of(studio.series.id());
        assertThat(style.paper()).isEqualTo(SheetPaper.LETTER);
        assertThat(style.abbreviations().simile()).isTrue();
        assertThat(style.aids().counts()).isEqualTo(CountsRow.ALL);
        assertThat(style.aids().everyBar()).isTrue();
        var page = Jsoup.parse(studio.browser().get(PATH).asString());
        assertThat(page.select("input[name=slap]").val()).isEqualTo("S");
        assertThat(page.select("select option[selected]").eachAttr("value")).containsExactly("letter", "yes", "all");
    }

    @Test
    void lettersThatAreTooLongComeBackAsTyped() {
        studio.form()
                .formParam("pop", "a letter of many letters")
                .post(PATH)
                .then()
                .statusCode(422)
                .body(containsString("a letter of many letters"), containsString("id=\"pop-problem\""));
    }

    @Test
    void pagesConformToHtml() {
        assertThat(Html.mistakes(studio.browser().get(PATH).asString())).isEmpty();
    }
}
