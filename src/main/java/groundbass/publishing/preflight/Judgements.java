package groundbass.publishing.preflight;

import groundbass.catalog.episode.EpisodeId;
import groundbass.document.EpisodeDocument;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;

/**
 * Remembers what was to be said of the texts of promised lessons: the pass asks every few seconds, and reading a lesson
 * through takes a while. Of each lesson it remembers two texts, as they were last asked about.
 */
public final class Judgements {
    /** Which text of a lesson. */
    public enum Text {
        /** What goes out as things stand. */
        FIXED,
        /** What was written since. */
        DRAFT
    }

    private final Map<Key, Judgement> all = new ConcurrentHashMap<>();

    private record Key(EpisodeId lesson, Text text) {}

    private record Judgement(EpisodeDocument document, String site, List<LessonRemark> remarks) {
        boolean isOf(EpisodeDocument asked, String askedAt) {
            return document.equals(asked) && site.equals(askedAt);
        }
    }

    /**
     * What is to be said of a document.
     *
     * @param site where the site is, since addresses stand on what is printed
     * @param judge says it; asked only where the document or the address are others than before
     */
    public List<LessonRemark> of(
            EpisodeId lesson, Text text, EpisodeDocument document, String site, Supplier<List<LessonRemark>> judge) {
        return all.compute(
                        new Key(lesson, text),
                        (key, before) -> before != null && before.isOf(document, site)
                                ? before
                                : new Judgement(document, site, judge.get()))
                .remarks();
    }

    /** Forgets all lessons but these. */
    public void keepOnly(Set<EpisodeId> lessons) {
        all.keySet().removeIf(key -> !lessons.contains(key.lesson()));
    }
}
