package groundbass.web;

import static io.restassured.RestAssured.given;

import groundbass.Parts;
import groundbass.audience.student.Device;
import groundbass.audience.student.Person;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.educator.TrialEducators;
import groundbass.catalog.settings.Imprint;
import groundbass.catalog.settings.Settings;
import groundbass.site.Config;
import groundbass.site.Groundbass;
import groundbass.store.BothDatabases;
import groundbass.store.SettableClock;
import io.restassured.http.Cookie;
import io.restassured.specification.RequestSpecification;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Comparator;
import java.util.function.UnaryOperator;

/**
 * A whole site on a folder and a port of its own, with a clock that the test moves. In a test class:
 * {@code static final Site site = Site.open();} and {@code @AfterAll static void close() { site.close(); }}.
 */
public final class Site implements AutoCloseable {
    /** With which {@link #educator} signs in. */
    public static final String PASSWORD = "a password for trials";

    /** A Monday, far from any change of the clocks. */
    public static final Instant START = Instant.parse("2026-02-02T09:00:00Z");

    private final Path data;
    private final SettableClock clock;
    private final Groundbass groundbass;

    private Site(Path data, SettableClock clock, Groundbass groundbass) {
        this.data = data;
        this.clock = clock;
        this.groundbass = groundbass;
    }

    public static Site open() {
        return open(config -> config);
    }

    /** A site that is set up otherwise than {@link Config#local}. */
    public static Site open(UnaryOperator<Config> change) {
        try {
            var data = Files.createTempDirectory("groundbass-site");
            var clock = SettableClock.at(START);
            var config = change.apply(Config.local(data, 0));
            BothDatabases.layEmbedded(data);
            return new Site(data, clock, Groundbass.start(config, clock));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public SettableClock clock() {
        return clock;
    }

    public Path data() {
        return data;
    }

    public Groundbass groundbass() {
        return groundbass;
    }

    /** The site's address, such as {@code http://localhost:41234}. */
    public String address() {
        return groundbass.address().toString();
    }

    /** A request of a browser that loads a page; redirects are not followed. */
    public RequestSpecification browser() {
        return program().accept("text/html,application/xhtml+xml,*/*;q=0.8");
    }

    /** A request of a browser that sends a form of this site. */
    public RequestSpecification form() {
        return browser().header("Sec-Fetch-Site", "same-origin").contentType("application/x-www-form-urlencoded");
    }

    /** An educator of this site, made when first asked for. */
    public synchronized EducatorId educator() {
        var jdbi = groundbass.database().jdbi();
        var educators = new Educators(jdbi, new Audit(jdbi, clock), clock);
        return educators.owner().map(Educator::id).orElseGet(this::madeEducator);
    }

    private EducatorId madeEducator() {
        var jdbi = groundbass.database().jdbi();
        var id = TrialEducators.create(jdbi, clock, "Trial Studio", "desk@trial.example", PASSWORD)
                .id();
        new Settings(jdbi, new Audit(jdbi, clock))
                .saveImprint(id, new Imprint("Trial Studio", "studio@trial.example", "", "", ""));
        return id;
    }

    /** The cookie of somebody who has just signed in; put it on any request: {@code site.form().cookie(...)}. */
    public Cookie signedIn(Person person) {
        var token = Parts.sessions(groundbass.database().jdbi(), clock).open(person, Device.COMPUTER);
        return new Cookie.Builder("session", token.value()).build();
    }

    /** The cookie of this site's {@link #educator}. */
    public Cookie atTheDesk() {
        return signedIn(new Person.OfEducator(educator()));
    }

    /** A bare request, as a program sends it; redirects are not followed. */
    public RequestSpecification program() {
        return given().baseUri("http://localhost")
                .port(groundbass.port())
                .redirects()
                .follow(false);
    }

    @Override
    public void close() {
        groundbass.close();
        try (var files = Files.walk(data)) {
            for (var file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
