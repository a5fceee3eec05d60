package groundbass.lesson;

import groundbass.document.EpisodeDocument;
import groundbass.document.Rights;
import groundbass.script.Chapter;
import groundbass.script.Chapters;
import groundbass.text.Messages;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What stands below a lesson's video where that is shown elsewhere: plain text, to be copied. */
public final class VideoText {
    private static final long SECOND = 1000;

    private VideoText() {}

    /**
     * Paragraphs with an empty line between them: title and summary, the way to the lesson, the chapters, where to go on,
     * and whose music it is. What was not typed is left out.
     *
     * @param link where the lesson is, whatever becomes of its title
     * @param words in the lesson's language
     */
    public static String of(EpisodeDocument lesson, String link, Messages words) {
        return Stream.of(
                        rows(lesson.title(), lesson.summary()),
                        words.say("lesson.below.way", link),
                        chapters(lesson, words),
                        courses(lesson, words),
                        rights(lesson.rights()))
                .filter(paragraph -> !paragraph.isEmpty())
                .collect(Collectors.joining("\n\n", "", "\n"));
    }

    /** Such a list divides a whole video, so it begins where that begins (common practice, no source). */
    private static String chapters(EpisodeDocument lesson, Messages words) {
        List<Chapter> chapters =
                new ArrayList<>(Chapters.read(lesson.facts().chapters()).chapters());
        if (!chapters.isEmpty() && chapters.get(0).from() >= SECOND) {
            chapters.add(0, new Chapter(0, words.say("script.chapter.start")));
        }
        return Chapters.list(chapters).stripTrailing();
    }

    private static String courses(EpisodeDocument lesson, Messages words) {
        String rows = lesson.facts().courses().stream()
                .map(course -> (course.title().strip() + " " + course.address().strip()).strip())
                .filter(row -> !row.isEmpty())
                .collect(Collectors.joining("\n"));
        return rows.isEmpty() ? "" : words.say("student.courses") + "\n" + rows;
    }

    private static String rights(Rights rights) {
        return rows(rights.composer(), rights.credit(), rights.statement());
    }

    private static String rows(String... texts) {
        return Stream.of(texts)
                .map(String::strip)
                .filter(text -> !text.isEmpty())
                .collect(Collectors.joining("\n"));
    }
}
