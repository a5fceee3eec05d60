package groundbass.web.gate;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.settings.SiteSettings;
import groundbass.web.Stage;
import groundbass.web.general.GeneralPages;
import groundbass.web.shell.PrincipalResolver;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** RFC 3986 section 6.2.2 (case and percent-encoding normalisation); 6.2.3 leaves the slash at the end to the site. */
class OneAddressTest {
    @ParameterizedTest
    @CsvSource({
        "/series/harbour/1, /series/harbour/1",
        "/series/%68arbour/1, /series/harbour/1",
        "/s%65r%69es/harbour/%31, /series/harbour/1",
        "/series/harbour/1/, /series/harbour/1",
        "/series/harbour///, /series/harbour",
        "/a%2fb, /a%2Fb",
        "/a%2Fb, /a%2Fb",
        "/%c3%a4, /%C3%A4",
        "/a%20b;c=d, /a%20b;c=d",
        "/%7Euser, /~user",
        "//elsewhere.example, /elsewhere.example",
        "/%2F/elsewhere.example, /%2F/elsewhere.example",
        "/, /",
        "//, /"
    })
    void everySpellingLeadsToOne(String path, String one) {
        assertThat(OneAddress.of(path)).isEqualTo(one);
        assertThat(OneAddress.of(one)).isEqualTo(one);
    }

    @Test
    void anotherSpellingIsSentOnForGood() {
        try (var stage = Stage.at(
                "http://localhost:8420",
                PrincipalResolver.NONE,
                pages -> List.of(new GeneralPages(pages, () -> SiteSettings.USUAL)))) {
            var request = stage.request().urlEncodingEnabled(false).accept("text/html");
            var answer = request.get("/priv%61cy?x=%61");
            assertThat(answer.statusCode()).isEqualTo(301);
            assertThat(answer.header("Location")).endsWith("/privacy?x=%61");
            assertThat(stage.request().head("/privacy/").statusCode()).isEqualTo(301);
            assertThat(stage.request().accept("text/html").get("/privacy").statusCode())
                    .isEqualTo(200);
        }
    }
}
