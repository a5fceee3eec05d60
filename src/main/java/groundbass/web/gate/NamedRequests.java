package groundbass.web.gate;

import groundbass.store.RequestId;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;

/** Gives each request its id; the innermost part of the gate, since what is further in stays in one thread. */
final class NamedRequests extends Handler.Wrapper {
    @Override
    public boolean handle(Request request, Response response, Callback callback) throws Exception {
        RequestId.begin();
        try {
            return super.handle(request, response, callback);
        } finally {
            RequestId.end();
        }
    }
}
