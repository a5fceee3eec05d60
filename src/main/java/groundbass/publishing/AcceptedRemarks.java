package groundbass.publishing;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.Episodes;
import groundbass.publishing.preflight.LessonRemark;
import java.time.Clock;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** Which remarks on an episode its educator has read and lets stand, by their digests. */
final class AcceptedRemarks {
    private final Jdbi jdbi;
    private final Episodes episodes;
    private final Clock clock;

    AcceptedRemarks(Jdbi jdbi, Episodes episodes, Clock clock) {
        this.jdbi = jdbi;
        this.episodes = episodes;
        this.clock = clock;
    }

    /** Lets these stand, whether they were accepted before or not. */
    void accept(EducatorId who, EpisodeId episode, Collection<String> digests) {
        jdbi.useTransaction(handle -> {
            episodes.lock(handle, episode); // or two windows both find a remark that is not accepted yet
            letStand(handle, who, episode, digests);
        });
    }

    /** The same for whoever has locked the episode. */
    void letStand(Handle handle, EducatorId who, EpisodeId episode, Collection<String> digests) {
        var fresh = new HashSet<>(digests);
        fresh.removeAll(of(episode));
        for (String digest : fresh) {
            handle.createUpdate("""
                            insert into accepted_remark (episode_id, remark, educator_id, accepted_at)
                            values (:episode, :remark, :who, :now)""")
                    .bind("episode", episode)
                    .bind("remark", digest)
                    .bind("who", who)
                    .bind("now", clock.instant())
                    .execute();
        }
    }

    Set<String> of(EpisodeId episode) {
        return Set.copyOf(jdbi.withHandle(
                handle -> handle.createQuery("select remark from accepted_remark where episode_id = :episode")
                        .bind("episode", episode)
                        .mapTo(String.class)
                        .list()));
    }

    /**
     * What of these keeps an episode from going out: what blocks, and what asks and was not accepted.
     *
     * @param accepted what {@link #of} says of the episode
     */
    static List<LessonRemark> holding(Set<String> accepted, List<LessonRemark> remarks) {
        return remarks.stream()
                .filter(remark -> remark.blocks() || remark.asks() && !accepted.contains(remark.digest()))
                .toList();
    }
}
