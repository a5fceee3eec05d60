package groundbass.script;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.score.Line;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What a teacher says around the notes names notes, frets and counts and claims none of the line; what names a thing of
 * its own, the pickup or the strings, is taken for that.
 */
class AdviceTest {
    /** A pickup over D7 and two bars over Gm7 and C9. */
    private static final Line LINE = LineText.read("""
                    key     G minor
                    meter   4/4
                    strings E A D G
                    style   finger

                    bar 0 over D7
                    4  A5

                    bar 1 over Gm7
                    1-2  E3
                    3    D5
                    4    D3

                    bar 2 over C9
                    1-4  A3
                    """).line();

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "en | In bar 2 you hold one note. Count it aloud: 1 & 2 & 3 & 4 &.",
                "en | So that is beat 4 of bar 1. Position: frets 7 to 9.",
                "en | Bar 2 is one long note. The strings are E, A, D and G.",
                "en | Bar 1 is over Gm7. The pickup is over D7.",
                "de | In Takt 2 liegt ein Ton. Laut zählen: 1 & 2 & 3 & 4 &.",
                "de | Das war Schlag 4 von Takt 1. Lage: 7. bis 9. Bund.",
                "de | Takt 2 ist ein langer Ton. Die Saiten sind E, A, D und G.",
                "de | Takt 1 steht über Gm7. Der Auftakt steht über D7."
            })
    void isNotCalledWrong(String language, String talk) {
        assertThat(Proofreading.of(talk, LINE, Locale.forLanguageTag(language)).contradictions())
                .isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "en | In third position bar 2 begins with a D.",
                "en | The strings are not E, A, D and G.",
                "de | In der dritten Lage beginnt Takt 2 mit einem D."
            })
    void whatIsSaidOfNotesBesideItIsNotTakenForAdvice(String language, String talk) {
        assertThat(Proofreading.of(talk, LINE, Locale.forLanguageTag(language)).agreeing())
                .isZero();
    }

    @Test
    void aNoteThatIsWrongInAPositionIsFound() {
        var read = Proofreading.of("In third position bar 2 begins with a D.", LINE, Locale.ENGLISH);
        assertThat(read.contradictions()).hasSize(1);
    }

    @Test
    void aPickupOverAnotherChordIs() {
        var read = Proofreading.of("Bar 1 is over Gm7. The pickup is over G7.", LINE, Locale.ENGLISH);
        assertThat(read.contradictions()).hasSize(1);
    }

    @Test
    void theStringsAgreeInEitherOrder() {
        for (String strings : new String[] {"E, A, D and G", "G, D, A and E"}) {
            var read = Proofreading.of("The strings are " + strings + ".", LINE, Locale.ENGLISH);
            assertThat(read.agreeing()).as(strings).isEqualTo(1);
        }
    }
}
