package groundbass.web;

import groundbass.web.gate.FrontServer;
import groundbass.web.gate.Gate;
import groundbass.web.gate.OneAddress;
import groundbass.web.shell.AccessFilter;
import groundbass.web.shell.Errors;
import groundbass.web.shell.HostNames;
import groundbass.web.shell.Installation;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.RequestTimes;
import groundbass.web.shell.Routes;
import groundbass.web.shell.SameOrigin;
import groundbass.web.shell.SecurityHeaders;
import io.javalin.Javalin;
import io.javalin.compression.CompressionStrategy;
import io.javalin.config.JavalinConfig;
import io.javalin.config.SizeUnit;
import io.javalin.json.JavalinJackson;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.eclipse.jetty.server.HttpConfiguration;

/** The listening server with all its page groups. */
public final class WebServer implements AutoCloseable {
    private static final long LARGEST_FORM = 2_000_000;
    private static final int LARGEST_UPLOAD_MB = 100;
    private static final long STOP_MILLIS = 5_000;

    private final Javalin javalin;
    private final List<Routes.Route> routes;

    private WebServer(Javalin javalin, List<Routes.Route> routes) {
        this.javalin = javalin;
        this.routes = List.copyOf(routes);
    }

    /** Starts listening; port 0 takes any free one. */
    public static WebServer start(
            String host,
            int port,
            Installation installation,
            HostNames hostNames,
            AccessFilter accessFilter,
            Errors errors,
            List<PageGroup> groups,
            Optional<RequestTimes> times) {
        var named = new ArrayList<Routes.Route>();
        var headers = new SecurityHeaders(installation);
        var javalin = Javalin.create(config -> {
            configure(config, installation, new BareErrors(headers));
            times.ifPresent(kept -> config.requestLogger.http(kept));
            named.addAll(addRoutes(config, installation, headers, hostNames, accessFilter, errors, groups));
        });
        return new WebServer(javalin.start(host, port), named);
    }

    /** Every way in. */
    public List<Routes.Route> routes() {
        return routes;
    }

    public int port() {
        return javalin.port();
    }

    private static void configure(JavalinConfig config, Installation installation, BareErrors errors) {
        config.startup.showJavalinBanner = false;
        config.startup.showOldJavalinVersionWarning = false;
        config.startup.startupWatcherEnabled = false;
        config.http.prefer405over404 = true;
        config.http.maxRequestSize = LARGEST_FORM;
        config.http.compressionStrategy = CompressionStrategy.GZIP;
        config.jetty.multipartConfig.maxInMemoryFileSize(1, SizeUnit.MB);
        config.jetty.multipartConfig.maxFileSize(LARGEST_UPLOAD_MB, SizeUnit.MB);
        config.jetty.multipartConfig.maxTotalRequestSize(LARGEST_UPLOAD_MB + 1, SizeUnit.MB);
        config.jsonMapper(new JavalinJackson(null, false));
        config.router.javaLangErrorHandler(errors::fault);
        config.jetty.modifyHttpConfiguration(http -> talkLittle(http, installation));
        config.jetty.modifyServer(server -> {
            server.setStopTimeout(STOP_MILLIS);
            server.setErrorHandler(errors);
            Gate.build(server, LARGEST_FORM);
        });
    }

    private static void talkLittle(HttpConfiguration http, Installation installation) {
        http.setSendServerVersion(false);
        http.setSendXPoweredBy(false);
        http.addCustomizer(new FrontServer(installation.hops()));
    }

    private static List<Routes.Route> addRoutes(
            JavalinConfig config,
            Installation installation,
            SecurityHeaders headers,
            HostNames hostNames,
            AccessFilter accessFilter,
            Errors errors,
            List<PageGroup> groups) {
        var sameOrigin = new SameOrigin(installation);
        config.routes.before(installation::receive);
        config.routes.before(headers::addTo);
        config.routes.before(hostNames::check);
        config.routes.before(OneAddress::check);
        config.routes.beforeMatched(sameOrigin::check);
        config.routes.beforeMatched(accessFilter::check);
        errors.addTo(config.routes);
        var routes = new Routes(config.routes);
        groups.forEach(group -> group.addTo(routes));
        return routes.all();
    }

    @Override
    public void close() {
        javalin.stop();
    }
}
