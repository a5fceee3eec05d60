package groundbass.web.gate;

import java.util.Locale;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpStatus;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;

/**
 * Bounds how many bodies come in and how many files go out at once, and how slowly, so that threads are left for pages
 * whatever the readers of files and the senders of bodies do. Who finds no place is asked to come again.
 */
final class Traffic extends Handler.Wrapper {
    private static final String RETRY_SECONDS = "3";

    private static final long SMALL = 64_000;

    /** Forms are read without a thread, and hold no more than their own bytes: of these together at most 64 MB. */
    private final ConnectionLimit smallForms = new ConnectionLimit(32, 1_000);

    private final ConnectionLimit largeForms = new ConnectionLimit(8, 24);

    private final ConnectionLimit uploads = new ConnectionLimit(8, 32);
    /** Who asks for more files at once than this waits before the traffic is counted; see {@link Gate}. */
    private final ConnectionLimit downloads = new ConnectionLimit(Gate.THREADS_EACH, 144);

    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
        if (hasBody(request)) {
            return admit(bodies(request), MinimumRate.BODY, request, response, callback);
        }
        return isFile(request)
                ? admit(downloads, MinimumRate.FILE, request, response, callback)
                : super.handle(request, response, callback);
    }

    private ConnectionLimit bodies(Request request) {
        if (!Forms.isForm(request)) {
            return uploads;
        }
        boolean small = request.getLength() >= 0 && request.getLength() <= SMALL;
        return small ? smallForms : largeForms;
    }

    private boolean admit(
            ConnectionLimit places, MinimumRate pace, Request request, Response response, Callback callback)
            throws Exception {
        String network = Network.of(Request.getRemoteAddr(request));
        if (!places.enter(network)) {
            refuse(request, response, callback);
            return true;
        }
        var visit = new WatchedRequest(request, response, pace, () -> places.leave(network));
        Request.addCompletionListener(request, failure -> visit.leave());
        return super.handle(visit, response, callback);
    }

    private static void refuse(Request request, Response response, Callback callback) {
        response.getHeaders().put(HttpHeader.RETRY_AFTER, RETRY_SECONDS);
        response.getHeaders().put(HttpHeader.CONNECTION, "close");
        Response.writeError(request, response, callback, HttpStatus.SERVICE_UNAVAILABLE_503);
    }

    private static boolean hasBody(Request request) {
        return request.getLength() > 0 || request.getHeaders().contains(HttpHeader.TRANSFER_ENCODING);
    }

    private static boolean isFile(Request request) {
        String path = request.getHttpURI().getPath().toLowerCase(Locale.ROOT);
        return path.startsWith("/files/")
                || path.startsWith("/play/")
                || path.startsWith("/api/") && path.contains("/files/")
                || path.endsWith("/recording");
    }
}
