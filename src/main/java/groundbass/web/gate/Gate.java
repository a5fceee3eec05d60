package groundbass.web.gate;

import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.handler.ThreadLimitHandler;

/** What every request passes before a route is looked for, from the outside to the inside. */
public final class Gate {
    /** Of some 250 threads; who asks for more waits without one. */
    static final int THREADS_EACH = 80;

    private Gate() {}

    /** Builds the gate around whatever the server gets to handle. */
    public static void build(Server server, long largestForm) {
        var threads = new ThreadsOfANetwork();
        var traffic = new Traffic();
        threads.setHandler((Handler) traffic);
        var forms = new Forms(largestForm);
        traffic.setHandler((Handler) forms);
        forms.setHandler((Handler) new NamedRequests());
        server.setHandler((Handler) threads);
    }

    private static final class ThreadsOfANetwork extends ThreadLimitHandler {
        ThreadsOfANetwork() {
            super(null, null, false);
            setThreadLimit(THREADS_EACH);
        }

        @Override
        protected String getRemoteIP(Request request) {
            return Network.of(Request.getRemoteAddr(request));
        }
    }
}
