package groundbass.publishing;

import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.Withdrawal;
import groundbass.form.Outcome;
import java.util.List;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;

/**
 * Taking a lesson back from students, and putting it back: its page says so, and its files are not to be had meanwhile.
 * Nothing is done with a lesson that was taken back, or put back, since it was read.
 */
public final class TakingBack {
    private final PublishingParts parts;

    public TakingBack(PublishingParts parts) {
        this.parts = parts;
    }

    /**
     * @param lesson as whoever asks has seen it
     * @param why for students; may be blank
     */
    public Outcome<EpisodeId> takeBack(EducatorId who, Episode lesson, String why) {
        String reason = why.strip();
        if (reason.length() > Withdrawal.LONGEST_REASON) {
            return Outcome.refused("why", "catalog.problem.long", reason.length(), Withdrawal.LONGEST_REASON);
        }
        return asSeen(lesson, handle -> {
            var withdrawal = new Withdrawal(parts.clock.instant(), reason);
            if (!parts.episodes.takeBack(handle, lesson.id(), withdrawal)) {
                return Outcome.refused("", "publishing.problem.notout");
            }
            parts.audit.append(handle, who, AuditWord.LESSON_WITHDRAWN, told(lesson) + said(reason));
            return Outcome.done(lesson.id());
        });
    }

    /** @param lesson as whoever asks has seen it */
    public Outcome<EpisodeId> putBack(EducatorId who, Episode lesson) {
        return asSeen(lesson, handle -> {
            if (!parts.episodes.putBack(handle, lesson.id())) {
                return Outcome.refused("", "publishing.problem.notwithdrawn");
            }
            parts.news.waitAnew(handle, lesson.id());
            parts.audit.append(handle, who, AuditWord.LESSON_RESTORED, told(lesson));
            return Outcome.done(lesson.id());
        });
    }

    /** The id tells the record of its series that it belongs there; the title outlasts the lesson. */
    private static String told(Episode lesson) {
        return lesson.id() + " " + lesson.title();
    }

    private Outcome<EpisodeId> asSeen(Episode seen, Function<Handle, Outcome<EpisodeId>> change) {
        return parts.jdbi.inTransaction(handle -> parts.episodes
                .lock(handle, seen.id())
                .map(now -> now.withdrawal().equals(seen.withdrawal())
                        ? change.apply(handle)
                        : Outcome.<EpisodeId>refused(List.of(Wish.otherwise())))
                .orElseGet(() -> Outcome.refused("", "catalog.problem.gone")));
    }

    private static String said(String reason) {
        return reason.isEmpty() ? "" : ": " + reason;
    }
}
