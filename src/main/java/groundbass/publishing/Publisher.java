package groundbass.publishing;

import groundbass.catalog.FieldChecks;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.Series;
import groundbass.document.EpisodeDocument;
import groundbass.form.FieldProblem;
import groundbass.form.Outcome;
import groundbass.publishing.Wish.Aim;
import groundbass.publishing.preflight.Around;
import groundbass.publishing.preflight.LessonRemark;
import groundbass.publishing.preflight.Preflight;
import groundbass.release.ReleaseId;
import groundbass.release.ReleaseNote;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.function.Function;

/**
 * What an educator asks of the calendar. Nothing goes out here: the draft is checked and fixed, a release to build and an
 * hour to keep are entered, and {@link PublicationJob} keeps them.
 */
public final class Publisher {
    private final PublishingParts parts;
    private final Entering entering;
    private final Trials trials;

    public Publisher(PublishingParts parts) {
        this.parts = parts;
        this.entering = new Entering(parts);
        this.trials = new Trials(parts);
    }

    /**
     * Fixes the draft of an episode that is not out and brings it out as soon as its files are built. However often and in
     * how many windows it is asked for, it goes out once; where it went out meanwhile, nothing is done.
     */
    public Outcome<ReleaseId> bringOut(EducatorId who, EpisodeId id, Seen seen) {
        return bringOut(who, id, seen, Set.of());
    }

    /** @param accepted digests of remarks that may stand; they do as soon as it is entered, and not where it is refused */
    public Outcome<ReleaseId> bringOut(EducatorId who, EpisodeId id, Seen seen, Collection<String> accepted) {
        return prepare(who, id, Wish.of(Aim.OUT_NOW, now(id), seen).accepting(accepted));
    }

    /**
     * Corrects a lesson that is out.
     *
     * @param note what students are told of it; its text must be there
     */
    public Outcome<ReleaseId> correct(EducatorId who, EpisodeId id, ReleaseNote note, Seen seen) {
        return correct(who, id, note, seen, Set.of());
    }

    /** @param accepted as in {@link #bringOut(EducatorId, EpisodeId, Seen, Collection)} */
    public Outcome<ReleaseId> correct(
            EducatorId who, EpisodeId id, ReleaseNote note, Seen seen, Collection<String> accepted) {
        var problems = FieldChecks.line("note", note.text(), ReleaseNote.LONGEST);
        if (!problems.isEmpty()) {
            return Outcome.refused(problems);
        }
        var told = new ReleaseNote(note.text().strip(), note.byLetter());
        return prepare(who, id, new Wish(Aim.CORRECTED, now(id), told, seen, Set.copyOf(accepted)));
    }

    /** This moment where the lesson's series is at home: what ends with a day ends with its day. */
    private Promise now(EpisodeId id) {
        var zone = parts.episodes
                .find(id)
                .flatMap(episode -> parts.catalog.find(episode.series()))
                .map(Series::zone)
                .orElseGet(parts.clock::getZone);
        return Promise.now(zone, parts.clock.instant());
    }

    /**
     * Promises an hour. The draft is fixed and built now; what is written until the hour goes out with it, as
     * {@link Promises} says.
     */
    public Outcome<ReleaseId> schedule(EducatorId who, EpisodeId id, LocalDateTime local, ZoneId zone, Seen seen) {
        return schedule(who, id, local, zone, seen, Set.of());
    }

    /** @param accepted as in {@link #bringOut(EducatorId, EpisodeId, Seen, Collection)} */
    public Outcome<ReleaseId> schedule(
            EducatorId who, EpisodeId id, LocalDateTime local, ZoneId zone, Seen seen, Collection<String> accepted) {
        var promise = Promise.of(local, zone, parts.clock.instant());
        return promise.result()
                .map(kept -> prepare(who, id, Wish.of(Aim.OUT_THEN, kept, seen).accepting(accepted)))
                .orElseGet(() -> Outcome.refused(promise.problems()));
    }

    /** Takes a promised hour back; what was built for it stays on the desk. */
    public Outcome<EpisodeId> withdraw(EducatorId who, EpisodeId id, Seen seen) {
        return parts.jdbi.inTransaction(handle -> {
            var episode = parts.episodes.lock(handle, id).filter(one -> isTheirs(who, id));
            if (episode.filter(one -> !seen.holds(one.state())).isPresent()) {
                return Outcome.refused(List.of(Wish.otherwise()));
            }
            if (episode.isEmpty() || !parts.episodes.unschedule(handle, id)) {
                return Outcome.refused("", "publishing.problem.notpromised");
            }
            parts.audit.append(handle, who, AuditWord.EPISODE_WITHDRAWN, id.value());
            return Outcome.done(id);
        });
    }

    private boolean isTheirs(EducatorId who, EpisodeId id) {
        return parts.episodes.open(who, Deed.WRITE, id).isPresent();
    }

    /** To look at lessons, as many as one page shows. */
    public SiteLook look() {
        return parts.look();
    }

    /** What keeps a document from going out, for whoever does not want to know how all else stands. */
    private List<LessonRemark> holding(EpisodeId id, EpisodeDocument document) {
        var around = Around.site(parts.settings.current().imprint(), parts.missing(document));
        return AcceptedRemarks.holding(
                parts.accepted.of(id),
                parts.preflight.look(id, document, around).remarks());
    }

    private static boolean mayStand(LessonRemark remark, Set<String> accepted) {
        return remark.asks() && accepted.contains(remark.digest());
    }

    /** Lets remarks stand that the educator has read. */
    public void accept(EducatorId who, EpisodeId id, Collection<String> digests) {
        if (parts.episodes.open(who, Deed.WRITE, id).isPresent()) {
            parts.accepted.accept(who, id, digests);
        }
    }

    private Outcome<ReleaseId> prepare(EducatorId who, EpisodeId id, Wish wish) {
        return built(parts.desk
                .draft(who, id)
                .map(draft -> enterWhereCleared(who, id, draft.document(), wish))
                .orElseGet(() -> Outcome.refused("", "catalog.problem.gone")));
    }

    /**
     * Has the release of a draft built that nothing keeps from going out. The draft is read through before anything is
     * locked.
     *
     * @param entry enters the document that was read
     */
    Outcome<ReleaseId> prepare(EducatorId who, EpisodeId id, Function<EpisodeDocument, Outcome<ReleaseId>> entry) {
        var cleared = cleared(who, id);
        return built(cleared.result().map(entry).orElseGet(() -> Outcome.refused(cleared.problems())));
    }

    private Outcome<ReleaseId> built(Outcome<ReleaseId> entered) {
        entered.result().ifPresent(parts.queue::add);
        return entered;
    }

    /** Of the remarks that the wish lets stand, only those stand afterwards that are made now. */
    private Outcome<ReleaseId> enterWhereCleared(EducatorId who, EpisodeId id, EpisodeDocument document, Wish wish) {
        var holding = holding(id, document);
        var standing = holding.stream()
                .filter(remark -> mayStand(remark, wish.accepted()))
                .toList();
        return standing.size() == holding.size()
                ? enter(who, id, document, wish.accepting(digests(standing)))
                : Outcome.refused(holding.stream()
                        .filter(remark -> !standing.contains(remark))
                        .map(Publisher::problem)
                        .toList());
    }

    private static List<String> digests(List<LessonRemark> remarks) {
        return remarks.stream().map(LessonRemark::digest).toList();
    }

    /** The saved draft, where nothing keeps it from going out. */
    Outcome<EpisodeDocument> cleared(EducatorId who, EpisodeId id) {
        var draft = parts.desk.draft(who, id);
        if (draft.isEmpty()) {
            return Outcome.refused("", "catalog.problem.gone");
        }
        var document = draft.get().document();
        var holding = holding(id, document);
        return holding.isEmpty()
                ? Outcome.done(document)
                : Outcome.refused(holding.stream().map(Publisher::problem).toList());
    }

    /** Enters a wish for a cleared document, in the caller's transaction where there is one. */
    Outcome<ReleaseId> enter(EducatorId who, EpisodeId id, EpisodeDocument cleared, Wish wish) {
        var ended = Preflight.ended(cleared.rights(), wish.promise().local().toLocalDate());
        if (ended.isPresent()) {
            return Outcome.refused(List.of(problem(ended.get())));
        }
        return entering.enter(who, id, cleared, wish);
    }

    /** Builds drafts to be looked at. */
    public Trials trials() {
        return trials;
    }

    private static FieldProblem problem(LessonRemark remark) {
        return new FieldProblem(
                remark.field(), remark.message().key(), remark.message().args());
    }
}
