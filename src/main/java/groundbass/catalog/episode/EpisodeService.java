package groundbass.catalog.episode;

import groundbass.catalog.FieldChecks;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesId;
import groundbass.document.EpisodeDocument;
import groundbass.document.Level;
import groundbass.form.Outcome;
import groundbass.store.DatabaseClock;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.function.BiPredicate;
import java.util.function.UnaryOperator;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** What an educator does with the episodes of series in which they write. An episode of any other series is not there for them. */
public final class EpisodeService {
    public static final int HIGHEST_NUMBER = 9999;
    private static final int LONGEST_NOTE = 2000;

    private final Jdbi jdbi;
    private final Audit audit;
    private final Clock clock;
    private final SeriesCatalog series;
    private final Episodes episodes;
    private final Revisions revisions;
    private final Drafts drafts;

    public EpisodeService(
            Jdbi jdbi, Audit audit, Clock clock, SeriesCatalog series, Episodes episodes, Revisions revisions) {
        this.jdbi = jdbi;
        this.audit = audit;
        this.clock = clock;
        this.series = series;
        this.episodes = episodes;
        this.revisions = revisions;
        this.drafts = new Drafts(jdbi);
    }

    /** Makes an episode with the next number of its series. */
    public Outcome<Episode> create(EducatorId who, SeriesId in, String title, Level level) {
        var problems = FieldChecks.line("title", title, 200);
        return problems.isEmpty()
                ? jdbi.inTransaction(handle -> create(handle, who, in, title, level))
                : Outcome.refused(problems);
    }

    /** The same, with something written in it already: what the document says, title and level included. */
    public Outcome<Episode> create(EducatorId who, SeriesId in, EpisodeDocument begun) {
        var problems = FieldChecks.line("title", begun.title(), 200);
        if (!problems.isEmpty()) {
            return Outcome.refused(problems);
        }
        return jdbi.inTransaction(handle -> {
            var made = create(handle, who, in, begun.title(), begun.level());
            made.result().ifPresent(episode -> begin(handle, who, episode, begun));
            return made.result()
                    .flatMap(episode -> episodes.find(episode.id()))
                    .map(Outcome::done)
                    .orElse(made);
        });
    }

    private void begin(Handle handle, EducatorId who, Episode episode, EpisodeDocument begun) {
        drafts.insert(handle, who, episode.id(), begun, DatabaseClock.of(clock));
        episodes.describe(handle, episode.id(), begun);
    }

    private Outcome<Episode> create(Handle handle, EducatorId who, SeriesId in, String title, Level level) {
        series.lock(handle, in);
        if (series.open(who, Deed.WRITE, in).isEmpty()) {
            return gone();
        }
        var episode = new Episode(
                EpisodeId.next(),
                in,
                EpisodeNumbers.next(episodes.in(in)),
                Episodes.slug(title),
                title.strip(),
                level,
                "",
                new EpisodeState.Unscheduled(),
                DatabaseClock.of(clock));
        episodes.insert(handle, episode);
        audit.append(handle, who, AuditWord.EPISODE_CREATED, episode.id().value());
        return Outcome.done(episode);
    }

    /**
     * Takes in a lesson of another server, under the ids and with the moments that it has there, within the caller's
     * transaction. Where the number of a lesson that was never out is taken, it gets the next one.
     *
     * @param lesson whose id nothing here has; out or not, but promised to nobody
     * @param document what is being typed, and when it was saved
     * @return refused, and nothing changed, where the number of a lesson that was out is taken
     */
    public Outcome<Episode> bringIn(
            Handle handle, EducatorId who, Episode lesson, List<Revision> fixed, Optional<Draft> document) {
        series.lock(handle, lesson.series());
        if (series.open(who, Deed.WRITE, lesson.series()).isEmpty()) {
            return gone();
        }
        var all = episodes.in(lesson.series());
        boolean taken = all.stream().anyMatch(one -> one.number() == lesson.number());
        if (taken && lesson.isPublished()) {
            return Outcome.refused("number", "catalog.problem.number.taken", lesson.number());
        }
        var entered = taken ? lesson.withNumber(EpisodeNumbers.next(all)) : lesson;
        episodes.insert(handle, entered);
        fixed.forEach(revision -> Revisions.insert(handle, revision));
        document.ifPresent(draft -> drafts.insert(
                handle, who, entered.id(), draft.document(), draft.savedAt().orElseThrow()));
        entered.publishedAt().ifPresent(at -> episodes.markPublished(handle, entered.id(), at));
        entered.withdrawal().ifPresent(back -> episodes.takeBack(handle, entered.id(), back));
        audit.append(handle, who, AuditWord.EPISODE_BROUGHT, entered.id().value());
        return Outcome.done(entered);
    }

    /**
     * Gives an unpublished episode another number. Where that belongs to an unpublished one, those between move up;
     * a published one's number cannot be had.
     */
    public Outcome<Episode> move(EducatorId who, EpisodeId id, int to) {
        if (to < 1 || to > HIGHEST_NUMBER) {
            return Outcome.refused("number", "catalog.problem.number", to, HIGHEST_NUMBER);
        }
        return jdbi.inTransaction(handle -> episodes.open(who, Deed.WRITE, id)
                .map(episode -> move(handle, who, episode, to))
                .orElseGet(EpisodeService::gone));
    }

    private Outcome<Episode> move(Handle handle, EducatorId who, Episode found, int to) {
        series.lock(handle, found.series());
        episodes.lockAll(handle, found.series());
        var all = episodes.in(found.series());
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
        episodes.setNumbers(handle, EpisodeNumbers.move(all, moved, to));
        audit.append(handle, who, AuditWord.EPISODE_MOVED, found.id() + " from " + moved.number() + " to " + to);
        return Outcome.done(episodes.find(found.id()).orElseThrow());
    }

    /** What to go on typing: the saved draft, else the latest revision, else an empty document; the last two as version 0. */
    public Optional<Draft> draft(EducatorId who, EpisodeId id) {
        return episodes.open(who, Deed.WRITE, id).map(episode -> stored(who, episode));
    }

    private EpisodeDocument start(Episode episode) {
        return revisions
                .latest(episode.id())
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
        return jdbi.inTransaction(handle -> {
            Episodes.lockRow(handle, id);
            return episodes.open(who, Deed.WRITE, id)
                    .map(episode -> Outcome.done(save(handle, who, episode, base, document)))
                    .orElseGet(EpisodeService::gone);
        });
    }

    /**
     * Saves a part of what is being typed: a change of whatever is stored.
     *
     * @param fits whether the change (second) may take the place of what is stored (first)
     * @return a conflict, and nothing changed, where it does not fit; refused where the episode is gone
     */
    public Outcome<DraftSave> saveDraft(
            EducatorId who,
            EpisodeId id,
            BiPredicate<EpisodeDocument, EpisodeDocument> fits,
            UnaryOperator<EpisodeDocument> change) {
        return jdbi.inTransaction(handle -> {
            Episodes.lockRow(handle, id);
            return episodes.open(who, Deed.WRITE, id)
                    .map(episode -> Outcome.done(save(handle, who, episode, fits, change)))
                    .orElseGet(EpisodeService::gone);
        });
    }

    private DraftSave save(
            Handle handle,
            EducatorId who,
            Episode episode,
            BiPredicate<EpisodeDocument, EpisodeDocument> fits,
            UnaryOperator<EpisodeDocument> change) {
        var stored = stored(who, episode);
        var yours = change.apply(stored.document());
        if (yours.equals(stored.document()) && stored.version() > 0) {
            return new DraftSave.Saved(stored);
        }
        return fits.test(stored.document(), yours)
                ? save(handle, who, episode, stored.version(), yours)
                : new DraftSave.Conflict(stored, yours);
    }

    private Draft stored(EducatorId who, Episode episode) {
        return drafts.find(episode.id())
                .orElseGet(() -> new Draft(who, episode.id(), 0, start(episode), Optional.empty()));
    }

    private DraftSave save(Handle handle, EducatorId who, Episode episode, int base, EpisodeDocument document) {
        var stored = drafts.find(episode.id());
        if (stored.map(Draft::version).orElse(0) != base) {
            return new DraftSave.Conflict(stored(who, episode), document);
        }
        if (!episode.isPublished()) {
            episodes.describe(handle, episode.id(), document);
        }
        var now = DatabaseClock.of(clock);
        return new DraftSave.Saved(stored.map(before -> drafts.replace(handle, before, who, document, now))
                .orElseGet(() -> drafts.insert(handle, who, episode.id(), document, now)));
    }

    /**
     * Fixes the saved draft as a revision. Where the latest revision says the same already, that one is the answer.
     *
     * @param note why; may be empty
     */
    public Outcome<Revision> makeRevision(EducatorId who, EpisodeId id, String note) {
        return jdbi.inTransaction(handle -> {
            Episodes.lockRow(handle, id);
            return episodes.open(who, Deed.WRITE, id)
                    .map(episode -> makeRevision(handle, who, episode, note))
                    .orElseGet(EpisodeService::gone);
        });
    }

    private Outcome<Revision> makeRevision(Handle handle, EducatorId who, Episode episode, String note) {
        var document = drafts.find(episode.id()).map(Draft::document);
        var said = document.orElseGet(() -> start(episode));
        var problems = FieldChecks.text("note", note, LONGEST_NOTE);
        return problems.isEmpty() ? fix(handle, who, episode, said, note) : Outcome.refused(problems);
    }

    /**
     * Keeps what is being typed as a revision, right or wrong, before something takes its place. Where the latest revision
     * says the same already, that one is the answer.
     *
     * @param note why
     * @return refused where the episode is gone, and then nothing may take the place of anything
     */
    public Outcome<Revision> keep(EducatorId who, EpisodeId id, String note) {
        return jdbi.inTransaction(handle -> {
            Episodes.lockRow(handle, id);
            return episodes.open(who, Deed.WRITE, id)
                    .map(episode -> Outcome.done(
                            append(handle, who, episode, stored(who, episode).document(), note)))
                    .orElseGet(EpisodeService::gone);
        });
    }

    /**
     * Fixes this very document as a revision, within the caller's transaction. Where the latest revision says the same
     * already, that one is the answer.
     */
    public Outcome<Revision> fix(
            Handle handle, EducatorId who, Episode episode, EpisodeDocument document, String note) {
        var problems = DocumentCheck.problems(document);
        return problems.isEmpty()
                ? Outcome.done(append(handle, who, episode, document, note))
                : Outcome.refused(problems);
    }

    /** As it is, right or wrong; the latest revision where that says the same already. */
    private Revision append(Handle handle, EducatorId who, Episode episode, EpisodeDocument document, String note) {
        return revisions
                .latest(episode.id())
                .filter(latest -> latest.document().equals(document))
                .orElseGet(() -> {
                    var revision = revisions.append(handle, episode.id(), document, who, note.strip());
                    audit.append(
                            handle, who, AuditWord.EPISODE_REVISION, episode.id() + " revision " + revision.number());
                    return revision;
                });
    }

    /** The revisions with numbers up to {@code highest}, newest first, so many at most. */
    public List<Revision> revisions(EducatorId who, EpisodeId id, int highest, int most) {
        return episodes.open(who, Deed.WRITE, id)
                .map(episode -> revisions.of(episode.id(), highest, most))
                .orElse(List.of());
    }

    public Optional<Revision> revision(EducatorId who, EpisodeId id, int number) {
        return episodes.open(who, Deed.WRITE, id).flatMap(episode -> revisions.numbered(episode.id(), number));
    }

    /**
     * Goes on from a revision: what it says is what is being typed from now on. What was being typed becomes a revision
     * before, right or wrong, so that nothing is lost.
     *
     * @param number of the revision
     * @param note why what was being typed is kept
     * @return what is being typed now; refused where there is no such revision
     */
    public Outcome<Draft> restore(EducatorId who, EpisodeId id, int number, String note) {
        return jdbi.inTransaction(handle -> {
            Episodes.lockRow(handle, id);
            return episodes.open(who, Deed.WRITE, id)
                    .flatMap(episode -> revisions
                            .numbered(id, number)
                            .map(revision -> Outcome.done(restore(handle, who, episode, revision, note))))
                    .orElseGet(EpisodeService::gone);
        });
    }

    private Draft restore(Handle handle, EducatorId who, Episode episode, Revision revision, String note) {
        var typed = stored(who, episode);
        if (typed.document().equals(revision.document())) {
            return typed;
        }
        append(handle, who, episode, typed.document(), note);
        audit.append(handle, who, AuditWord.EPISODE_RESTORED, episode.id() + " revision " + revision.number());
        var saved = save(handle, who, episode, typed.version(), revision.document());
        return ((DraftSave.Saved) saved).draft();
    }

    private static <T> Outcome<T> gone() {
        return Outcome.refused("", "catalog.problem.gone");
    }
}
