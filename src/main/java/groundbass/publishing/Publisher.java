package groundbass.publishing;

import groundbass.catalog.FieldChecks;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.EpisodeState;
import groundbass.catalog.episode.Revision;
import groundbass.document.EpisodeDocument;
import groundbass.form.FieldProblem;
import groundbass.form.Outcome;
import groundbass.publishing.DraftChanges.Difference;
import groundbass.release.Release;
import groundbass.release.ReleaseId;
import groundbass.release.ReleaseNote;
import groundbass.text.Message;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jdbi.v3.core.Handle;

/**
 * What an educator asks of the calendar. Nothing goes out here: the draft is checked and fixed, a release to build and an
 * hour to keep are entered, and {@link PublicationJob} keeps them.
 */
public final class Publisher {
    private final PublishingParts parts;
    private final Trials trials;
    private final DraftChanges changes;

    public Publisher(PublishingParts parts) {
        this.parts = parts;
        this.changes = new DraftChanges(parts);
        this.trials = new Trials(parts);
    }

    /**
     * Fixes the draft as a revision and brings it out as soon as its files are built: an unpublished episode goes live,
     * a published one is corrected.
     */
    public Outcome<ReleaseId> publishNow(EducatorId who, EpisodeId id) {
        return prepare(who, id, Promise.now(parts.clock.getZone(), parts.clock.instant()), ReleaseNote.NONE);
    }

    /**
     * Corrects a lesson that is out.
     *
     * @param note what students are told of it; its text must be there
     */
    public Outcome<ReleaseId> correct(EducatorId who, EpisodeId id, ReleaseNote note) {
        var problems = FieldChecks.line("note", note.text(), ReleaseNote.LONGEST);
        if (!problems.isEmpty()) {
            return Outcome.refused(problems);
        }
        var kept = new ReleaseNote(note.text().strip(), note.byLetter());
        return prepare(who, id, Promise.now(parts.clock.getZone(), parts.clock.instant()), kept);
    }

    /**
     * Promises an hour. The draft is fixed and built now; what is written until the hour goes out with it, as
     * {@link Promises} says.
     */
    public Outcome<ReleaseId> schedule(EducatorId who, EpisodeId id, LocalDateTime local, ZoneId zone) {
        if (parts.episodes.find(id).filter(Episode::isPublished).isPresent()) {
            return Outcome.refused("local", "publishing.problem.published");
        }
        var promise = Promise.of(local, zone, parts.clock.instant());
        return promise.result()
                .map(kept -> prepare(who, id, kept, ReleaseNote.NONE))
                .orElseGet(() -> Outcome.refused(promise.problems()));
    }

    /** Takes a promised hour back; what was built for it stays on the desk. */
    public Outcome<EpisodeId> withdraw(EducatorId who, EpisodeId id) {
        return parts.jdbi.inTransaction(handle -> {
            boolean withdrawn = parts.episodes.ownedBy(who, id).isPresent() && parts.episodes.unschedule(handle, id);
            if (!withdrawn) {
                return Outcome.refused("", "publishing.problem.notpromised");
            }
            parts.audit.append(handle, who, "episode.withdrawn", id.value());
            return Outcome.done(id);
        });
    }

    /** How the saved draft stands at every checkpoint, and what of it keeps it from going out. */
    public Verdict verdict(EducatorId who, EpisodeId id) {
        return parts.episodes
                .ownedBy(who, id)
                .flatMap(episode -> parts.desk.draft(who, id).map(draft -> verdict(who, episode, draft.document())))
                .orElse(Verdict.NONE);
    }

    private Verdict verdict(EducatorId who, Episode episode, EpisodeDocument document) {
        var around = new Around(
                Optional.of(parts.settings.current().imprint()),
                Optional.of(parts.mail.outlook(episode.series())),
                changes.of(who, episode));
        var looked = parts.preflight.look(episode.id(), document, around);
        var holding = parts.accepted.holding(episode.id(), looked.remarks());
        return new Verdict(Stream.of(Checkpoint.values())
                .map(point -> item(point, looked, holding))
                .toList());
    }

    private static CheckedItem item(Checkpoint point, Inspection looked, List<LessonRemark> holding) {
        var remarks = looked.remarks(point);
        return new CheckedItem(
                point,
                looked.looked(point),
                remarks,
                remarks.stream().filter(holding::contains).toList());
    }

    /** In what the draft differs from what readers see or will see; empty where it does not. */
    public Optional<Message> differs(EducatorId who, Episode episode) {
        return changes.of(who, episode).map(Difference::sentence);
    }

    /** What keeps a document from going out, for whoever does not want to know how all else stands. */
    private List<LessonRemark> holding(EpisodeId id, EpisodeDocument document) {
        var around = Around.site(parts.settings.current().imprint());
        return parts.accepted.holding(
                id, parts.preflight.look(id, document, around).remarks());
    }

    /** Lets remarks stand that the educator has read. */
    public void accept(EducatorId who, EpisodeId id, Collection<String> digests) {
        if (parts.episodes.ownedBy(who, id).isPresent()) {
            parts.accepted.accept(who, id, digests);
        }
    }

    private Outcome<ReleaseId> prepare(EducatorId who, EpisodeId id, Promise promise, ReleaseNote note) {
        var draft = parts.desk.draft(who, id);
        if (draft.isEmpty()) {
            return Outcome.refused("", "catalog.problem.gone");
        }
        var document = draft.get().document();
        var holding = holding(id, document);
        if (!holding.isEmpty()) {
            return Outcome.refused(holding.stream().map(Publisher::problem).toList());
        }
        var entered = parts.jdbi.inTransaction(handle -> enter(handle, who, id, document, promise, note));
        entered.result().ifPresent(parts.queue::add);
        return entered;
    }

    /** Builds drafts to be looked at. */
    public Trials trials() {
        return trials;
    }

    private static FieldProblem problem(LessonRemark remark) {
        return new FieldProblem(
                remark.field(), remark.message().key(), remark.message().args());
    }

    /** Refused where this document is out already and would be built the same way again. */
    private Outcome<ReleaseId> enter(
            Handle handle, EducatorId who, EpisodeId id, EpisodeDocument document, Promise promise, ReleaseNote note) {
        var episode = parts.episodes.lock(handle, id).orElseThrow();
        var revision = parts.desk.fix(handle, who, episode, document, "");
        return revision.result()
                .map(fixed -> enter(handle, who, episode, fixed, promise, note))
                .orElseGet(() -> Outcome.refused(revision.problems()));
    }

    private Outcome<ReleaseId> enter(
            Handle handle, EducatorId who, Episode episode, Revision revision, Promise promise, ReleaseNote note) {
        var release = parts.freezing.release(handle, episode, revision);
        if (release.publishedAt().isPresent()) {
            return Outcome.refused("", "publishing.problem.unchanged");
        }
        parts.releases.tryNow(handle, release.id());
        parts.releases.annotate(handle, release.id(), note);
        if (!episode.isPublished()) {
            parts.episodes.schedule(handle, episode.id(), promised(promise, release));
        }
        parts.audit.append(handle, who, "episode.promised", episode.id() + " revision " + revision.number());
        return Outcome.done(release.id());
    }

    private EpisodeState.Scheduled promised(Promise promise, Release release) {
        return new EpisodeState.Scheduled(
                promise.at(),
                promise.zone(),
                promise.local(),
                parts.clock.instant(),
                release.spec().release());
    }

    /**
     * How a draft stands.
     *
     * @param items one for each checkpoint, in their order; none of a lesson that is not there
     */
    public record Verdict(List<CheckedItem> items) {
        static final Verdict NONE = new Verdict(List.of());

        public Verdict {
            items = List.copyOf(items);
        }

        /** All that is to be said of it. */
        public List<LessonRemark> remarks() {
            return items.stream().flatMap(item -> item.remarks().stream()).toList();
        }

        /** Those of the remarks that keep it from going out. */
        public List<LessonRemark> holding() {
            return items.stream().flatMap(item -> item.holding().stream()).toList();
        }

        /** Those that only wait to be accepted. */
        public List<LessonRemark> asking() {
            return holding().stream().filter(LessonRemark::asks).toList();
        }

        /** In what the draft differs from what readers see or will see; empty where it does not. */
        public Optional<Message> differs() {
            return remarks().stream()
                    .filter(remark -> remark.point() == Checkpoint.RELEASE)
                    .map(LessonRemark::message)
                    .findFirst();
        }
    }
}
