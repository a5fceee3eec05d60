package groundbass.catalog.episode;

import groundbass.catalog.FieldChecks;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.series.SeriesId;
import groundbass.catalog.series.SeriesRepository;
import groundbass.document.EpisodeDocument;
import groundbass.document.Level;
import groundbass.form.Outcome;
import groundbass.store.DatabaseClock;
import java.time.Clock;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** What an educator does with the episodes of their own series. Whose episode it is not, for them it is gone. */
public final class EpisodeService {
    public static final int HIGHEST_NUMBER = 9999;
    private static final int LONGEST_NOTE = 2000;

    private final Jdbi jdbi;
    private final Audit audit;
    private final Clock clock;
    private final SeriesRepository series = new SeriesRepository();
    private final Drafts drafts = new Drafts();
    private final Episodes episodes;
    private final Revisions revisions;

    public EpisodeService(Jdbi jdbi, Audit audit, Clock clock) {
        this.jdbi = jdbi;
        this.audit = audit;
        this.clock = clock;
        this.episodes = new Episodes(jdbi);
        this.revisions = new Revisions(jdbi, clock);
    }

    /** Makes an episode with the next number of its series. */
    public Outcome<Episode> create(EducatorId who, SeriesId in, String title, Level level) {
        return jdbi.inTransaction(handle -> create(handle, EpisodeId.next(), who, in, title, level));
    }

    /** Within the caller's transaction, and with an id that is known already (an import). */
    public Outcome<Episode> create(
            Handle handle, EpisodeId id, EducatorId who, SeriesId in, String title, Level level) {
        var problems = FieldChecks.line("title", title, 200);
        if (!problems.isEmpty()) {
            return Outcome.refused(problems);
        }
        series.lock(handle, in);
        if (series.find(handle, in).filter(found -> found.owner().equals(who)).isEmpty()) {
            return gone();
        }
        var episode = new Episode(
                id,
                in,
                EpisodeNumbers.next(episodes.in(handle, in)),
                EpisodeChanges.slug(title),
                title.strip(),
                level,
                "",
                new EpisodeState.Unscheduled(),
                DatabaseClock.of(clock));
        EpisodeChanges.insert(handle, episode);
        audit.append(handle, who, "episode.created", id.value());
        return Outcome.done(episode);
    }

    /**
     * Gives an unpublished episode another number. Where that belongs to an unpublished one, those between move up;
     * a published one's number cannot be had.
     */
    public Outcome<Episode> move(EducatorId who, EpisodeId id, int to) {
        if (to < 1 || to > HIGHEST_NUMBER) {
            return Outcome.refused("number", "catalog.problem.number", to, HIGHEST_NUMBER);
        }
        return jdbi.inTransaction(handle -> episodes.ownedBy(handle, who, id)
                .map(episode -> move(handle, who, episode, to))
                .orElseGet(EpisodeService::gone));
    }

    private Outcome<Episode> move(Handle handle, EducatorId who, Episode found, int to) {
        series.lock(handle, found.series());
        EpisodeChanges.lockAll(handle, found.series());
        var all = episodes.in(handle, found.series());
        var moved = all.stream()
                .filter(one -> one.id().equals(found.id()))
                .findFirst()
                .orElseThrow();
        if (moved.isPublished()) {
            return Outcome.refused("number", "catalog.problem.number.published", moved.number());
        }
        if (all.stream().anyMatch(one -> one.number() == to && one.isPublished())) {
            return Outcome.refused("number", "catalog.problem.number.taken", to);
        }
        EpisodeNumbers.write(handle, EpisodeNumbers.move(all, moved, to));
        audit.append(handle, who, "episode.moved", found.id() + " from " + moved.number() + " to " + to);
        return Outcome.done(episodes.find(handle, found.id()).orElseThrow());
    }

    /** What to go on typing: the saved draft, else the latest revision, else an empty document; the last two as version 0. */
    public Optional<Draft> draft(EducatorId who, EpisodeId id) {
        return jdbi.withHandle(handle -> episodes.ownedBy(handle, who, id).map(episode -> drafts.find(handle, who, id)
                .orElseGet(() -> new Draft(who, id, 0, start(handle, episode), Optional.empty()))));
    }

    private EpisodeDocument start(Handle handle, Episode episode) {
        return revisions
                .latest(handle, episode.id())
                .map(Revision::document)
                .orElseGet(() -> EpisodeDocument.titled(episode.title(), episode.level()));
    }

    /**
     * Saves what is being typed, right or wrong.
     *
     * @param base the version that the typing began from
     * @return a conflict, and nothing changed, where another window saved since; refused where the episode is gone
     */
    public Outcome<DraftSave> saveDraft(EducatorId who, EpisodeId id, int base, EpisodeDocument document) {
        return jdbi.inTransaction(handle -> saveDraft(handle, who, id, base, document));
    }

    /** Within the caller's transaction. */
    public Outcome<DraftSave> saveDraft(
            Handle handle, EducatorId who, EpisodeId id, int base, EpisodeDocument document) {
        EpisodeChanges.lock(handle, id);
        return episodes.ownedBy(handle, who, id)
                .map(episode -> Outcome.done(save(handle, who, episode, base, document)))
                .orElseGet(EpisodeService::gone);
    }

    private DraftSave save(Handle handle, EducatorId who, Episode episode, int base, EpisodeDocument document) {
        var stored = drafts.find(handle, who, episode.id());
        if (stored.map(Draft::version).orElse(0) != base) {
            return new DraftSave.Conflict(
                    stored.orElseGet(() -> new Draft(who, episode.id(), 0, start(handle, episode), Optional.empty())),
                    document);
        }
        if (!episode.isPublished()) {
            episodes.describe(handle, episode.id(), document);
        }
        var now = DatabaseClock.of(clock);
        return new DraftSave.Saved(stored.map(before -> drafts.replace(handle, before, document, now))
                .orElseGet(() -> drafts.insert(handle, who, episode.id(), document, now)));
    }

    /**
     * Fixes the saved draft as a revision. Where the latest revision says the same already, that one is the answer.
     *
     * @param note why; may be empty
     */
    public Outcome<Revision> makeRevision(EducatorId who, EpisodeId id, String note) {
        return jdbi.inTransaction(handle -> {
            EpisodeChanges.lock(handle, id);
            return episodes.ownedBy(handle, who, id)
                    .map(episode -> makeRevision(handle, who, episode, note))
                    .orElseGet(EpisodeService::gone);
        });
    }

    private Outcome<Revision> makeRevision(Handle handle, EducatorId who, Episode episode, String note) {
        var document = drafts.find(handle, who, episode.id()).map(Draft::document);
        var said = document.orElseGet(() -> start(handle, episode));
        var problems = FieldChecks.text("note", note, LONGEST_NOTE);
        return problems.isEmpty() ? fix(handle, who, episode, said, note) : Outcome.refused(problems);
    }

    /**
     * Fixes this very document as a revision, within the caller's transaction. Where the latest revision says the same
     * already, that one is the answer.
     */
    public Outcome<Revision> fix(
            Handle handle, EducatorId who, Episode episode, EpisodeDocument document, String note) {
        var latest = revisions.latest(handle, episode.id());
        if (latest.isPresent() && latest.get().document().equals(document)) {
            return Outcome.done(latest.get());
        }
        var problems = DocumentCheck.problems(document);
        if (!problems.isEmpty()) {
            return Outcome.refused(problems);
        }
        var revision = revisions.append(handle, episode.id(), document, who, note.strip());
        audit.append(handle, who, "episode.revision", episode.id() + " revision " + revision.number());
        return Outcome.done(revision);
    }

    private static <T> Outcome<T> gone() {
        return Outcome.refused("", "catalog.problem.gone");
    }
}
