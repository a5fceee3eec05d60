package groundbass.theory;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.theory.ChordSymbol.Chord;
import groundbass.theory.NamedVoicing.Shape;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The names of layouts are common practice, no source; a shell is {@code rule: shell-voicings}. */
class NamedVoicingTest {
    @ParameterizedTest
    @CsvSource({
        "A7, A1 A2,     OCTAVE,        1 1",
        "A7, A1 E2,     POWER,         1 5",
        "A7, A1 E2 A2,  POWER,         1 5 1",
        "A7, A1 C#3,    TENTH,         1 3",
        "A7, A1 C#2,    PAIR,          1 3",
        "A7, A1 G2,     PAIR,          1 b7",
        "A7, E2 A2,     PAIR,          5 1",
        "C7, C2 E2 Bb2, SHELL,         1 3 b7",
        "C9, E2 Bb2,    GUIDE_TONES,   3 b7",
        "C9, Bb1 E2,    GUIDE_TONES,   b7 3",
        "Am, A1 C2 E2,  ROOT_POSITION, 1 b3 5",
        "Am, C2 E2 A2,  INVERSION,     b3 5 1",
        "A7, C#2 E2,    PAIR,          3 5"
    })
    void tonesOfTheChordOverThemAreNamedByIt(String chord, String notes, Shape shape, String tones) {
        var voicing = voicing(notes, Optional.of(chord(chord))).orElseThrow();
        assertThat(voicing.chord()).isEqualTo(chord(chord));
        assertThat(voicing.shape()).isEqualTo(shape);
        assertThat(voicing.tones().stream().map(Degree::toString).collect(Collectors.joining(" ")))
                .isEqualTo(tones);
    }

    /** A sixth chord and a minor seventh share their notes: the lowest decides (theory handbooks, from memory). */
    @ParameterizedTest
    @CsvSource({
        "C2 E2 G2,     C,     ROOT_POSITION",
        "E2 G2 C3,     C,     INVERSION",
        "G2 C3 E3,     C,     INVERSION",
        "C2 E2 G2 A2,  C6,    ROOT_POSITION",
        "A1 C2 E2 G2,  Am7,   ROOT_POSITION",
        "B1 D2 F2 A2,  Bm7b5, ROOT_POSITION",
        "C2 E2 Bb2,    C7,    SHELL",
        "A1 E2,        A5,    POWER",
        "A1 C2 Eb2,    Adim,  ROOT_POSITION",
        "C2 E2 G#2,    Caug,  ROOT_POSITION"
    })
    void notesWithoutAChordAreNamedAsTheOneWithFewestMissing(String notes, String chord, Shape shape) {
        var voicing = voicing(notes, Optional.empty()).orElseThrow();
        assertThat(voicing.chord().quality()).isEqualTo(chord(chord).quality());
        assertThat(voicing.chord().root()).isEqualTo(chord(chord).root());
        assertThat(voicing.shape()).isEqualTo(shape);
    }

    @Test
    void notesOutsideTheChordOverThemAreNamedByThemselves() {
        var voicing = voicing("D2 F#2 A2", Optional.of(chord("C7"))).orElseThrow();
        assertThat(voicing.chord().root()).isEqualTo(NoteName.parse("D").orElseThrow());
        assertThat(voicing.shape()).isEqualTo(Shape.ROOT_POSITION);
    }

    @Test
    void whatNoChordHoldsHasNoName() {
        assertThat(voicing("C2 C#2 D2", Optional.empty())).isEmpty();
        assertThat(voicing("C2", Optional.of(chord("C7")))).isEmpty();
    }

    /** Only an ordinary fifth may be left out: without its third or with its altered fifth gone a chord is another. */
    @Test
    void aChordIsNotGuessedWithoutItsThirdOrItsAlteredFifth() {
        assertThat(voicing("B1 A2", Optional.empty())).isEmpty();
        assertThat(voicing("A1 C2 G2", Optional.empty()).orElseThrow().chord().quality())
                .isEqualTo(chord("Am7").quality());
    }

    private static Optional<NamedVoicing> voicing(String notes, Optional<Chord> over) {
        List<Pitch> pitches =
                Arrays.stream(notes.split(" ")).map(TablesTest::pitch).toList();
        return NamedVoicing.of(pitches, over);
    }

    private static Chord chord(String symbol) {
        return (Chord) ChordSymbol.parse(symbol).orElseThrow();
    }
}
