package groundbass.script;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.score.Line;
import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What talk leans on: the note that was spoken of last, the beat after the one in hand, what is counted, what comes first
 * and what is taken back. Each is told once wrongly and once as it is.
 */
class SpokenOfTest {
    private static final Line LINE = LineText.read("""
                    title Tin Bucket
                    key C major
                    meter 4/4
                    tempo 88
                    strings E A D G

                    bar 1 over C
                    1    A3
                    2    A3, D2
                    3    rest
                    4    D5

                    bar 2 over Am7
                    1-2  E5 for 3, E5
                    3    D2, D5 hammer
                    4    Ax, A5

                    bar 3 over F
                    1    E1
                    2    D3, D2 pull
                    3-4  A3

                    bar 4 over G
                    1-4  E3
                    """).line();

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Bar two has one hammer-on. It falls on beat four. | Bar two has one hammer-on. It falls on the and of three.",
                "Bar two begins with the A. It's in there three times. | Bar two begins with the A. It's in there twice.",
                "In bar one there is a G on beat four. Then down to the A. That's a fifth. | In bar one there is a G on beat four. Then down to the A. That's a minor seventh.",
                "Bar one begins with a C. Right after that comes a rest. | Bar one begins with a C. After that comes a rest.",
                "In bar one, after the rest there is an E. | In bar one, after the rest there is a G.",
                "In bar one on beat two you play the E first and then the C. | In bar one on beat two you play the C first and then the E.",
                "If you count the dead notes in bar two, you'll find two of them. | If you count the dead notes in bar two, you'll find one of them.",
                "Bar one. On beat two there are two eighths. Three, an E. | Bar one. On beat two there are two eighths. Three, a rest.",
                "You won't find a rest in bar one. | You won't find a rest in bar two.",
                "The tempo is ninety, no, a hundred. | The tempo is ninety, no, eighty-eight.",
                "The tempo is a comfortable ninety-six. | The tempo is a comfortable eighty-eight.",
                "In bar two the G is pulled rather than hammered. | In bar two the G is hammered rather than pulled.",
                "The penultimate bar is over C. | The penultimate bar is over F.",
                "The opening bar is over F. | The opening bar is over C.",
                "There are no dead notes in bar two. | There are no dead notes in bar one.",
                "Bar three. The E, you find it on the A string. | Bar three. The E, you find it on the D string.",
                "Bar two begins with an A. Then it comes again on beat two. | Bar two begins with an A. Then it comes again on the and of two."
            })
    void isFoundWrongAndNotCalledSoWhereItIsRight(String wrong, String right) {
        assertThat(read(wrong, Locale.ENGLISH).contradictions()).as(wrong).isNotEmpty();
        assertThat(read(wrong, Locale.ENGLISH).statements()).as(wrong).isNotEmpty();
        assertThat(read(right, Locale.ENGLISH).contradictions()).as(right).isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Takt eins. Auf der Zwei kommen C und E als zwei Viertel. | Takt eins. Auf der Zwei kommen C und E als zwei Achtel.",
                "Nein, eine Pause gibt es in Takt eins nicht. | Nein, eine Pause gibt es in Takt zwei nicht.",
                "In Takt 2 spielst du 3 mal das A. | In Takt 2 spielst du 2 mal das A.",
                "Der vorletzte Takt steht über C. | Der vorletzte Takt steht über F.",
                "Der Schlusstakt beginnt mit einem D. | Der Schlusstakt beginnt mit einem G.",
                "Takt eins beginnt mit einem C. Gleich danach kommt eine Pause. | Takt eins beginnt mit einem C. Danach kommt eine Pause.",
                "In Takt zwei hämmerst du vom D aus auf das G. | In Takt zwei hämmerst du vom E aus auf das G."
            })
    void isFoundInGermanToo(String wrong, String right) {
        assertThat(read(wrong, Locale.GERMAN).contradictions()).as(wrong).isNotEmpty();
        assertThat(read(right, Locale.GERMAN).contradictions()).as(right).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "In bar one the C on beat two lies one string away from the E.",
                "In bar four you hold the G. We'll slap that line another time.",
                "In bar four you hold the G. My teacher would have such notes on the tenth fret.",
                "Bar three begins with a quarter that is answered by two eighths.",
                "Bar two. The chord there is not the chord of bar one. On three there is an E.",
                "It's a long one, that note on one. Bar four, the G.",
                "In bar three one of the last two notes is an E, and the other one is a C.",
            })
    void whatIsSaidOfSomethingElseIsNotCalledWrong(String said) {
        assertThat(read(said, Locale.ENGLISH).contradictions()).as(said).isEmpty();
    }

    private static Proofreading read(String said, Locale language) {
        return Proofreading.of(said, LINE, language);
    }
}
