package groundbass.publishing;

import groundbass.text.Message;

/**
 * Something about a promised hour that its educator must know.
 *
 * @param about the hour or the release that it is about: of each an educator is told once
 * @param sentence for the desk and the letter
 */
public record Trouble(Kind kind, String about, Message sentence) {
    /** What kind of trouble it is. */
    public enum Kind {
        /** A build failed. */
        FAILED,
        /** The hour is near or past, and nothing is built that could go out. */
        NOT_READY,
        /** The hour is near, and what was written last may not go out. */
        DRAFT_HELD,
        /** The hour is near or has come, and the lesson may not go out. */
        KEPT_BACK,
        /** It came out late. */
        LATE;

        /** Where its educator sees what is in the way, or how it stands; below the address of the lesson on the desk. */
        String way() {
            return switch (this) {
                case DRAFT_HELD, KEPT_BACK -> "/preflight";
                case FAILED, NOT_READY, LATE -> "/publish";
            };
        }

        /** In a word or two, for the subject of a letter. */
        String shortKey() {
            return switch (this) {
                case FAILED -> "publishing.trouble.failed.short";
                case NOT_READY -> "publishing.trouble.notready.short";
                case DRAFT_HELD -> "publishing.trouble.draft.short";
                case KEPT_BACK -> "publishing.trouble.kept.short";
                case LATE -> "publishing.trouble.late.short";
            };
        }
    }
}
