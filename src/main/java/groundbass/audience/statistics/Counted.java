package groundbass.audience.statistics;

import groundbass.catalog.episode.EpisodeId;
import java.util.Collection;
import java.util.List;

/** Which downloads statistics count: those of people, each visitor's first of a day, and none of an educator's own. */
final class Counted {
    /** For a {@code where}. */
    static final String ONES = "not download.robot and not download.own and not download.repeated";

    private Counted() {}

    static List<String> values(Collection<EpisodeId> episodes) {
        return episodes.stream().map(EpisodeId::value).toList();
    }
}
