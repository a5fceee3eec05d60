package groundbass.web.desk.calendar;

import groundbass.catalog.episode.EpisodeState;
import groundbass.catalog.series.Series;
import groundbass.publishing.LessonLook;
import groundbass.release.Release;
import groundbass.release.Releases;
import groundbass.text.Message;
import groundbass.web.view.Reader;
import java.util.List;
import java.util.Optional;

/**
 * Where an episode stands with all of its releases: the part of its page that changes by itself.
 *
 * @param path of the episode on the desk
 * @param site its page for students, once there is one
 * @param now which release readers see; empty where none
 * @param troubles what is in the way of its hour, or was
 * @param differs in what the draft differs from what readers see or will see
 */
public record ReleaseCalendar(
        String path,
        EpisodeStatus standing,
        boolean promised,
        Optional<String> site,
        List<ReleaseRow> releases,
        Optional<Message> now,
        List<Message> troubles,
        Optional<Message> differs) {
    static ReleaseCalendar of(LessonLook look, Series series, Releases releases, Reader reader) {
        var episode = look.episode();
        var standing = EpisodeStatus.of(episode, look.latest(), reader);
        var current = look.current().map(release -> release.spec().release());
        var rows = look.releases().stream()
                .map(release -> row(release, current.orElse(0), releases))
                .toList();
        var now = current.map(number -> Message.of("desk.calendar.now", number));
        boolean promised = episode.state() instanceof EpisodeState.Scheduled;
        var site =
                Optional.of("/series/" + series.slug() + "/" + episode.number()).filter(path -> episode.isOut());
        return new ReleaseCalendar(
                "/desk/episodes/" + episode.id(), standing, promised, site, rows, now, List.of(), Optional.empty());
    }

    private static ReleaseRow row(Release release, int current, Releases releases) {
        return ReleaseRow.of(release, current, releases.files().of(release.id()));
    }

    ReleaseCalendar with(List<Message> newTroubles, Optional<Message> difference) {
        return new ReleaseCalendar(path, standing, promised, site, releases, now, newTroubles, difference);
    }

    public boolean out() {
        return site.isPresent();
    }
}
