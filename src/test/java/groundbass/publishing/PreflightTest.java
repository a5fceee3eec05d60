package groundbass.publishing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import groundbass.document.EpisodeDocument;
import groundbass.document.Level;
import groundbass.document.LineSource;
import groundbass.document.Rights;
import groundbass.form.FieldProblem;
import java.util.List;
import org.junit.jupiter.api.Test;

class PreflightTest {
    private static final String SOUND = "bar 1\n1-4 E5\n";

    @Test
    void aReadableLineWithARightsLineMayGoOut() {
        assertThat(Preflight.problems(document(SOUND, "Own work."))).isEmpty();
    }

    @Test
    void everyMistakeOfALineIsToldWithItsPlace() {
        assertThat(Preflight.problems(document("bar 1\n1-2 E58\n3-4 E5 slpa\n", "Own work.")))
                .extracting(FieldProblem::field, problem -> problem.args().subList(0, 2))
                .containsExactly(tuple("mainLine", List.of(2, 5)), tuple("mainLine", List.of(3, 8)));
    }

    @Test
    void nothingGoesOutWithoutAWordOnItsRights() {
        assertThat(Preflight.problems(document(SOUND, " ")))
                .extracting(FieldProblem::key)
                .containsExactly("publishing.problem.rights");
    }

    private static EpisodeDocument document(String line, String rights) {
        return EpisodeDocument.titled("Slack Water", Level.BEGINNER)
                .edit()
                .mainLine(new LineSource("", line))
                .rights(new Rights("", "", rights))
                .done();
    }
}
