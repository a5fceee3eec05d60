package groundbass.web.desk.calendar;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeState;
import groundbass.catalog.series.Series;
import groundbass.release.Release;
import groundbass.release.Releases;
import groundbass.web.view.Reader;
import java.util.List;
import java.util.Optional;

/**
 * Where an episode stands with all of its releases: the part of its page that changes by itself.
 *
 * @param path of the episode on the desk
 * @param site its page for students, once there is one
 */
public record Calendar(
        String path, Standing standing, boolean promised, Optional<String> site, List<ReleaseRow> releases) {
    public static Calendar of(Episode episode, Series series, Releases releases, Reader reader) {
        var all = releases.of(episode.id());
        var standing = Standing.of(episode, all.stream().findFirst(), reader);
        var rows = all.stream().map(release -> row(release, releases)).toList();
        boolean promised = episode.state() instanceof EpisodeState.Scheduled;
        var site =
                Optional.of("/series/" + series.slug() + "/" + episode.number()).filter(path -> episode.isPublished());
        return new Calendar("/desk/episodes/" + episode.id(), standing, promised, site, rows);
    }

    private static ReleaseRow row(Release release, Releases releases) {
        return ReleaseRow.of(release, releases.files(release.id()));
    }

    public boolean out() {
        return site.isPresent();
    }
}
