package groundbass.web;

import static io.restassured.RestAssured.given;

import groundbass.web.shell.Doorkeeper;
import groundbass.web.shell.Errors;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.SessionCookie;
import groundbass.web.shell.Sessions;
import groundbass.web.shell.SiteSettings;
import groundbass.web.view.Assets;
import groundbass.web.view.Templates;
import io.restassured.specification.RequestSpecification;
import java.net.URI;
import java.time.ZoneId;
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
        return at("http://localhost:8420", Sessions.NONE, pages -> List.of(groups));
    }

    /** A stage whose site is known to the world as {@code publicAddress}. */
    public static Stage at(String publicAddress, Sessions sessions, Function<Pages, List<PageGroup>> groups) {
        var settings =
                new SiteSettings(URI.create(publicAddress), ZoneId.of("Europe/Vienna"), false, false, Optional.empty());
        var pages = new Pages(new Templates(new Assets()), settings);
        var doorkeeper = new Doorkeeper(sessions, new SessionCookie(settings));
        return new Stage(WebServer.start("127.0.0.1", 0, settings, doorkeeper, new Errors(pages), groups.apply(pages)));
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
