package groundbass.publishing;

import groundbass.catalog.episode.EpisodeId;
import groundbass.store.fault.DatabaseAway;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Lessons that this program itself fails at: that is an answer as well, and keeps no other lesson from its own. */
final class Judging {
    private static final Logger log = LoggerFactory.getLogger(Judging.class);

    private Judging() {}

    /**
     * What a look through a lesson finds.
     *
     * @param unjudged what to say where the look fails; a database that is away says nothing of the lesson, and is thrown on
     */
    static <T> T of(EpisodeId lesson, Supplier<T> look, T unjudged) {
        try {
            return look.get();
        } catch (RuntimeException | StackOverflowError e) {
            if (DatabaseAway.causes(e)) {
                throw e;
            }
            log.error("episode {} cannot be judged", lesson, e);
            return unjudged;
        }
    }
}
