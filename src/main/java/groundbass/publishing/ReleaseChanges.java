package groundbass.publishing;

import groundbass.catalog.episode.Revision;
import groundbass.catalog.episode.Revisions;
import groundbass.document.EpisodeDocument;
import groundbass.release.Release;
import groundbass.release.ReleaseNote;
import groundbass.release.Releases;
import groundbass.text.Message;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** What a student who holds an earlier release of a lesson does not have yet. */
public final class ReleaseChanges {
    private final Releases releases;
    private final Revisions revisions;

    public ReleaseChanges(Releases releases, Revisions revisions) {
        this.releases = releases;
        this.revisions = revisions;
    }

    /**
     * That something newer is out.
     *
     * @param held the number of the newest release that is held; {@code current} of the one that is out
     * @param notes what was said of each release since, the oldest first
     * @param clauses in what the two differ
     */
    public record Older(int held, int current, List<String> notes, List<Message> clauses) {}

    /** Empty where the newest of those held is out, or none of them was. */
    public Optional<Older> since(Collection<String> held, Release current) {
        var published = releases.of(current.episode()).stream()
                .filter(release -> release.publishedAt().isPresent())
                .toList();
        return published.stream()
                .filter(release -> held.contains(release.id().value()))
                .max(Comparator.comparing(ReleaseChanges::number))
                .filter(newest -> number(newest) < number(current))
                .map(newest -> older(newest, current, published));
    }

    private Older older(Release held, Release current, List<Release> published) {
        var notes = published.stream()
                .filter(release -> number(release) > number(held) && number(release) <= number(current))
                .sorted(Comparator.comparing(ReleaseChanges::number))
                .map(Release::note)
                .map(ReleaseNote::text)
                .filter(text -> !text.isEmpty())
                .toList();
        var clauses = DocumentComparison.clauses(document(held), document(current));
        return new Older(number(held), number(current), notes, clauses);
    }

    private EpisodeDocument document(Release release) {
        return revisions.find(release.spec().revision()).map(Revision::document).orElseThrow();
    }

    private static int number(Release release) {
        return release.spec().release();
    }
}
