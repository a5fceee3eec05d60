package groundbass.document;

import java.util.stream.Collectors;

/** What a new lesson takes over from one that is there. */
public final class Inheritance {
    private Inheritance() {}

    /**
     * What lessons of a kind have in common: level, whose music it is, drums, tempos, language, gear, courses, and the
     * headings of the notes. What belongs to one lesson alone stays with it: its lines, words, video and recordings.
     */
    public static EpisodeDocument like(EpisodeDocument lesson, String title) {
        return EpisodeDocument.titled(title, lesson.level())
                .edit()
                .notes(headings(lesson.notes()))
                .groove(lesson.groove())
                .rights(lesson.rights())
                .facts(new LessonFacts("", lesson.facts().gear(), lesson.facts().courses(), ""))
                .settings(lesson.settings())
                .done();
    }

    /** Everything under another title, but for the video, which shows the other lesson. */
    public static EpisodeDocument duplicate(EpisodeDocument lesson, String title) {
        return lesson.edit()
                .title(title)
                .facts(new LessonFacts("", lesson.facts().gear(), lesson.facts().courses(), ""))
                .done();
    }

    /** Lines that begin with one to six number signs (CommonMark 0.31, ATX headings), with room under each. */
    private static String headings(String notes) {
        return notes.lines()
                .filter(line -> line.matches(" {0,3}#{1,6}( .*)?"))
                .map(line -> line.strip() + "\n\n")
                .collect(Collectors.joining());
    }
}
