package groundbass.web;

import groundbass.store.RequestId;
import groundbass.web.shell.SecurityHeaders;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.eclipse.jetty.util.Callback;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Answers what never reached a route (a request that is not HTTP, say): the status, the headers of every answer, and nothing else. */
final class BareErrors extends ErrorHandler {
    private static final Logger log = LoggerFactory.getLogger(BareErrors.class);

    private final SecurityHeaders headers;

    BareErrors(SecurityHeaders headers) {
        this.headers = headers;
    }

    /** For errors of the machine (out of memory, say), where even the error page might fail. */
    void fault(HttpServletResponse response, Error error) {
        String id = RequestId.ofFault();
        log.error("fault {}", id, error);
        if (response.isCommitted()) {
            return;
        }
        headers.addTo(response::setHeader);
        response.setStatus(HttpServletResponse.SC_INTERNAL_SERVER_ERROR);
        response.setContentType("text/plain; charset=utf-8");
        try {
            response.getOutputStream().print("500 " + id + "\n");
        } catch (IOException e) {
            log.debug("nobody is left to tell", e);
        }
    }

    @Override
    public boolean handle(Request request, Response response, Callback callback) {
        headers.addTo((name, value) -> response.getHeaders().put(name, value));
        response.getHeaders().put("Content-Type", "text/plain; charset=utf-8");
        response.getHeaders().put("Cache-Control", "no-store");
        Content.Sink.write(response, true, String.valueOf(response.getStatus()), callback);
        return true;
    }
}
