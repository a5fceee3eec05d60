package groundbass.release.find;

import groundbass.document.Level;
import groundbass.identity.Slug;
import groundbass.lesson.SearchWords;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.SortedSet;

/**
 * Which lessons somebody looks for; what is empty is open.
 *
 * @param words each begins a word of the lesson's texts
 * @param techniques by line text's words: a lesson has one of them; empty for any
 * @param key, meter as line text writes them
 * @param slowest, fastest beats a minute, both included
 */
public record LessonQuery(
        SortedSet<String> words,
        Set<String> techniques,
        Optional<Level> level,
        Optional<String> key,
        Optional<String> meter,
        OptionalInt strings,
        OptionalInt slowest,
        OptionalInt fastest,
        Optional<Slug> series,
        Order order) {
    public LessonQuery {
        techniques = Set.copyOf(techniques);
    }

    /** More words than these narrow nothing down, and each costs. */
    private static final int MOST_WORDS = 8;

    /** In which order they are shown. */
    public enum Order {
        /** What came out last first; where words are looked for, those in a title go before. */
        NEWEST,
        NUMBER,
        LEVEL,
        TEMPO,
        TITLE
    }

    /** @param text as typed */
    public static SortedSet<String> words(String text) {
        var words = SearchWords.of(List.of(text));
        return words.size() <= MOST_WORDS
                ? words
                : SearchWords.of(words.stream().limit(MOST_WORDS).toList());
    }
}
