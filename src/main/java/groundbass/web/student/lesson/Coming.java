package groundbass.web.student.lesson;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.EpisodeState;
import java.time.Instant;
import java.util.stream.Stream;

/**
 * A lesson that is promised for an hour that has not come.
 *
 * @param madeAt when the promise was made
 */
public record Coming(EpisodeId id, String title, Instant at, Instant madeAt) {
    static Stream<Coming> of(Episode episode, Instant now) {
        return episode.state() instanceof EpisodeState.Scheduled promise && !promise.isAtOnce() && !promise.isDue(now)
                ? Stream.of(new Coming(episode.id(), episode.title(), promise.at(), promise.madeAt()))
                : Stream.empty();
    }
}
