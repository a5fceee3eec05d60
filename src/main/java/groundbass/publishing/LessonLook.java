package groundbass.publishing;

import groundbass.catalog.episode.Draft;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeState;
import groundbass.catalog.episode.Revision;
import groundbass.catalog.episode.RevisionId;
import groundbass.document.EpisodeDocument;
import groundbass.publishing.preflight.Around;
import groundbass.publishing.preflight.CheckedItem;
import groundbass.publishing.preflight.CheckedLesson;
import groundbass.publishing.preflight.Checkpoint;
import groundbass.publishing.preflight.Difference;
import groundbass.publishing.preflight.LessonRemark;
import groundbass.publishing.preflight.Preflight;
import groundbass.publishing.preflight.TriedLinks;
import groundbass.release.Release;
import groundbass.text.Message;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;
import java.util.stream.Stream;

/**
 * What is read to say how one lesson stands: each thing when it is first asked for, and once for all that is said of it.
 * Whoever acts on it locks the lesson and compares, for it may stand otherwise by then.
 */
public final class LessonLook {
    private final PublishingParts parts;
    private final SiteLook site;
    private final Episode episode;
    private final Once<Optional<Draft>> draft;
    private final Once<List<Release>> releases;
    private final Once<Set<String>> accepted;
    private final Map<RevisionId, Revision> revisions = new ConcurrentHashMap<>();

    LessonLook(PublishingParts parts, SiteLook site, Episode episode, Supplier<Optional<Draft>> draft) {
        this.parts = parts;
        this.site = site;
        this.episode = episode;
        this.draft = new Once<>(draft);
        this.releases = new Once<>(() -> parts.releases.of(episode.id()));
        this.accepted = new Once<>(() -> parts.accepted.of(episode.id()));
    }

    public Episode episode() {
        return episode;
    }

    /** All that were made to be published, the newest first. */
    public List<Release> releases() {
        return releases.get();
    }

    /** The release that was made last, whatever became of it. */
    public Optional<Release> latest() {
        return releases().stream().findFirst();
    }

    /** The release that readers see. */
    public Optional<Release> current() {
        return Release.current(releases());
    }

    /** Empty where the lesson is gone, or somebody else's. */
    public Optional<Draft> draft() {
        return draft.get();
    }

    /** What a release shows. */
    Revision shownBy(Release release) {
        return revisions.computeIfAbsent(
                release.spec().revision(), id -> parts.revisions.find(id).orElseThrow());
    }

    /** The digests of the remarks that its educator lets stand. */
    Set<String> accepted() {
        return accepted.get();
    }

    SiteLook site() {
        return site;
    }

    /** How the saved draft stands at every checkpoint, and what of it keeps it from going out. */
    public CheckedLesson checked() {
        return draft().map(Draft::document).map(this::judged).orElse(CheckedLesson.NONE);
    }

    private CheckedLesson judged(EpisodeDocument document) {
        return Judging.of(episode.id(), () -> checked(document), CheckedLesson.unjudged());
    }

    private CheckedLesson checked(EpisodeDocument document) {
        var around = new Around(
                Optional.of(site.imprint()),
                Optional.of(site.mail(episode.series())),
                DraftChanges.of(this),
                Optional.of(day()),
                Optional.of(new TriedLinks(parts.links::known, site.zone(episode.series())))
                        .filter(tried -> parts.links.isOn()),
                parts.missing(document));
        var looked = new Preflight(site.addresses()).look(episode.id(), document, around);
        var remarks = looked.remarks();
        var holding = AcceptedRemarks.holding(accepted(), remarks);
        return new CheckedLesson(Stream.of(Checkpoint.values())
                .map(point -> new CheckedItem(point, looked.looked(point), at(point, remarks), at(point, holding)))
                .toList());
    }

    /** Has the pages tried to which the draft links, where the site tries them; what comes of it is told at a later look. */
    public void tryLinks() {
        draft().map(Draft::document).map(Preflight::addresses).ifPresent(parts.links::ask);
    }

    /** When it goes out as things stand: at its hour, or today. */
    private LocalDate day() {
        return episode.state() instanceof EpisodeState.Scheduled promise
                ? promise.local().toLocalDate()
                : LocalDate.ofInstant(parts.clock.instant(), site.zone(episode.series()));
    }

    private static List<LessonRemark> at(Checkpoint point, List<LessonRemark> remarks) {
        return remarks.stream().filter(remark -> remark.point() == point).toList();
    }

    /** In what the draft differs from what readers see or will see; empty where it does not. */
    public Optional<Message> differs() {
        return DraftChanges.of(this).map(Difference::sentence);
    }
}
