package groundbass.web.student.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.visit.PlayedLine;
import groundbass.lesson.PageContent;
import groundbass.lesson.PageContent.CourseContent;
import groundbass.lesson.PageContent.LineContent;
import java.util.Collections;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A page's word is believed as far as its lesson has such lines, bars and courses. */
class SittingFormTest {
    private static final String COURSE = "https://courses.example/slap";
    private static final SittingForm FORM = new SittingForm(content(), 1);

    /** A line of eight bars and an exercise of two. */
    private static PageContent content() {
        return new PageContent(
                "",
                "",
                "",
                "",
                "",
                "",
                "",
                "en",
                List.of(),
                List.of(line(8), line(2)),
                "",
                "",
                List.of(new CourseContent("Slap", COURSE)),
                List.of(),
                List.of(),
                List.of());
    }

    private static LineContent line(int bars) {
        return new LineContent("", "C major", "4/4", 100, bars, List.of(), List.of(), List.of());
    }

    @Test
    void readsWhatWasPlayedAndFollowed() {
        var sitting = FORM.read(List.of("line,4,5.6.7", "exercise-1,0,"), List.of(COURSE, COURSE));
        assertThat(sitting.lines())
                .containsExactly(new PlayedLine("line", 4, Set.of(5, 6, 7)), new PlayedLine("exercise-1", 0, Set.of()));
        assertThat(sitting.courses()).containsExactly(COURSE);
    }

    @Test
    void barsThatTheLineDoesNotHaveArePassedOver() {
        assertThat(FORM.read(List.of("exercise-1,1,0.2.3.999"), List.of()).lines())
                .containsExactly(new PlayedLine("exercise-1", 1, Set.of(0, 2)));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "line",
                "line,5,",
                "line,-1,",
                "line,4,5,6",
                "line,4,a",
                "line,4,5.",
                "exercise-2,1,",
                "exercise-0,1,",
                "other,1,",
                "line,4,12345",
                "line,1,1 "
            })
    void whatIsNoSuchTextIsPassedOver(String text) {
        assertThat(FORM.read(List.of(text), List.of()).lines()).isEmpty();
    }

    @Test
    void aCourseThatTheLessonDoesNotNameIsPassedOverAndSoIsMoreThanAPageTells() {
        assertThat(FORM.read(List.of(), List.of("https://elsewhere.example/", ""))
                        .courses())
                .isEmpty();
        assertThat(FORM.read(Collections.nCopies(10_000, "line,1,"), List.of()).lines())
                .hasSize(50);
    }
}
