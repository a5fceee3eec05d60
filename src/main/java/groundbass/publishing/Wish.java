package groundbass.publishing;

import groundbass.catalog.episode.EpisodeState;
import groundbass.form.FieldProblem;
import groundbass.release.ReleaseNote;
import java.util.Collection;
import java.util.Optional;
import java.util.Set;

/**
 * What an educator wants done with a lesson, and how it stood when they said so.
 *
 * @param promise the hour; this very moment where no hour is promised
 * @param note what students are told of a correction
 * @param accepted digests of remarks that may stand, once the wish is entered
 */
record Wish(Aim aim, Promise promise, ReleaseNote note, Seen seen, Set<String> accepted) {
    Wish {
        accepted = Set.copyOf(accepted);
    }

    /** What is to become of the lesson. */
    enum Aim {
        /** A lesson that is not out goes out as soon as it can. */
        OUT_NOW,
        /** A lesson that is not out goes out at an hour. */
        OUT_THEN,
        /** A lesson that is out is corrected. */
        CORRECTED
    }

    static Wish of(Aim aim, Promise promise, Seen seen) {
        return new Wish(aim, promise, ReleaseNote.NONE, seen, Set.of());
    }

    Wish accepting(Collection<String> digests) {
        return new Wish(aim, promise, note, seen, Set.copyOf(digests));
    }

    /** Why it cannot be done any more as the lesson stands now; empty where it can. */
    Optional<FieldProblem> inTheWay(EpisodeState now) {
        if (now instanceof EpisodeState.Published && aim != Aim.CORRECTED) {
            return Optional.of(FieldProblem.of(Seen.STANDING, "publishing.problem.meanwhile.out"));
        }
        if (!(now instanceof EpisodeState.Published) && aim == Aim.CORRECTED) {
            return Optional.of(otherwise());
        }
        return isGranted(now) || seen.holds(now) ? Optional.empty() : Optional.of(otherwise());
    }

    /** What is said where another window, or the hour, was faster. */
    static FieldProblem otherwise() {
        return FieldProblem.of(Seen.STANDING, "publishing.problem.meanwhile");
    }

    /** Whether the lesson is promised already as it is wished: the button was pressed twice, or in two windows. */
    boolean isGranted(EpisodeState now) {
        if (!(now instanceof EpisodeState.Scheduled already)) {
            return false;
        }
        return aim == Aim.OUT_THEN
                ? already.at().equals(promise.at()) && already.zone().equals(promise.zone())
                : already.isAtOnce();
    }
}
