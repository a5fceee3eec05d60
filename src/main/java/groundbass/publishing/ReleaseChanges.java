package groundbass.publishing;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import groundbass.catalog.episode.Revision;
import groundbass.catalog.episode.RevisionId;
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
    /** Comparisons that are remembered; one never changes, since no revision does. */
    private static final int MOST = 500;

    private final Releases releases;
    private final Revisions revisions;
    private final Cache<Pair, List<Message>> compared =
            Caffeine.newBuilder().maximumSize(MOST).build();

    private record Pair(RevisionId held, RevisionId current) {}

    public ReleaseChanges(Releases releases, Revisions revisions) {
        this.releases = releases;
        this.revisions = revisions;
    }

    /**
     * That something newer is out.
     *
     * @param taken the newest release that is held
     * @param out   what is out
     * @param notes what was said of each release since, the oldest first
     */
    public record Older(Release taken, Release out, List<String> notes) {
        /** The number of the release that is held. */
        public int held() {
            return number(taken);
        }

        /** The number of the release that is out. */
        public int current() {
            return number(out);
        }
    }

    /** In what the two differ, bar by bar. */
    public List<Message> clauses(Older older) {
        var pair = new Pair(older.taken().spec().revision(), older.out().spec().revision());
        return compared.get(pair, two -> DocumentComparison.clauses(document(two.held()), document(two.current())));
    }

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
        return new Older(held, current, notes);
    }

    private EpisodeDocument document(RevisionId id) {
        return revisions.find(id).map(Revision::document).orElseThrow();
    }

    private static int number(Release release) {
        return release.spec().release();
    }
}
