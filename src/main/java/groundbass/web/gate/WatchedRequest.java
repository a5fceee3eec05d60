package groundbass.web.gate;

import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.thread.Scheduler;

/**
 * A body on its way in, or a file on its way out, which is watched: its connection is cut where it moves too slowly. Its
 * place is free again when the body has come, or when all is over.
 */
final class WatchedRequest extends Request.Wrapper {
    private final Response response;
    private final MinimumRate pace;
    private final Runnable leaving;
    private final AtomicBoolean here = new AtomicBoolean(true);
    private final AtomicLong received = new AtomicLong();
    private volatile Scheduler.Task next;
    private long moved;
    private int looks;

    WatchedRequest(Request request, Response response, MinimumRate pace, Runnable leaving) {
        super(request);
        this.response = response;
        this.pace = pace;
        this.leaving = leaving;
        this.next = schedule();
    }

    private Scheduler.Task schedule() {
        return getComponents().getScheduler().schedule(this::look, pace.every().toMillis(), TimeUnit.MILLISECONDS);
    }

    private void look() {
        long now = received.get() + Response.getContentBytesWritten(response);
        boolean slow = now - moved < pace.least();
        moved = now;
        looks++;
        if (here.get() && (slow || looks >= pace.times())) {
            getConnectionMetaData().getConnection().getEndPoint().close(new TimeoutException("moved too slowly"));
        } else if (here.get()) {
            next = schedule();
        }
    }

    void leave() {
        if (here.compareAndSet(true, false)) {
            next.cancel();
            leaving.run();
        }
    }

    @Override
    public Content.Chunk read() {
        var chunk = super.read();
        if (chunk != null) {
            received.addAndGet(chunk.remaining());
            if (chunk.isLast() && pace.equals(MinimumRate.BODY)) {
                leave();
            }
        }
        return chunk;
    }
}
