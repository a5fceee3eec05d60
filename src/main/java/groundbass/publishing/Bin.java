package groundbass.publishing;

import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.ThrownAway;
import groundbass.catalog.upload.UploadRepository;
import groundbass.form.Outcome;
import java.time.Duration;
import java.time.Instant;
import java.util.List;

/** Where drafts go that are thrown away, and from where they can be fetched back for a month. */
public final class Bin {
    /** How long a draft can be fetched back. */
    public static final Duration KEPT = Duration.ofDays(30);

    private final PublishingParts parts;
    private final UploadRepository uploads;

    public Bin(PublishingParts parts, UploadRepository uploads) {
        this.parts = parts;
        this.uploads = uploads;
    }

    /** Only what never was out and is not promised. */
    public Outcome<EpisodeId> throwAway(EducatorId who, Episode draft) {
        return parts.jdbi.inTransaction(handle -> {
            if (!parts.episodes.throwAway(handle, draft.id(), parts.clock.instant())) {
                return Outcome.refused("", "publishing.problem.notdraft");
            }
            parts.audit.append(handle, who, AuditWord.DRAFT_DELETED, draft.id() + " " + draft.title());
            return Outcome.done(draft.id());
        });
    }

    public List<ThrownAway> of(EducatorId who) {
        return parts.episodes.thrownAway(who);
    }

    public Outcome<EpisodeId> fetchBack(EducatorId who, EpisodeId id) {
        return parts.jdbi.inTransaction(handle -> {
            if (!parts.episodes.fetchBack(handle, who, id)) {
                return Outcome.refused("", "catalog.problem.gone");
            }
            parts.audit.append(
                    handle,
                    who,
                    AuditWord.DRAFT_RESTORED,
                    id + " " + parts.episodes.find(id).orElseThrow().title());
            return Outcome.done(id);
        });
    }

    /** Deletes for good what was thrown away a month ago; idempotent. */
    public void empty() {
        Instant before = parts.clock.instant().minus(KEPT);
        parts.episodes.thrownAwayBefore(before).forEach(id -> delete(id, before));
    }

    /** What somebody fetches back at this moment stays. */
    private void delete(EpisodeId id, Instant before) {
        parts.jdbi.useTransaction(handle -> {
            if (parts.episodes.lockThrownAway(handle, id, before)) {
                parts.releases.forget(handle, id);
                uploads.forget(handle, id);
                parts.episodes.forget(handle, id);
                parts.audit.append(handle, Audit.CALENDAR, AuditWord.DRAFT_PURGED, id.value());
            }
        });
    }
}
