package groundbass.publishing;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeState;
import groundbass.publishing.Trouble.Kind;
import groundbass.release.BuildState;
import groundbass.release.Release;
import groundbass.text.Message;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;

/**
 * Watches promised hours, and tells their educator on the desk and by letter when one is in danger or was missed, and when
 * a correction cannot be built.
 */
public final class HourWatch {
    /** So long before its hour a lesson without files is in danger. */
    static final Duration NEAR = Duration.ofMinutes(10);

    /** What comes out this much after its hour is late; a pass comes round every few seconds. */
    static final Duration LATE = Duration.ofMinutes(1);

    private final PublishingParts parts;
    private final Promises promises;
    private final HourLetters notices;

    public HourWatch(PublishingParts parts, HourLetters notices) {
        this.parts = parts;
        this.promises = new Promises(parts);
        this.notices = notices;
    }

    /**
     * What is in the way of an episode's hour now, the gravest first; of one that is out, that it came out late. None where
     * no hour is promised.
     */
    public List<Trouble> troubles(LessonLook look) {
        var episode = look.episode();
        if (episode.state() instanceof EpisodeState.Published out) {
            return notices.missed(episode.id()).stream()
                    .map(hour -> late(hour, out.firstAt()))
                    .toList();
        }
        return episode.state() instanceof EpisodeState.Scheduled promise
                ? promises.stand(look, promise)
                        .map(stand -> troubles(promise, stand))
                        .orElseGet(List::of)
                : List.of();
    }

    private static Trouble late(Instant hour, Instant out) {
        long minutes = Duration.between(hour, out).toMinutes();
        return new Trouble(Kind.LATE, hour.toString(), Message.of("publishing.trouble.late", minutes));
    }

    private List<Trouble> troubles(EpisodeState.Scheduled promise, Promises.Stand stand) {
        var now = parts.clock.instant();
        var troubles = new ArrayList<Trouble>();
        keptBack(promise, stand, now).ifPresent(troubles::add);
        failed(stand.wanted()).ifPresent(troubles::add);
        if (stand.keptBack().isEmpty()) { // else nothing goes out, whatever is built or was written last
            notReady(promise, stand, now).ifPresent(troubles::add);
            draftHeld(promise, stand, now).ifPresent(troubles::add);
        }
        return troubles;
    }

    private static Optional<Trouble> keptBack(EpisodeState.Scheduled promise, Promises.Stand stand, Instant now) {
        return stand.keptBack().stream()
                .findFirst()
                .filter(first -> isWithin(Promises.LEAD, promise, now))
                .map(first -> new Trouble(
                        Kind.KEPT_BACK,
                        promise.at().toString(),
                        Message.of("publishing.trouble.kept", first.message())));
    }

    private static Optional<Trouble> failed(Release release) {
        return release.state() instanceof BuildState.Failed failed
                ? Optional.of(new Trouble(
                        Kind.FAILED,
                        release.id().value(),
                        Message.of("publishing.trouble.failed", failed.cause().message(), failed.tries())))
                : Optional.empty();
    }

    /** Publishing at once promises no hour. */
    private static Optional<Trouble> notReady(EpisodeState.Scheduled promise, Promises.Stand stand, Instant now) {
        boolean danger = stand.showable().isEmpty() && !promise.isAtOnce() && isWithin(NEAR, promise, now);
        return danger
                ? Optional.of(
                        new Trouble(Kind.NOT_READY, promise.at().toString(), Message.of("publishing.trouble.notready")))
                : Optional.empty();
    }

    private static Optional<Trouble> draftHeld(EpisodeState.Scheduled promise, Promises.Stand stand, Instant now) {
        return stand.holding().stream()
                .findFirst()
                .filter(first -> isWithin(Promises.LEAD, promise, now))
                .map(first -> new Trouble(
                        Kind.DRAFT_HELD,
                        promise.at().toString(),
                        Message.of("publishing.trouble.draft", first.message())));
    }

    private static boolean isWithin(Duration lead, EpisodeState.Scheduled promise, Instant now) {
        return !promise.at().minus(lead).isAfter(now);
    }

    Promises promises() {
        return promises;
    }

    /** Writes a letter of each trouble that its educator has not been told of. */
    void look(Episode episode) {
        for (var trouble : troubles(parts.look().at(episode))) {
            parts.jdbi.useTransaction(handle -> notices.tell(handle, episode, trouble));
        }
    }

    /** Writes one letter of a correction that failed. */
    void lookAtCorrection(Release failed) {
        var told = failed(failed);
        parts.episodes
                .find(failed.episode())
                .ifPresent(episode -> told.ifPresent(
                        trouble -> parts.jdbi.useTransaction(handle -> notices.tell(handle, episode, trouble))));
    }

    /** Tells, within the caller's transaction, that an episode comes out late, where it does. */
    void cameOut(Handle handle, Episode episode, EpisodeState.Scheduled promise) {
        var now = parts.clock.instant();
        if (!promise.isAtOnce() && !promise.at().plus(LATE).isAfter(now)) {
            notices.tell(handle, episode, late(promise.at(), now));
        }
    }
}
