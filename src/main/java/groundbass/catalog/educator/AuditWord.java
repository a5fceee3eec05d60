package groundbass.catalog.educator;

import groundbass.identity.TextValue;

/** What an entry of the audit says was done, each word as it is stored. */
public enum AuditWord implements TextValue {
    SIGN_IN_DONE("sign-in.done"),
    SIGN_IN_REFUSED("sign-in.refused"),
    /** Of a code or a link that sets up access. */
    ENTRY_REFUSED("entry.refused"),
    /** Of what somebody who is signed in types once more to confirm something. */
    PRESENT_REFUSED("present.refused"),
    SESSIONS_ENDED("sessions.ended"),
    PASSWORD_FORGOTTEN("password.forgotten"),
    PASSWORD_RESET("password.reset"),
    EDUCATOR_CREATED("educator.created"),
    EDUCATOR_CHANGED("educator.changed"),
    FACTOR_ON("factor.on"),
    FACTOR_OFF("factor.off"),
    /** Of everybody with a desk. */
    FACTOR_DEMANDED("factor.demanded"),
    FACTOR_UP_TO_EACH("factor.up-to-each"),
    EDUCATOR_PASSWORD("educator.password"),
    ACCOUNT_DELETED("account deleted"),
    ACCOUNT_ENDED("account.ended"),
    SERIES_CREATED("series.created"),
    SERIES_CHANGED("series.changed"),
    BEGINNING_CHANGED("beginning.changed"),
    EPISODE_CREATED("episode.created"),
    EPISODE_MOVED("episode.moved"),
    EPISODE_PROMISED("episode.promised"),
    EPISODE_WITHDRAWN("episode.withdrawn"),
    EPISODE_REVISION("episode.revision"),
    EPISODE_RESTORED("episode.restored"),
    RELEASE_PUBLISHED("release.published"),
    LESSON_WITHDRAWN("lesson.withdrawn"),
    LESSON_RESTORED("lesson.restored"),
    DRAFT_DELETED("draft.deleted"),
    DRAFT_RESTORED("draft.restored"),
    DRAFT_PURGED("draft.purged"),
    RHYTHM_CHANGED("rhythm.changed"),
    RHYTHM_SKIPPED("rhythm.skipped"),
    RHYTHM_RESUMED("rhythm.resumed"),
    EPISODE_SWAPPED("episode.swapped"),
    OUTLOOK_CHANGED("outlook.changed"),
    NEWS_CHANGED("news.changed"),
    LETTERS_CHANGED("letters.changed"),
    SETTINGS_CHANGED("settings.changed"),
    ACCOUNTS_CHANGED("accounts.changed"),
    IMPRINT_CHANGED("imprint.changed"),
    SERIES_BROUGHT("series.brought"),
    EPISODE_BROUGHT("episode.brought"),
    SERIES_EXPORTED("series.exported"),
    SERIES_IMPORTED("series.imported"),
    KEYS_RENEWED("keys.renewed"),
    BACKUP_MADE("backup.made"),
    BACKUP_RESTORED("backup.restored"),
    UPLOAD_CREATED("upload.created"),
    PICTURE_CREATED("picture.created"),
    PICTURE_REMOVED("picture.removed"),
    PICTURE_RESTORED("picture.restored"),
    PICTURE_PURGED("picture.purged"),
    UPLOAD_REMOVED("upload.removed"),
    UPLOAD_RESTORED("upload.restored"),
    UPLOAD_PURGED("upload.purged"),
    PREVIEW_SHARED("preview.shared"),
    PREVIEW_WITHDRAWN("preview.withdrawn"),
    INVITATION_SENT("invitation.sent"),
    INVITATION_WITHDRAWN("invitation.withdrawn"),
    INVITATION_DECLINED("invitation.declined"),
    INVITATION_ACCEPTED("invitation.accepted"),
    COLLEAGUE_JOINED("colleague.joined"),
    COLLEAGUE_ENDED("colleague.ended"),
    SERIES_HANDED("series.handed"),
    SITE_HANDED("site.handed"),
    DESK_CLOSED("desk.closed"),
    EDUCATOR_REOPENED("educator.reopened"),
    TOKEN_CREATED("token.created"),
    TOKEN_WITHDRAWN("token.withdrawn");

    private final String word;

    AuditWord(String word) {
        this.word = word;
    }

    @Override
    public String value() {
        return word;
    }

    /** The message that says an entry's word to a reader; the word may be one that a newer program wrote. */
    public static String key(String word) {
        return "audit." + word.replace(' ', '-');
    }
}
