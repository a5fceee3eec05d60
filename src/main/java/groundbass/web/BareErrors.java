package groundbass.web;

import jakarta.servlet.http.HttpServletResponse;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Answers what never reached a route (a request that is not HTTP, say): the status and nothing else. */
final class BareErrors extends ErrorHandler {
    private static final Logger log = LoggerFactory.getLogger(BareErrors.class);

    static void log(HttpServletResponse response, Error error) {
        log.error("the server cannot go on with a request", error);
        response.setStatus(HttpServletResponse.SC_INTERNAL_SERVER_ERROR);
    }

    @Override
    public boolean handle(Request request, Response response, Callback callback) {
        response.getHeaders().put("Content-Type", "text/plain; charset=utf-8");
        response.getHeaders().put("X-Content-Type-Options", "nosniff");
        response.getHeaders().put("Cache-Control", "no-store");
        Content.Sink.write(response, true, String.valueOf(response.getStatus()), callback);
        return true;
    }
}
