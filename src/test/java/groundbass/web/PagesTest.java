package groundbass.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;

import groundbass.catalog.settings.SiteSettings;
import groundbass.web.general.GeneralPages;
import groundbass.web.shell.PrincipalResolver;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PagesTest {
    static final Stage stage = Stage.at(
            "http://localhost:8420",
            PrincipalResolver.NONE,
            pages -> List.of(
                    EmptyHome.of(pages),
                    new GeneralPages(pages, () -> SiteSettings.USUAL),
                    new TrialPage(pages)::addTo));

    @AfterAll
    static void close() {
        stage.close();
    }

    /** The HTML standard, by its conformance checker. */
    @ParameterizedTest
    @CsvSource({
        "/, en",
        "/, de",
        "/privacy, en",
        "/privacy, de",
        "/cautions, en",
        "/cautions, de",
        "/none, en",
        "/trial, en"
    })
    void pagesConformToHtml(String path, String language) {
        var page = stage.request()
                .accept("text/html")
                .header("Accept-Language", language)
                .get(path);
        assertThat(Html.mistakes(page.asString())).isEmpty();
    }

    @Test
    void whatWasTypedComesBackWithTheProblemBesideItAndIsEscaped() {
        stage.request()
                .accept("text/html")
                .header("Sec-Fetch-Site", "same-origin")
                .formParam("title", "<script>x</script> \"&")
                .post("/trial")
                .then()
                .statusCode(422)
                .body(
                        containsString("value=\"&lt;script&gt;x&lt;/script&gt; &quot;&amp;\""),
                        containsString("id=\"title-problem\""),
                        containsString("aria-invalid=\"true\""),
                        containsString("href=\"#title\""));
    }

    /** Cautions for hands, hearing and rights, each deferring to a professional or to local law. */
    @ParameterizedTest
    @CsvSource({
        "en, doctor, physiotherapist, local law, qualified adviser",
        "de, Arzt, Physiotherapie, örtliche Recht, fachkundige Beratung"
    })
    void cautionsDeferToProfessionalsAndLocalLaw(
            String language, String doctor, String physio, String law, String adviser) {
        String page = stage.request()
                .header("Accept-Language", language)
                .get("/cautions")
                .asString();
        assertThat(page).contains(doctor, physio, law, adviser);
    }

    @ParameterizedTest
    @CsvSource({"en, IP address, deletion", "de, IP-Adresse, Löschung"})
    void thePrivacyNoticeSaysThatNoAddressIsStoredAndHowToBeForgotten(String language, String address, String deleted) {
        String page = stage.request()
                .header("Accept-Language", language)
                .get("/privacy")
                .asString();
        assertThat(page).contains(address, deleted);
    }
}
