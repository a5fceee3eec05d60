package groundbass.theory;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NoteNameTest {
    /** The line of fifths, as it is written in handbooks of theory: from Fbb over C, the origin, to B##. */
    private static final String LINE = "Fbb Cbb Gbb Dbb Abb Ebb Bbb Fb Cb Gb Db Ab Eb Bb F C G D A E B "
            + "F# C# G# D# A# E# B# F## C## G## D## A## E## B##";

    @ParameterizedTest
    @CsvSource({"C, 0", "G, 1", "F, -1", "B, 5", "F#, 6", "Bb, -2", "B##, 19", "Fbb, -15"})
    void aNameHasItsPlaceOnTheLineOfFifths(String name, int fifths) {
        assertThat(NoteName.parse(name).orElseThrow().fifths()).isEqualTo(fifths);
        assertThat(NoteName.ofFifths(fifths)).hasToString(name);
        assertThat(Arrays.asList(LINE.split(" ")).indexOf(name) - 15).isEqualTo(fifths);
    }
}
