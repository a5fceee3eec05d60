package groundbass.web;

import static io.restassured.RestAssured.given;

import groundbass.catalog.settings.SiteSettings;
import groundbass.web.shell.AccessFilter;
import groundbass.web.shell.Errors;
import groundbass.web.shell.HostNames;
import groundbass.web.shell.Installation;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.PrincipalResolver;
import groundbass.web.shell.SessionCookie;
import groundbass.web.view.Assets;
import groundbass.web.view.Templates;
import io.restassured.specification.RequestSpecification;
import java.net.URI;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** The shell alone, without database or lessons, around page groups that a test makes up. */
public final class Stage implements AutoCloseable {
    private final WebServer server;

    private Stage(WebServer server) {
        this.server = server;
    }

    public static Stage with(PageGroup... groups) {
        return at("http://localhost:8420", PrincipalResolver.NONE, pages -> List.of(groups));
    }

    /** A stage whose site is known to the world as {@code publicAddress}. */
    public static Stage at(
            String publicAddress, PrincipalResolver principals, Function<Pages, List<PageGroup>> groups) {
        return at(Installation.at(URI.create(publicAddress)), principals, groups);
    }

    /** A stage that is set up as the operator wants it. */
    public static Stage at(
            Installation installation, PrincipalResolver principals, Function<Pages, List<PageGroup>> groups) {
        var accessFilter = new AccessFilter(principals, new SessionCookie(installation));
        var pages = new Pages(new Templates(new Assets()), installation, () -> SiteSettings.USUAL, accessFilter);
        return new Stage(WebServer.start(
                "127.0.0.1",
                0,
                installation,
                new HostNames(installation, () -> SiteSettings.USUAL),
                accessFilter,
                new Errors(pages),
                groups.apply(pages),
                Optional.empty()));
    }

    public int port() {
        return server.port();
    }

    /** A bare request; redirects are not followed. */
    public RequestSpecification request() {
        return given().baseUri("http://127.0.0.1").port(port()).redirects().follow(false);
    }

    @Override
    public void close() {
        server.close();
    }
}
