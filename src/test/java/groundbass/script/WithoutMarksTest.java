package groundbass.script;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.score.Line;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Where nobody wrote a mark, clauses are cut so that most is understood, and nobody is called wrong over a cut. */
class WithoutMarksTest {
    private static final Line LINE = LineText.read("""
                    title Paper Kites
                    key C major
                    meter 4/4
                    tempo 92

                    bar 1 over C
                    1    A3
                    2    A3, D2
                    3    rest
                    4    D5

                    bar 2 over Am7
                    1    E5 slap, D7 pop
                    2    E5
                    3-4  A5

                    bar 3 over F
                    1-2  E1
                    3    A3, Ax
                    4    rest
                    """).line();

    /** A talk needs some words before it is seen that it has no marks. */
    private static final String BEFORE =
            "well hello there and welcome back my friends it is lovely that you are with me "
                    + "again on this grey morning with a warm cup of something in the hand and the cat on the chair by the fire ";

    private static List<String> wrong(String talk) {
        String spoken = BEFORE + talk;
        return Proofreading.of(spoken, LINE, Locale.ENGLISH).contradictions().stream()
                .map(statement -> spoken.substring(statement.from(), statement.to()))
                .toList();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "bar one starts on a c that is a quarter note on beat two you get the c again and then an e beat three is a rest",
                "in bar one beat three is a rest and on four there is a g",
                "bar two begins with a slap then you pop the a an octave higher on two you have the low a again",
                "in bar three you hold the f for two beats then on three comes a c and beat four is a rest",
                "bar three is over f and four's a rest",
                "in bar one is beat two a rest no it's two eighth notes"
            })
    void whatIsSoIsNotCalledWrong(String talk) {
        assertThat(wrong(talk)).isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "bar one starts on a c that is a quarter note on beat two you get a b flat and an e, b flat",
        "in bar one beat three is a quarter note on four there is a g, quarter",
        "bar two begins with a slap then on two you have a low g on three comes a d, low g",
        "in bar three you hold the f for two beats on three comes a d and beat four is a rest, d",
        "bar three is over f and four's a triplet, triplet"
    })
    void whatIsNotSoIsFoundInsideOfTheRun(String talk, String part) {
        assertThat(wrong(talk)).hasSize(1).first().asString().contains(part);
    }
}
