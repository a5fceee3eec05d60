package groundbass.web.desk.site;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;

import groundbass.document.SheetLetters;
import groundbass.web.desk.Studio;
import java.util.Map;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

class LetterPagesTest {
    static final Studio studio = new Studio();

    @AfterAll
    static void close() {
        studio.close();
    }

    private static String path() {
        return "/desk/series/" + studio.series.id() + "/letters";
    }

    @Test
    void aSeriesKeepsItsLetters() {
        studio.form()
                .formParam("slap", " S ")
                .formParam("mute", "-")
                .post(path())
                .then()
                .statusCode(303);
        studio.browser().get(path()).then().statusCode(200).body(containsString("value=\"S\""));
        assertThat(SheetLetters.parse("slap=S mute=-").byWord()).isEqualTo(Map.of("slap", "S", "mute", "-"));
    }

    @Test
    void aSeriesKeepsWhatItAbbreviates() {
        studio.form()
                .formParam("simile", "yes")
                .formParam("restsTogether", "yes")
                .post(path())
                .then()
                .statusCode(303);
        studio.browser()
                .get(path())
                .then()
                .statusCode(200)
                .body(containsString("value=\"yes\" selected"), containsString("checked"));
        studio.form().formParam("simile", "").post(path()).then().statusCode(303);
        studio.browser()
                .get(path())
                .then()
                .body(not(containsString("value=\"yes\" selected")), not(containsString("checked")));
    }

    @Test
    void aSeriesKeepsItsPaper() {
        studio.form().formParam("paper", "letter").post(path()).then().statusCode(303);
        studio.browser().get(path()).then().body(containsString("value=\"letter\" selected"));
        studio.form().formParam("paper", "a4").post(path()).then().statusCode(303);
        studio.browser().get(path()).then().body(not(containsString("value=\"letter\" selected")));
    }

    @Test // rule: technique-letters: T for slap, P for pop, P.M. for the palm mute
    void thePageSaysWhatIsUsual() {
        studio.browser()
                .get(path())
                .then()
                .body(containsString("Usually T"), containsString("Usually P.M."), containsString("Usually nothing"));
    }

    @Test
    void whatIsTooLongComesBackWithWhatIsWrong() {
        studio.form()
                .formParam("pop", "snap with a finger")
                .post(path())
                .then()
                .statusCode(422)
                .body(
                        containsString("id=\"pop-problem\""),
                        containsString("value=\"snap with a finger\""),
                        not(containsString("id=\"slap-problem\"")));
    }

    @Test
    void theSeriesPageLeadsThere() {
        studio.browser().get("/desk/series/" + studio.series.id()).then().body(containsString(path()));
    }
}
