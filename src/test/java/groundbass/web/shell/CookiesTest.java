package groundbass.web.shell;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.settings.SiteSettings;
import groundbass.web.EmptyHome;
import groundbass.web.Stage;
import groundbass.web.general.GeneralPages;
import java.net.URI;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;

class CookiesTest {
    /** RFC 6265bis sections 4.1.2.5 to 4.1.2.7 (Secure, HttpOnly, SameSite) and 4.1.3.2 (the __Host- prefix). */
    @Test
    void overTlsTheSessionsCookieIsBoundToThisHost() {
        assertThat(signedInAt("https://grooves.example"))
                .startsWith("__Host-session=token")
                .contains("Path=/", "Secure", "HttpOnly", "SameSite=Lax", "Max-Age=3600")
                .doesNotContain("Domain");
    }

    /**
     * RFC 6265bis section 4.1.3: what is for the whole site is for this host alone; what has a path of its own is at least
     * taken over an encrypted connection alone.
     */
    @Test
    void overTlsEveryNameHasItsPrefix() {
        PageGroup setting = routes -> routes.get("/set", Role.ANYONE, ctx -> {
            new SiteCookie("wide", true).set(ctx, "1", Duration.ofHours(1));
            new SiteCookie("narrow", "/set", true).set(ctx, "2", Duration.ofHours(1));
        });
        try (var stage = Stage.at("https://grooves.example", PrincipalResolver.NONE, pages -> List.of(setting))) {
            var set = stage.request().get("/set").headers().getValues("Set-Cookie");
            assertThat(set).hasSize(2).allMatch(line -> line.contains("Secure") && line.contains("HttpOnly"));
            assertThat(set.get(0))
                    .startsWith("__Host-wide=1")
                    .contains("Path=/;")
                    .doesNotContain("Domain");
            assertThat(set.get(1)).startsWith("__Secure-narrow=2").contains("Path=/set");
        }
    }

    @Test
    void withoutTlsItStillKeepsFromScriptsAndStrangers() {
        assertThat(signedInAt("http://localhost:8420"))
                .startsWith("session=token")
                .contains("HttpOnly", "SameSite=Lax")
                .doesNotContain("Secure");
    }

    @Test
    void aSentenceIsShownOnceAfterARedirectAndOnlyOurOwn() {
        try (var stage = Stage.at(
                "http://localhost:8420", PrincipalResolver.NONE, pages -> List.of(EmptyHome.of(pages), flashing()))) {
            String cookie = stage.request().get("/done").getCookie("flash");
            var shown =
                    stage.request().accept("text/html").cookie("flash", cookie).get("/");
            assertThat(shown.asString()).contains("class=\"flash\"", "Saved.");
            assertThat(shown.header("Set-Cookie")).startsWith("flash=;").contains("Expires=Thu, 01 Jan 1970");
            var invented = stage.request()
                    .accept("text/html")
                    .cookie("flash", "pay me")
                    .get("/");
            assertThat(invented.statusCode()).isEqualTo(200);
            assertThat(invented.asString()).doesNotContain("pay me", "class=\"flash\"");
        }
    }

    /** RFC 6265bis section 4.1.2.5: without Secure it would also travel where anybody may read and write it. */
    @Test
    void overTlsTheSentencesCookieIsSecure() {
        try (var stage = Stage.at("https://grooves.example", PrincipalResolver.NONE, pages -> List.of(flashing()))) {
            assertThat(stage.request().get("/done").header("Set-Cookie"))
                    .startsWith("__Host-flash=saved")
                    .contains("Secure");
        }
    }

    /** What is kept and shared may say nothing about its reader: who is to be told something gets a page of their own. */
    @Test
    void aSentenceIsToldOnAPageThatNobodyKeeps() {
        try (var stage = Stage.at(
                "http://localhost:8420",
                PrincipalResolver.NONE,
                pages -> List.of(new GeneralPages(pages, () -> SiteSettings.USUAL)))) {
            var told = stage.request().cookie("flash", "saved").get("/privacy");
            assertThat(told.asString()).contains("Saved.");
            assertThat(told.header("Cache-Control")).isEqualTo("no-store");
            assertThat(told.header("Set-Cookie")).startsWith("flash=;");
            var kept = stage.request().cookie("session", "x").get("/privacy");
            assertThat(kept.asString()).doesNotContain("Saved.");
            assertThat(kept.header("Set-Cookie")).isNull();
        }
    }

    private static PageGroup flashing() {
        return routes -> routes.get("/done", Role.ANYONE, ctx -> Flash.say(ctx, "saved"));
    }

    private static String signedInAt(String address) {
        var cookie = new SessionCookie(Installation.at(URI.create(address)));
        PageGroup signIn =
                routes -> routes.get("/in", Role.ANYONE, ctx -> cookie.set(ctx, "token", Duration.ofHours(1)));
        try (var stage = Stage.at(address, PrincipalResolver.NONE, pages -> List.of(signIn))) {
            return stage.request().get("/in").header("Set-Cookie");
        }
    }
}
