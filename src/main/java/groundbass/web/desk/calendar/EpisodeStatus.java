package groundbass.web.desk.calendar;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeState;
import groundbass.release.BuildState;
import groundbass.release.Release;
import groundbass.text.Message;
import groundbass.web.view.Reader;
import java.util.Objects;
import java.util.Optional;

/**
 * Where an episode stands, in words: on its way to the students, and with its files.
 *
 * @param look one of the style sheet's words for a state: draft, promised, out
 * @param work how building its latest release goes, while that is worth saying
 * @param failed whether somebody has to do something about it
 * @param busy whether it will change by itself soon
 */
public record EpisodeStatus(Message state, String look, Optional<Message> work, boolean failed, boolean busy) {
    public EpisodeStatus {
        Objects.requireNonNull(state);
        Objects.requireNonNull(look);
        Objects.requireNonNull(work);
    }

    public static EpisodeStatus of(Episode episode, Optional<Release> latest, Reader reader) {
        boolean failed = latest.filter(Release::isFailed).isPresent();
        boolean atOnce = episode.state() instanceof EpisodeState.Scheduled promised && promised.isAtOnce();
        var work = latest.flatMap(release -> work(release, episode.isPublished()));
        boolean busy =
                latest.filter(release -> isBusy(release, episode, atOnce)).isPresent();
        var state = atOnce ? Message.of("desk.state.at-once") : state(episode.state(), reader);
        return new EpisodeStatus(state, look(episode.state()), work, failed, busy);
    }

    /** While it is built, and while what is built waits for the pass that brings it out. */
    private static boolean isBusy(Release release, Episode episode, boolean atOnce) {
        boolean waits = release.isReady() && release.publishedAt().isEmpty();
        return release.isUnderWay() || waits && (atOnce || episode.isPublished());
    }

    private static Message state(EpisodeState state, Reader reader) {
        if (state instanceof EpisodeState.Scheduled promised) {
            var there = reader.in(promised.zone());
            return Message.of(
                    "desk.state.promised",
                    there.moment(promised.at()),
                    promised.zone().getId());
        }
        if (state instanceof EpisodeState.Published out && out.withdrawal().isPresent()) {
            return Message.of(
                    "desk.state.withdrawn", reader.date(out.withdrawal().get().at()));
        }
        if (state instanceof EpisodeState.Published out) {
            return Message.of("desk.state.out", reader.date(out.firstAt()));
        }
        return Message.of("desk.state.draft");
    }

    private static String look(EpisodeState state) {
        if (state instanceof EpisodeState.Scheduled) {
            return "promised";
        }
        return state instanceof EpisodeState.Published out && out.withdrawal().isEmpty() ? "out" : "draft";
    }

    private static Optional<Message> work(Release release, boolean out) {
        if (release.isReady() && (release.publishedAt().isPresent() || !out)) {
            return Optional.empty();
        }
        return Optional.of(work(release.state()));
    }

    /** How far a release is. */
    static Message work(BuildState state) {
        if (state instanceof BuildState.Building building) {
            return Message.of("desk.build.building", building.done(), building.total());
        }
        if (state instanceof BuildState.Failed failed) {
            return Message.of("desk.build.failed", failed.cause().message());
        }
        if (state instanceof BuildState.Overtaken) {
            return Message.of("desk.build.overtaken");
        }
        return Message.of(state instanceof BuildState.Ready ? "desk.build.ready" : "desk.build.waiting");
    }
}
