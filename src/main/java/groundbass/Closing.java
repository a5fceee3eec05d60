package groundbass;

import java.util.ArrayDeque;
import java.util.Deque;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Parts that are open; closes the last first, and all of them even when one fails. Thread-safe. */
final class Closing implements AutoCloseable {
    private static final Logger log = LoggerFactory.getLogger(Closing.class);

    private final Deque<AutoCloseable> open = new ArrayDeque<>();
    private boolean closed;

    /** A part that comes after everything was closed is closed at once. */
    synchronized <T extends AutoCloseable> T add(T part) {
        if (closed) {
            close(part);
        } else {
            open.push(part);
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
