package groundbass.web.shell;

import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.RequestLogger;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.Timer;
import java.time.Duration;

/**
 * Counts answers and how long they took, by route, method and status, under the names and tags that Micrometer's own
 * instruments of web servers use. By route and never by address: addresses hold names of lessons and links that open
 * something, and there is no end of them.
 */
public final class RequestTimes implements RequestLogger {
    private static final String NO_ROUTE = "NOT_FOUND";
    private static final String OTHER = "OTHER";
    private static final Duration[] STEPS = {
        Duration.ofMillis(10),
        Duration.ofMillis(50),
        Duration.ofMillis(200),
        Duration.ofSeconds(1),
        Duration.ofSeconds(5)
    };

    private final MeterRegistry registry;

    public RequestTimes(MeterRegistry registry) {
        this.registry = registry;
    }

    @Override
    public void handle(Context ctx, Float millis) {
        Timer.builder("http.server.requests")
                .description("Answers, and how long they took.")
                .tag("method", method(ctx))
                .tag("uri", route(ctx))
                .tag("status", String.valueOf(ctx.statusCode()))
                .tag("outcome", outcome(ctx.statusCode()))
                .serviceLevelObjectives(STEPS)
                .register(registry)
                .record(Duration.ofNanos((long) (millis * 1_000_000)));
    }

    private static String method(Context ctx) {
        return HandlerType.commonHttp().contains(ctx.method()) ? ctx.method().name() : OTHER;
    }

    private static String route(Context ctx) {
        var route = ctx.endpoints().matchedHttpEndpoint();
        return route == null ? NO_ROUTE : route.path;
    }

    private static String outcome(int status) {
        return switch (status / 100) {
            case 1 -> "INFORMATIONAL";
            case 2 -> "SUCCESS";
            case 3 -> "REDIRECTION";
            case 4 -> "CLIENT_ERROR";
            case 5 -> "SERVER_ERROR";
            default -> "UNKNOWN";
        };
    }
}
