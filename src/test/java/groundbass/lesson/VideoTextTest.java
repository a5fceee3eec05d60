package groundbass.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.document.EpisodeDocument;
import groundbass.document.LessonFacts;
import groundbass.document.LessonFacts.CoursePointer;
import groundbass.document.Level;
import groundbass.document.Rights;
import groundbass.text.Messages;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** What is to stand in such a text, and in which order: common practice, no source. */
class VideoTextTest {
    private static final String LINK = "https://lessons.example/e/abc";
    private static final EpisodeDocument BARE = EpisodeDocument.titled("Low Tide", Level.BEGINNER);

    private static String text(EpisodeDocument lesson, Locale locale) {
        return VideoText.of(lesson, LINK, Messages.of(locale));
    }

    private static EpisodeDocument chapters(String rows) {
        return BARE.edit().facts(LessonFacts.NONE.withChapters(rows)).done();
    }

    @Test
    void itHasTitleWayChaptersWhereToGoOnAndWhoseMusicItIs() {
        var facts = new LessonFacts(
                "https://video.example/1",
                "a capo",
                List.of(new CoursePointer("Time & Feel", "https://course.example/<1>")),
                "1:05 Bar 3\n0:00 Hello\n1:02:03 Late\n");
        var lesson = BARE.edit()
                .summary("Two bars that breathe. ")
                .facts(facts)
                .rights(new Rights("A. Composer", "", "By permission of B."))
                .done();
        assertThat(text(lesson, Locale.ENGLISH)).isEqualTo("""
                Low Tide
                Two bars that breathe.

                Sheet, files to practise with, and the line explained: https://lessons.example/e/abc

                0:00 Hello
                1:05 Bar 3
                1:02:03 Late

                Where to go on
                Time & Feel https://course.example/<1>

                A. Composer
                By permission of B.
                """);
    }

    @Test
    void whatWasNotTypedIsLeftOut() {
        assertThat(text(BARE, Locale.GERMAN)).isEqualTo("""
                Low Tide

                Blatt, Dateien zum Üben und die Linie erklärt: https://lessons.example/e/abc
                """);
    }

    @Test
    void theChaptersBeginWhereTheVideoBegins() {
        assertThat(text(chapters("0:07 Bar 1\n0:30 Bar 2"), Locale.ENGLISH))
                .contains("\n\n0:00 Introduction\n0:07 Bar 1\n0:30 Bar 2\n");
        assertThat(text(chapters("0:00.4 Bar 1\n0:30 Bar 2"), Locale.ENGLISH)).contains("\n\n0:00 Bar 1\n0:30 Bar 2\n");
    }

    @Test
    void aRowThatIsNoChapterIsNotShown() {
        assertThat(text(chapters("later Bar 3\n0:00 Bar 1"), Locale.ENGLISH))
                .contains("\n\n0:00 Bar 1\n")
                .doesNotContain("later");
    }
}
