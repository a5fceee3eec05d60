package groundbass.lesson;

import groundbass.walkthrough.Retelling.Retold;
import java.util.ArrayList;
import java.util.List;
import java.util.SortedSet;

/**
 * What a lesson is found by: facts of its main line, and the words of its texts.
 *
 * @param techniques the plucking hand's, by line text's words
 * @param key as line text writes it: {@code A dorian}
 * @param meter such as {@code 6/8}
 * @param tempo beats a minute
 * @param strings of the neck
 * @param words of title, summary, notes and walkthrough, as {@link SearchWords} has them
 * @param titleWords of the title alone
 */
public record LessonTraits(
        List<String> techniques,
        String key,
        String meter,
        int tempo,
        int strings,
        SortedSet<String> words,
        SortedSet<String> titleWords) {
    public LessonTraits {
        techniques = List.copyOf(techniques);
    }

    public static LessonTraits of(Lesson lesson) {
        var header = lesson.main().header();
        return new LessonTraits(
                lesson.techniques(),
                header.key().toString(),
                header.meter().toString(),
                header.tempo().perMinute(),
                header.tuning().size(),
                SearchWords.of(texts(lesson)),
                SearchWords.of(List.of(lesson.document().title())));
    }

    private static List<String> texts(Lesson lesson) {
        var document = lesson.document();
        var texts = new ArrayList<String>(List.of(document.title(), document.summary(), document.notes()));
        for (int line = 0; line <= lesson.exercises().size(); line++) {
            lesson.walkthrough(line).steps().stream().map(Retold::step).forEach(step -> texts.add(step.text()));
        }
        return texts;
    }
}
