package groundbass.script;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.score.Line;
import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Clauses with words that nobody foresaw: what can be so nowhere is contradicted, and nothing is praised for a part. */
class GistTest {
    private static final Line LINE = LineText.read("""
                    title Copper Stairs
                    key G major
                    meter 4/4
                    tempo 84

                    bar 1 over G
                    1-2  E3
                    3    A2, A5
                    4    D5

                    bar 2 over Em7
                    1    E0 slap, D2 pop
                    2    rest
                    3    A7, A5, A4
                    4    D2, D4 hammer

                    bar 3 over C
                    1    A3, Ax
                    2    E8
                    3-4  A3
                    """).line();

    @ParameterizedTest
    @ValueSource(
            strings = {
                "In bar one, dear friends, the ladder leads from G to a lovely B flat.",
                "Whistle a bit: in bar two the pop sparkles on the G string.",
                "Beat three of bar one wiggles through a triplet.",
                "Bar two gives you a rest. Somewhere on beat three, curiously, a rest.",
                "In bar three your pinky visits the tenth fret of the E string.",
                "The D in bar one, cheekily, is on the third fret of the A.",
                "In bar two the little melody wanders E, D, C.",
                "Bar three shimmers over A minor.",
                "Bar one. How many notes are there? Six.",
                "In bar two, which string is the pop on? The A string.",
                "In bar one, on the D string, sorry, the G string, beat four smiles.",
                "Bar one rushes up an octave to the fifth fret of the A string.",
                "In bar two on beat four a pull tickles the D string.",
            })
    void contradicts(String said) {
        assertThat(read(said).contradictions()).as(said).isNotEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "In bar one, dear friends, the ladder leads from G to a lovely B.",
                "Whistle a bit: in bar two the pop sparkles on the D string.",
                "Beat three of bar two wiggles through a triplet.",
                "In bar three your pinky visits the eighth fret of the E string.",
                "The D in bar one, cheekily, is on the fifth fret of the A.",
                "In bar two the little melody wanders E, D, C sharp.",
                "Bar three shimmers over C.",
                "Bar one. How many notes are there? Four.",
                "In bar two, which string is the pop on? The D string.",
                "In bar one, on the G string, sorry, the D string, beat four smiles.",
                "Bar one rushes up an octave to the fifth fret of the D string.",
                "Were bar one in A, your hand would wander to the ninth fret of the G string.",
                "Bar one does not glide to the ninth fret of the G string.",
                "Do you glide to the ninth fret of the G string in bar one?",
            })
    void callsNothingWrong(String said) {
        assertThat(read(said).contradictions()).as(said).isEmpty();
    }

    /** The first half of each is so; the second is not read, and may be wrong. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "In bar one there is a G that sparkles thrice.",
                "Bar two has a rest, which wobbles.",
            })
    void neverAgreesToAPart(String said) {
        assertThat(read(said).agreeing()).as(said).isZero();
    }

    private static Proofreading read(String said) {
        return Proofreading.of(said, LINE, Locale.ENGLISH);
    }
}
