package groundbass.audience.rollup;

import groundbass.catalog.episode.EpisodeId;
import java.util.Collection;

/** The SQL that says which downloads statistics count: those of people, each visitor's first of a day, none of an educator's own. */
public final class Counting {
    /** For a {@code where} on {@code download}. */
    public static final String COUNTED = "not download.robot and not download.own and not download.repeated";

    /** Columns: how many there are of each state. */
    public static final String BY_STATE = """
            count(*) filter (where download.state = 'complete') as complete,
            count(*) filter (where download.state = 'broken off') as broken_off,
            count(*) filter (where download.state = 'handed over') as handed_over,
            count(*) filter (where download.state = 'started') as running""";

    /**
     * What to compare with many episodes. Nearly every download is of one of them, so that a database which looked each of
     * them up by its index would read all to show some (H2 does); an expression has no index.
     */
    public static final String OF_MANY = "coalesce(download.episode_id, '')";

    /** For a {@code where} on {@code download}: those of all lessons of the series that are bound as {@code ids}. */
    public static final String OF_SERIES = OF_MANY + " in (select id from episode where series_id in (<ids>))";

    private Counting() {}

    /** What to compare with these episodes. */
    public static String episodeOf(Collection<EpisodeId> episodes) {
        return episodes.size() == 1 ? "download.episode_id" : OF_MANY;
    }
}
