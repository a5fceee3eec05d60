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

    /** Forms are read without a thread; what they hold is their own bytes. */
    private final Places forms = new Places(32, 256);

    private final Places uploads = new Places(8, 32);
    private final Places downloads = new Places(64, 144);

    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
        if (hasBody(request)) {
            return admit(Forms.isForm(request) ? forms : uploads, Pace.BODY, request, response, callback);
        }
        return isFile(request)
                ? admit(downloads, Pace.FILE, request, response, callback)
                : super.handle(request, response, callback);
    }

    private boolean admit(Places places, Pace pace, Request request, Response response, Callback callback)
            throws Exception {
        String network = Network.of(Request.getRemoteAddr(request));
        if (!places.enter(network)) {
            refuse(request, response, callback);
            return true;
        }
        var visit = new Visit(request, response, pace, () -> places.leave(network));
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
        return path.startsWith("/files/") || path.startsWith("/play/") || path.endsWith("/recording");
    }
}
