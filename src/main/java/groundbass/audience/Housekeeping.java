package groundbass.audience;

import groundbass.audience.download.Downloads;
import groundbass.audience.student.Sessions;
import groundbass.audience.student.SignIns;
import groundbass.audience.student.Tries;
import groundbass.post.Outbox;

/** All that must not be kept longer than needed, in one idempotent pass; to be run every few minutes. */
public final class Housekeeping {
    private final Downloads downloads;
    private final SignIns signIns;
    private final Sessions sessions;
    private final Outbox outbox;
    private final Tries tries;

    public Housekeeping(Downloads downloads, SignIns signIns, Sessions sessions, Outbox outbox, Tries tries) {
        this.downloads = downloads;
        this.signIns = signIns;
        this.sessions = sessions;
        this.outbox = outbox;
        this.tries = tries;
    }

    /** Closes silent downloads, destroys the day-old visitor key, deletes ended sessions, old links and old letters. */
    public void tidy() {
        downloads.sweep();
        signIns.purge();
        sessions.purge();
        outbox.purge();
        tries.purge();
    }
}
