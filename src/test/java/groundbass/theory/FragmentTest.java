package groundbass.theory;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.theory.ChordSymbol.Chord;
import java.util.Arrays;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The scales are those of {@code TablesTest}; what counts as a run of one is common practice, no source. */
class FragmentTest {
    @ParameterizedTest
    @CsvSource({
        "A, MINOR, A1 B1 C2 D2,       MINOR,            true",
        "A, MINOR, D2 C2 B1 A1,       MINOR,            false",
        "C, MAJOR, G1 A1 B1 C2 D2,    MAJOR,            true",
        "A, MINOR, A1 C2 D2 E2 G2,    MINOR_PENTATONIC, true",
        "C, MAJOR, C2 D2 E2 G2 A2,    MAJOR_PENTATONIC, true",
        "C, MAJOR, C2 Eb2 F2 G2 Bb2,  MINOR_PENTATONIC, true",
        "A, MINOR, A1 C2 D2 Eb2 E2,   BLUES,            true",
        "A, MINOR, E2 F2 G#2 A2,      HARMONIC_MINOR,   true",
        "A, MINOR, E2 F#2 G#2 A2,     MELODIC_MINOR,    true",
        "D, DORIAN, A1 B1 C2 D2,      DORIAN,           true"
    })
    void neighboursInAScaleAreARunOfIt(String tonic, Mode mode, String notes, Scale scale, boolean rising) {
        var run = run(new Key(name(tonic), mode), Optional.empty(), notes).orElseThrow();
        assertThat(run.scale()).isEqualTo(scale);
        assertThat(run.tonic()).isEqualTo(name(tonic));
        assertThat(run.chord()).isEmpty();
        assertThat(run.rising()).isEqualTo(rising);
    }

    @ParameterizedTest
    @CsvSource({"E2 F2 F#2 G2, true", "G2 F#2 F2 E2, false"})
    void semitonesAreAChromaticRun(String notes, boolean rising) {
        var run = run(new Key(name("C"), Mode.MAJOR), Optional.empty(), notes).orElseThrow();
        assertThat(run.scale()).isEqualTo(Scale.CHROMATIC);
        assertThat(run.tonic()).isEqualTo(name(notes.substring(0, notes.indexOf('2'))));
        assertThat(run.rising()).isEqualTo(rising);
    }

    @ParameterizedTest
    @CsvSource({
        "Am,  A1 C2 E2,        true",
        "Am,  E2 C2 A1,        false",
        "Am7, C2 E2 G2 A2,     true",
        "C,   E2 G2 C3 E3 G3,  true"
    })
    void neighboursInAChordAreABrokenChord(String symbol, String notes, boolean rising) {
        var chord = Optional.of((Chord) ChordSymbol.parse(symbol).orElseThrow());
        var run = run(new Key(name("C"), Mode.MAJOR), chord, notes).orElseThrow();
        assertThat(run.chord()).isEqualTo(chord);
        assertThat(run.tonic()).isEqualTo(chord.orElseThrow().root());
        assertThat(run.rising()).isEqualTo(rising);
    }

    @ParameterizedTest
    @CsvSource({
        "'',  A1 B1 C2,       too short for a scale",
        "'',  A1 C2 E2,       a chord that nobody named",
        "Am,  A1 C2,          too short for a chord",
        "'',  A1 B1 D2 C2,    it turns at its end",
        "'',  B1 A1 B1 C2,    it turns at its beginning",
        "'',  A1 B1 B1 C2,    a note is repeated",
        "'',  A1 B1 E2 F2,    it leaps",
        "'',  A1 B2 C3 D3,    a step and an octave are no step",
        "Am,  A1 E2 A2,       a tone of the chord is passed over",
        "A5,  A1 E2 A2,       two tones are no chord to break",
        "'',  F2 G2 G#2 A#2,  no scale of the key has them all"
    })
    void anythingElseHasNoName(String symbol, String notes, String why) {
        var chord = ChordSymbol.parse(symbol).map(Chord.class::cast);
        assertThat(run(new Key(name("A"), Mode.MINOR), chord, notes)).as(why).isEmpty();
    }

    private static Optional<Fragment> run(Key key, Optional<Chord> chord, String notes) {
        return Fragment.of(
                key,
                chord,
                Arrays.stream(notes.split(" ")).map(TablesTest::pitch).toList());
    }

    private static NoteName name(String text) {
        return NoteName.parse(text).orElseThrow();
    }
}
