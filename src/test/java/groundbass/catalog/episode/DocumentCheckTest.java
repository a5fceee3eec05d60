package groundbass.catalog.episode;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.CatalogFixture;
import groundbass.document.DocumentSettings;
import groundbass.document.EpisodeDocument;
import groundbass.document.Level;
import groundbass.document.LineSource;
import groundbass.form.FieldProblem;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;

class DocumentCheckTest {
    private static final EpisodeDocument GOOD = CatalogFixture.document("Octaves");

    @Test
    void aTitleAndALineAreEnough() {
        assertThat(DocumentCheck.problems(GOOD)).isEmpty();
    }

    @Test
    void withoutTitleOrLineThereIsNoRevision() {
        assertThat(DocumentCheck.problems(EpisodeDocument.titled("", Level.BEGINNER)))
                .containsExactly(
                        FieldProblem.of("title", "catalog.problem.title-missing"),
                        FieldProblem.of("mainLine", "catalog.problem.line-missing"));
        assertThat(DocumentCheck.problems(GOOD.edit().title("two\nlines").done()))
                .containsExactly(FieldProblem.of("title", "catalog.problem.one-line"));
    }

    @Test
    void everyWordThatIsNoTempoIsNamed() {
        assertThat(DocumentCheck.problems(with(new DocumentSettings("en", "60%, fast 19 100 201 1e2"))))
                .containsExactly(tempo("fast"), tempo("19"), tempo("201"), tempo("1e2"));
        assertThat(new DocumentSettings("en", "100, 60% 75;60 fast").tempoPercents())
                .containsExactly(60, 75, 100);
    }

    @Test
    void aLanguageIsATagOfTheStandard() {
        // BCP 47 (RFC 5646), section 2.1 and appendix A
        for (String tag : List.of("en", "de-AT", "zh-Hant", "sr-Latn-RS", "es-419")) {
            assertThat(DocumentCheck.problems(with(new DocumentSettings(tag, "100"))))
                    .as(tag)
                    .isEmpty();
        }
        for (String tag : List.of("", "x", "german language", "de_AT_", "toolonglanguage")) {
            assertThat(DocumentCheck.problems(with(new DocumentSettings(tag, "100"))))
                    .as(tag)
                    .hasSize(1);
        }
    }

    @Test
    void tooMuchIsToldWithBothFigures() {
        var line = new LineSource("", "x".repeat(200_001));
        assertThat(DocumentCheck.problems(GOOD.edit()
                        .mainLine(line)
                        .exercises(Collections.nCopies(31, line))
                        .done()))
                .containsExactly(
                        FieldProblem.of("mainLine", "catalog.problem.long", 200_001, 200_000),
                        FieldProblem.of("exercises", "catalog.problem.many", 31, 30));
    }

    private static FieldProblem tempo(String word) {
        return FieldProblem.of("settings.tempos", "catalog.problem.tempo", word);
    }

    private static EpisodeDocument with(DocumentSettings settings) {
        return GOOD.edit().settings(settings).done();
    }
}
