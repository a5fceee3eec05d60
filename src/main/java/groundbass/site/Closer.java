package groundbass.site;

import java.util.ArrayDeque;
import java.util.Deque;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Parts that are open; closes the last first, and all of them even when one fails. Thread-safe: what is added after the
 * end is closed at once.
 */
final class Closer implements AutoCloseable {
    private static final Logger log = LoggerFactory.getLogger(Closer.class);

    private final Deque<AutoCloseable> open = new ArrayDeque<>();
    private boolean closed;

    synchronized <T extends AutoCloseable> T add(T part) {
        open.push(part);
        if (closed) {
            close();
        }
        return part;
    }

    @Override
    public synchronized void close() {
        closed = true;
        while (!open.isEmpty()) {
            close(open.pop());
        }
    }

    @SuppressWarnings("try") // a part may be interrupted while it closes; the others are closed all the same
    private static void close(AutoCloseable part) {
        try {
            part.close();
        } catch (Exception e) {
            log.error("{} did not close", part.getClass().getSimpleName(), e);
        }
    }
}
