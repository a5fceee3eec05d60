package groundbass.publishing.preflight;

import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.RevisionId;
import groundbass.document.EpisodeDocument;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;

/**
 * Remembers what was to be said of the texts of promised lessons: the pass asks every few seconds, and reading a lesson
 * through takes a while. Of each lesson it remembers the draft, as it was last asked about, and the fixed states that
 * were.
 */
public final class Judgements {
    private final Map<Key, Judgement> all = new ConcurrentHashMap<>();

    /** @param fixed which fixed state; empty for the draft */
    private record Key(EpisodeId lesson, Optional<RevisionId> fixed) {}

    private record Judgement(EpisodeDocument document, String site, Missing missing, List<LessonRemark> remarks) {
        boolean isOf(EpisodeDocument asked, String askedAt, Missing gone) {
            return document.equals(asked) && site.equals(askedAt) && missing.equals(gone);
        }
    }

    /**
     * What is to be said of a document.
     *
     * @param fixed the state that it is, where it is not the draft
     * @param site where the site is, since addresses stand on what is printed
     * @param missing what it names and is not there: that comes and goes without it
     * @param judge says it; asked only where any of these is another than before
     */
    public List<LessonRemark> of(
            EpisodeId lesson,
            Optional<RevisionId> fixed,
            EpisodeDocument document,
            String site,
            Missing missing,
            Supplier<List<LessonRemark>> judge) {
        return all.compute(
                        new Key(lesson, fixed),
                        (key, before) -> before != null && before.isOf(document, site, missing)
                                ? before
                                : new Judgement(document, site, missing, judge.get()))
                .remarks();
    }

    /** Forgets all lessons but these. */
    public void keepOnly(Set<EpisodeId> lessons) {
        all.keySet().removeIf(key -> !lessons.contains(key.lesson()));
    }
}
