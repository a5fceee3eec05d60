package groundbass.catalog.upload;

import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.episode.EpisodeId;
import groundbass.identity.Sha256;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** What the tables of recordings and of pictures have in common: each row belongs to a lesson and can be taken out of it. */
enum SentTable {
    UPLOAD("original_name", "\"", "\"", AuditWord.UPLOAD_REMOVED, AuditWord.UPLOAD_RESTORED, AuditWord.UPLOAD_PURGED),
    PICTURE("words", "picture:", "", AuditWord.PICTURE_REMOVED, AuditWord.PICTURE_RESTORED, AuditWord.PICTURE_PURGED);

    /** Where a document names one that stands in the column {@code named}; an id is 16 random characters. */
    private static final String OTHERS = """
            select other.episode_id from (
              select episode_id from draft where document like :named
              union select episode_id from revision where document like :named) other
            where other.episode_id <> :lesson order by other.episode_id""";

    /** Likewise, in what is written now: the draft and the state that was fixed last. */
    private static final String OTHERS_NOW = """
            select other.episode_id from (
              select episode_id from draft where document like :named
              union select episode_id from revision last where document like :named and number = (
                select max(number) from revision each where each.episode_id = last.episode_id)) other
            where other.episode_id <> :lesson order by other.episode_id""";

    private final String shown;
    private final String before;
    private final String behind;
    private final AuditWord removed;
    private final AuditWord restored;
    private final AuditWord purged;

    /**
     * @param shown the column with what it is called
     * @param before, behind what stands around its id in a document that uses it
     * @param removed, restored, purged what the audit says of it
     */
    SentTable(String shown, String before, String behind, AuditWord removed, AuditWord restored, AuditWord purged) {
        this.shown = shown;
        this.before = before;
        this.behind = behind;
        this.removed = removed;
        this.restored = restored;
        this.purged = purged;
    }

    AuditWord removed() {
        return removed;
    }

    AuditWord restored() {
        return restored;
    }

    AuditWord purged() {
        return purged;
    }

    /** As its table is called. */
    private String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    /** Which rows count. */
    record Presence(String condition, Instant moment) {
        /** What is in its lesson. */
        static final Presence NOW = new Presence("removed_at is null", Instant.EPOCH);

        /** Whether or not it was taken out of its lesson before. */
        static final Presence EVER = new Presence("true", Instant.EPOCH);

        /** What was in its lesson at a moment. */
        static Presence at(Instant moment) {
            return new Presence("(removed_at is null or removed_at > :moment)", moment);
        }
    }

    /** @param select up to the condition */
    static <T> Optional<T> find(Jdbi jdbi, String select, String id, Presence presence, Class<T> type) {
        return jdbi.withHandle(handle -> handle.createQuery(select + "where id = :id and " + presence.condition())
                .bind("id", id)
                .bind("moment", presence.moment())
                .mapTo(type)
                .findOne());
    }

    /** The other lessons that use it now, such as duplicates. */
    List<EpisodeId> others(Handle handle, String id, EpisodeId lesson) {
        return others(OTHERS_NOW, handle, id, lesson);
    }

    private List<EpisodeId> others(String query, Handle handle, String id, EpisodeId lesson) {
        return handle.createQuery(query)
                .bind("named", "%" + before + id + behind + "%")
                .bind("lesson", lesson)
                .mapTo(EpisodeId.class)
                .list();
    }

    /** Makes it another lesson's that uses it now. @return whether there is one */
    boolean handOn(Handle handle, String id, EpisodeId from) {
        return handOn(handle, id, others(handle, id, from));
    }

    /** Makes it another lesson's that uses it or once did: for when this one is deleted, and may be wanted there again. */
    void leaveTo(Handle handle, String id, EpisodeId from) {
        handOn(handle, id, others(OTHERS, handle, id, from));
    }

    private boolean handOn(Handle handle, String id, List<EpisodeId> others) {
        others.stream()
                .findFirst()
                .ifPresent(to -> handle.execute("update " + word() + " set episode_id = ? where id = ?", to, id));
        return !others.isEmpty();
    }

    boolean isIn(Handle handle, String id, EpisodeId lesson) {
        return handle.createQuery("select count(*) from " + word()
                                + " where id = :id and episode_id = :lesson and removed_at is null")
                        .bind("id", id)
                        .bind("lesson", lesson)
                        .mapTo(Integer.class)
                        .one()
                > 0;
    }

    void takeOut(Handle handle, String id, Instant now) {
        handle.createUpdate("update " + word() + " set removed_at = :now where id = :id")
                .bind("now", now)
                .bind("id", id)
                .execute();
    }

    /** @return whether it was taken out of this lesson since */
    boolean putBack(Handle handle, String id, EpisodeId lesson, Instant since) {
        return handle.createUpdate(
                                "update " + word()
                                        + " set removed_at = null where id = :id and episode_id = :lesson and removed_at > :since")
                        .bind("id", id)
                        .bind("lesson", lesson)
                        .bind("since", since)
                        .execute()
                > 0;
    }

    List<TakenOut> takenOut(Handle handle, EpisodeId lesson, Instant since) {
        return handle.createQuery("select id, " + shown + " as name, removed_at as at from " + word()
                        + " where episode_id = :lesson and removed_at > :since order by removed_at desc, id")
                .bind("lesson", lesson)
                .bind("since", since)
                .mapTo(TakenOut.class)
                .list();
    }

    /** Those that were taken out before, and what they hold. */
    List<Gone> gone(Handle handle, Instant before) {
        return handle.createQuery("select id, sha256, episode_id as lesson from " + word()
                        + " where removed_at <= :before order by id")
                .bind("before", before)
                .mapTo(Gone.class)
                .list();
    }

    record Gone(String id, Sha256 sha256, EpisodeId lesson) {}

    void delete(Handle handle, String id) {
        handle.execute("delete from " + word() + " where id = ?", id);
    }
}
