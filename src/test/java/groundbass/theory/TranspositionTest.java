package groundbass.theory;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Roots worked out by hand on the circle of fifths; which of two names a root has in a key is common practice, no source. */
class TranspositionTest {
    @ParameterizedTest
    @CsvSource({
        "C7, 5, C, MAJOR, F7",
        "Am7, 2, C, MAJOR, Bm7",
        "D9, -5, A, MAJOR, A9",
        "A7, 1, F, MAJOR, Bb7",
        "C, 1, C, MAJOR, Db",
        "E7, 12, C, MAJOR, E7",
        "Dm7, -12, C, MAJOR, Dm7",
        "N.C., 3, C, MAJOR, N.C.",
        "C/E, 5, F, MAJOR, F/A",
        "Cm7/Eb, 2, C, MAJOR, Dm7/F",
        "C/D, 7, C, MAJOR, G/A"
    })
    void aChordMovesByAnIntervalAndIsNamedInTheKey(String chord, int semitones, String tonic, Mode mode, String moved) {
        var key = new Key(NoteName.parse(tonic).orElseThrow(), mode);
        var symbol = ChordSymbol.parse(chord).orElseThrow();
        assertThat(Transposition.of(symbol, semitones, key)).hasToString(moved);
    }
}
