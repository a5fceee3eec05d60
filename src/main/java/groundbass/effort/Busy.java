package groundbass.effort;

import java.time.Duration;
import java.util.Objects;

/** The work was not begun, because too much is asked for at this moment; nothing of what was sent is wrong. */
public final class Busy extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final Duration wait;

    /** @param wait after how long to ask again */
    public Busy(Duration wait) {
        super("busy; ask again in " + wait);
        this.wait = Objects.requireNonNull(wait);
    }

    /** After how long to ask again. */
    public Duration howLong() {
        return wait;
    }
}
