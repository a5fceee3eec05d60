package groundbass.web.general;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.nullValue;

import groundbass.catalog.settings.SiteSettings;
import groundbass.web.Html;
import groundbass.web.Stage;
import groundbass.web.shell.PrincipalResolver;
import groundbass.web.view.Assets;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The site on a device: manifest, worker and list, as a browser asks for them. */
class DevicePagesTest {
    static final Assets assets = new Assets();
    static final Stage stage = Stage.at(
            "http://localhost:8420",
            PrincipalResolver.NONE,
            pages -> List.of(new DevicePages(pages, () -> SiteSettings.USUAL, assets, true), new AssetFiles(assets)));

    @AfterAll
    static void close() {
        stage.close();
    }

    /** Members and media type: W3C Web Application Manifest, sections 1 and "IANA considerations". */
    @Test
    void theManifestSaysWhatTheSiteIs() {
        stage.request()
                .header("Accept-Language", "de")
                .get("/manifest.webmanifest")
                .then()
                .statusCode(200)
                .header("Content-Type", containsString("application/manifest+json"))
                .header("Vary", containsString("Accept-Language"))
                .body("name", equalTo(SiteSettings.USUAL.siteName()))
                .body("lang", equalTo("de"))
                .body("start_url", equalTo("/"))
                .body("scope", equalTo("/"))
                .body("display", equalTo("standalone"));
    }

    /** Sizes as they are drawn: an icon is named with its width and height (section "sizes member"). */
    @Test
    void itsIconsAreThereInTheSizesThatItNames() throws IOException {
        List<Map<String, String>> icons =
                stage.request().get("/manifest.webmanifest").path("icons");
        assertThat(icons).extracting(icon -> icon.get("purpose")).contains("any", "maskable");
        for (var icon : icons) {
            var answer = stage.request().get(icon.get("src"));
            assertThat(answer.statusCode()).as(icon.get("src")).isEqualTo(200);
            assertThat(answer.contentType().split(";")[0]).isEqualTo(icon.get("type"));
            if (icon.get("type").equals("image/png")) {
                var drawn = ImageIO.read(new ByteArrayInputStream(answer.asByteArray()));
                assertThat(drawn.getWidth() + "x" + drawn.getHeight()).isEqualTo(icon.get("sizes"));
            }
        }
    }

    /** The colour around an installed site is the paper that its style sheet names; the page names that of each scheme. */
    @Test
    void coloursAreThoseOfTheStyleSheet() {
        String css = stage.request().get("/assets/groundbass.css").asString();
        String page = stage.request().accept("text/html").get("/kept").asString();
        String colour = stage.request().get("/manifest.webmanifest").path("theme_color");
        assertThat(css).containsPattern("--paper: *" + colour);
        assertThat(page).contains("content=\"" + colour + "\"").contains("content=\"#1a1815\"");
        assertThat(css).containsPattern("--paper: *#1a1815");
    }

    /**
     * Its scope is the folder that it comes from, so no Service-Worker-Allowed is needed; a browser looks for a new one
     * with each page, and a cache must not answer for long (W3C Service Workers, sections "Script's response" and
     * "Update").
     */
    @Test
    void theWorkerIsOfTheWholeSiteAndAskedForAnew() {
        stage.request()
                .get("/worker.js")
                .then()
                .statusCode(200)
                .header("Content-Type", containsString("text/javascript"))
                .header("Cache-Control", "public, no-cache")
                .header("Service-Worker-Allowed", nullValue())
                .body(containsString("skipWaiting"));
        // registered as a classic script: it imports and exports nothing
        assertThat(stage.request().get("/worker.js").asString())
                .doesNotContainPattern("(^|[;}\\s])(import|export)[ {*\"]");
    }

    /** A browser that has the worker finds another under its address, and sets that one up in its place. */
    @Test
    void whereNothingMayBeKeptTheWorkerTakesItselfAway() {
        try (var other = Stage.at(
                "http://localhost:8420",
                PrincipalResolver.NONE,
                pages -> List.of(new DevicePages(pages, () -> SiteSettings.USUAL, assets, false)))) {
            assertThat(other.request().get("/worker.js").asString())
                    .isNotEqualTo(stage.request().get("/worker.js").asString())
                    .contains("unregister")
                    .doesNotContain("\"fetch\"");
            assertThat(other.request().get("/kept").statusCode()).isEqualTo(404);
        }
    }

    /** W3C Content Security Policy Level 3, sections "worker-src" and "manifest-src". */
    @ParameterizedTest
    @ValueSource(strings = {"/kept", "/worker.js", "/manifest.webmanifest"})
    void thePolicyStaysStrict(String path) {
        String policy = stage.request().get(path).header("Content-Security-Policy");
        assertThat(policy)
                .startsWith(
                        "default-src 'none'; object-src 'none'; script-src 'self'; worker-src 'self'; manifest-src 'self'; ")
                .doesNotContain("unsafe", "*", "http");
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de"})
    void theListConformsToHtml(String language) {
        var page = stage.request()
                .accept("text/html")
                .header("Accept-Language", language)
                .get("/kept");
        assertThat(Html.mistakes(page.asString())).isEmpty();
        assertThat(page.asString()).contains("rel=\"manifest\"");
    }
}
