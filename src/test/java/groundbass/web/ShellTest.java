package groundbass.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;

import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ShellTest {
    static final Site site = Site.open();

    @AfterAll
    static void close() {
        site.close();
    }

    @ParameterizedTest
    @ValueSource(strings = {"/", "/privacy", "/cautions"})
    void pagesAnswerInHtml(String path) {
        site.browser()
                .get(path)
                .then()
                .statusCode(200)
                .contentType("text/html; charset=utf-8")
                .body(containsString("</html>"));
    }

    /** RFC 4647 section 3.4: the first wish that can be met, else the default. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "de-AT,en;q=0.5 | de",
                "fr, de;q=0.5, en;q=0.4 | de",
                "fr | en",
                "en-GB | en",
                "* | en",
                ";;;nonsense | en"
            })
    void speaksTheLanguageThatIsAskedFor(String header, String language) {
        site.browser()
                .header("Accept-Language", header)
                .get("/privacy")
                .then()
                .statusCode(200)
                .header("Content-Language", language)
                .header("Vary", containsString("Accept-Language"))
                .body("html.@lang", equalTo(language));
    }

    @ParameterizedTest
    @ValueSource(strings = {"/", "/privacy", "/nothing", "/assets/groundbass.css", "/healthz"})
    void everyAnswerCarriesTheSecurityHeaders(String path) {
        var answer = site.browser().get(path);
        assertThat(answer.header("Content-Security-Policy"))
                .startsWith("default-src 'none'")
                .contains("frame-ancestors 'none'", "form-action 'self'", "base-uri 'none'")
                .doesNotContain("unsafe");
        assertThat(answer.header("X-Content-Type-Options")).isEqualTo("nosniff");
        assertThat(answer.header("Referrer-Policy")).isEqualTo("same-origin");
        assertThat(answer.header("Cross-Origin-Opener-Policy")).isEqualTo("same-origin");
        assertThat(answer.header("Permissions-Policy")).contains("microphone=()");
        assertThat(answer.header("Strict-Transport-Security")).isNull();
        assertThat(answer.header("Server")).isNull();
    }

    @Test
    void healthSpeaksOfTheDatabase() {
        site.program()
                .get("/healthz")
                .then()
                .statusCode(200)
                .body("status", equalTo("ok"))
                .body("database", equalTo("ok"));
    }

    @Test
    void peopleGetAPageForAMissingAddress() {
        site.browser()
                .get("/nothing/here")
                .then()
                .statusCode(404)
                .contentType(startsWith("text/html"))
                .body(containsString("There is nothing here"), not(containsString("Exception")));
    }

    /** RFC 9457 section 3: media type and members of a problem document. */
    @Test
    void programsGetAProblemDocumentForAMissingAddress() {
        site.program()
                .header("Accept-Language", "de")
                .get("/nothing")
                .then()
                .statusCode(404)
                .contentType("application/problem+json")
                .body("type", equalTo("about:blank"))
                .body("status", equalTo(404))
                .body("title", equalTo("Hier ist nichts"));
    }

    /** RFC 9110 section 15.5.6: 405 comes with Allow. */
    @Test
    void anotherMethodIsRefusedAndTheAllowedOnesAreNamed() {
        site.form().post("/privacy").then().statusCode(405).header("Allow", containsString("GET"));
    }

    @Test
    void headAnswersLikeGetWithoutABody() {
        var get = site.browser().get("/privacy");
        var head = site.browser().head("/privacy");
        assertThat(head.statusCode()).isEqualTo(200);
        assertThat(head.body().asByteArray()).isEmpty();
        assertThat(head.header("ETag")).isEqualTo(get.header("ETag")).isNotNull();
    }

    @Test
    void aKeptPageIsSentOnlyOnce() {
        String tag = site.browser().get("/privacy").header("ETag");
        var again = site.browser().header("If-None-Match", tag).get("/privacy");
        assertThat(again.statusCode()).isEqualTo(304);
        assertThat(again.header("ETag")).isEqualTo(tag);
    }

    @Test
    void anAssetIsKeptForGoodUnderTheAddressThatPagesUse() {
        String address =
                site.browser().get("/").htmlPath().getString("html.head.link.find { it.@rel == 'stylesheet' }.@href");
        assertThat(address).startsWith("/assets/groundbass.css?v=");
        site.browser()
                .get(address)
                .then()
                .statusCode(200)
                .contentType(startsWith("text/css"))
                .header("Cache-Control", containsString("immutable"));
        site.browser().get("/assets/groundbass.css?v=old").then().header("Cache-Control", equalTo("public, no-cache"));
    }

    /** A style sheet names typefaces, and the script of a lesson names its worker. */
    @ParameterizedTest
    @CsvSource({"groundbass.css, 6", "play.js, 1"})
    void whatAnAssetNamesIsKeptForGoodToo(String asset, int named) {
        var addresses = Pattern.compile("/assets/[a-z0-9.-]+\\?v=[0-9a-zA-Z_-]+")
                .matcher(site.browser().get("/assets/" + asset).asString())
                .results()
                .map(MatchResult::group)
                .toList();
        assertThat(addresses).hasSize(named);
        assertThat(addresses).allSatisfy(address -> site.browser()
                .get(address)
                .then()
                .statusCode(200)
                .header("Cache-Control", containsString("immutable")));
    }

    /** The MIT licence wants its notice in all copies; the desk's script is one. */
    @Test
    void theLicencesOfBundledLibrariesAreServed() {
        assertThat(site.browser().get("/assets/line-editor.js").asString()).contains("/assets/licenses.txt");
        var answer = site.browser().get("/assets/licenses.txt");
        answer.then().statusCode(200).contentType(startsWith("text/plain"));
        assertThat(answer.asString())
                .contains("@codemirror/view\n\nMIT License", "@lezer/common\n\nMIT License", "style-mod\n\n");
        assertThat(answer.asString()).doesNotContain("esbuild", "deno");
    }

    @ParameterizedTest
    @ValueSource(strings = {"/assets/..%2f..%2flogback.xml", "/assets/none.css", "/assets/%2e%2e/messages.properties"})
    void noAssetIsFoundOutsideTheirFolder(String path) {
        var answer = site.program().urlEncodingEnabled(false).get(path);
        if (answer.statusCode() == 301) { // another spelling of an address is sent to the usual one
            answer = site.program().urlEncodingEnabled(false).get(answer.header("Location"));
        }
        assertThat(answer.statusCode()).isIn(400, 404);
    }
}
