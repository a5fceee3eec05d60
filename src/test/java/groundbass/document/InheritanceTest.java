package groundbass.document;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.document.LessonFacts.CoursePointer;
import java.util.List;
import org.junit.jupiter.api.Test;

class InheritanceTest {
    private static final EpisodeDocument LESSON = EpisodeDocument.titled("Rope and Pulley", Level.ADVANCED)
            .edit()
            .summary("A line about rope.")
            .notes("## Before you play\n\nBreathe.\n\n#no heading\n### Slowly\nBar 3 first.\n")
            .mainLine(new LineSource("", "bar 1\n1-4 E5\n"))
            .exercises(List.of(new LineSource("Slow", "bar 1\n1-4 E5\n")))
            .groove(new GrooveSource("Steady", ""))
            .rights(new Rights("A. Composer", "Written down by me.", "Own work.", Clearance.OWN))
            .script("Hello.")
            .facts(new LessonFacts(
                    "https://video.example/1",
                    "A pick",
                    List.of(new CoursePointer("Next", "https://course.example")),
                    "0:00 Start"))
            .settings(new DocumentSettings("de", "60 100", "3", "usual"))
            .done();

    @Test
    void aLessonLikeTheLastHasWhatLessonsShareAndNothingOfItsOwn() {
        var like = Inheritance.like(LESSON, "The next");
        assertThat(like)
                .isEqualTo(EpisodeDocument.titled("The next", Level.ADVANCED)
                        .edit()
                        .notes("## Before you play\n\n### Slowly\n\n")
                        .groove(LESSON.groove())
                        .rights(LESSON.rights())
                        .facts(new LessonFacts("", "A pick", LESSON.facts().courses(), ""))
                        .settings(LESSON.settings())
                        .done());
    }

    @Test
    void aDuplicateHasAllButTitleAndVideo() {
        assertThat(Inheritance.duplicate(LESSON, "The same again"))
                .isEqualTo(LESSON.edit()
                        .title("The same again")
                        .facts(new LessonFacts("", "A pick", LESSON.facts().courses(), ""))
                        .done());
    }
}
