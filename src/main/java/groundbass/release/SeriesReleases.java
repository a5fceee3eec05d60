package groundbass.release;

import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.series.SeriesId;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Jdbi;

/** What readers get of a whole series, asked for at once: one question for each of its lessons takes too long. */
public final class SeriesReleases {
    private static final String CURRENT =
            Releases.CURRENT + " and release.episode_id in (select id from episode where series_id = :series)";

    private final Jdbi jdbi;

    public SeriesReleases(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    /** By the episode; none for what was never out. */
    public Map<EpisodeId, Release> current(SeriesId series) {
        return jdbi.withHandle(handle -> handle.createQuery(StoredRelease.SELECT + "where " + CURRENT)
                .bind("series", series)
                .mapTo(StoredRelease.class)
                .map(StoredRelease::release)
                .collect(Collectors.toMap(Release::episode, Function.identity())));
    }

    /** How many bytes the bundles have together of all its lessons that are out. */
    public long bundleBytes(SeriesId series) {
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select coalesce(sum(byte_count), 0) from release_file f join release on release.id = f.release_id
                            join episode e on e.id = release.episode_id
                        where f.role in (:stored, :streamed) and e.withdrawn_at is null and\s""" + CURRENT)
                .bind("stored", FileRole.BUNDLE)
                .bind("streamed", FileRole.ZIP)
                .bind("series", series)
                .mapTo(Long.class)
                .one());
    }
}
