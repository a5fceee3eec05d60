package groundbass.theory;

import static groundbass.theory.KeyTest.allNames;
import static groundbass.theory.KeyTest.key;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.theory.ChordSymbol.Chord;
import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpellingTest {
    // rule: scale-degrees, outside-notes: scales that leave their key
    @ParameterizedTest
    @CsvSource({
        "E, MINOR, 40 43 45 46 47 50, E G A Bb B D",
        "C, MINOR, 36 39 41 42 43 46, C Eb F Gb G Bb",
        "C#, MINOR, 37 39 40 42 44 45 48, C# D# E F# G# A B#",
        "A, MINOR, 45 47 48 50 52 53 56, A B C D E F G#",
        "C, MINOR, 36 38 39 41 43 45 47, C D Eb F G A B",
        "A, MINOR, 45 48 50 52 55, A C D E G",
        "C, MAJOR, 36 39 41 42 43 46, C Eb F F# G Bb"
    })
    void scalesThatLeaveTheKeyKeepTheirDegrees(String tonic, Mode mode, String midi, String names) {
        assertThat(spelled(key(tonic, mode), midi)).isEqualTo(names);
    }

    // rule: outside-notes: sharps up, flats down, with b3 and b7 flat both ways
    @Test
    void chromaticNotesRiseAsSharpsAndFallAsFlats() {
        var c = key("C", Mode.MAJOR);
        assertThat(spelled(c, "36 37 38 41 42 43 44 45")).isEqualTo("C C# D F F# G G# A");
        assertThat(spelled(c, "45 44 43 42 41 38 37 36")).isEqualTo("A Ab G Gb F D Db C");
    }

    // the leading note belongs to the minor scale whatever follows it (rule: outside-notes)
    @Test
    void theLeadingNoteOfAMinorKeyIsRaisedEvenWhereTheLineFalls() {
        assertThat(spelled(key("A", Mode.MINOR), "44 40")).isEqualTo("G# E");
        assertThat(spelled(key("D", Mode.DORIAN), "49 45")).isEqualTo("C# A");
    }

    // an approach from a semitone below is a raised degree (common practice, no source)
    @Test
    void theApproachToTheFifthOfAMajorKeyIsARaisedFourth() {
        assertThat(spelled(key("A", Mode.MIXOLYDIAN), "38 39 40")).isEqualTo("D D# E");
    }

    // nobody writes C flat between C and B flat of F major (common practice, no source)
    @Test
    void aNaturalNoteIsNotHiddenBehindASignInAMajorKey() {
        assertThat(spelled(key("F", Mode.MAJOR), "48 47 46")).isEqualTo("C B Bb");
        assertThat(spelled(key("E", Mode.MAJOR), "47 48 49")).isEqualTo("B C C#");
    }

    // a bass line in E minor walks E F F sharp G, never over E sharp (common practice, no source)
    @Test
    void aNaturalNoteIsNotHiddenBehindASignInAMinorKey() {
        assertThat(spelled(key("E", Mode.MINOR), "40 41 42")).isEqualTo("E F F#");
        assertThat(spelled(key("E", Mode.DORIAN), "47 48 49")).isEqualTo("B C C#");
        assertThat(spelled(key("F#", Mode.MINOR), "40 41 42")).isEqualTo("E E# F#");
    }

    @Test
    void everyPitchIsSpelledAsItSoundsInEveryKeyBothWays() {
        for (var mode : Mode.values()) {
            for (var tonic : allNames()) {
                if (!Key.isWritable(tonic, mode)) {
                    continue;
                }
                var key = new Key(tonic, mode);
                for (int midi = 12; midi < 84; midi++) {
                    assertThat(Spelling.of(key, midi, midi + 1).midi()).isEqualTo(midi);
                    assertThat(Spelling.of(key, midi, midi - 1).midi()).isEqualTo(midi);
                    assertThat(Spelling.of(key, midi).midi()).isEqualTo(midi);
                }
            }
        }
    }

    private static String spelled(Key key, String midiNumbers) {
        int[] midi = Arrays.stream(midiNumbers.split(" "))
                .mapToInt(Integer::parseInt)
                .toArray();
        return IntStream.range(0, midi.length)
                .mapToObj(i -> Spelling.of(key, midi[i], midi[Math.min(i + 1, midi.length - 1)]))
                .map(pitch -> pitch.name().toString())
                .collect(Collectors.joining(" "));
    }

    /** rule: chord-tone-names. */
    @ParameterizedTest
    @CsvSource({
        "E7,    8,  G#",
        "Cm7,   3,  Eb",
        "Cm7b5, 6,  Gb",
        "Bdim7, 8,  Ab",
        "C+,    8,  G#",
        "C/Bb,  10, Bb",
        "C,     1,  ''",
        "C/Bb,  1,  ''"
    })
    void aChordNamesItsTonesAndItsBass(String symbol, int pitchClass, String name) {
        assertThat(text(Spelling.inChord(chord(symbol), pitchClass))).isEqualTo(name);
    }

    /** Ninth, eleventh and thirteenth lie two, five and nine semitones above the root (rule: chord-tone-names). */
    @ParameterizedTest
    @CsvSource({
        "C, C7,   2,  D",
        "C, C7,   5,  F",
        "C, C7,   9,  A",
        "C, C7,   1,  ''",
        "E, G#m7, 10, A#",
        "C, B7,   1,  C#",
        "C, D#m7, 0,  ''"
    })
    void tensionsAreNamedAboveTheRootWhereTheNameIsReadEasily(
            String tonic, String symbol, int pitchClass, String name) {
        assertThat(text(Spelling.asTension(key(tonic, Mode.MAJOR), chord(symbol), pitchClass)))
                .isEqualTo(name);
    }

    /** b9, #11 and b13 above a chord with its fifth; without one, the tritone is a lowered fifth (from memory). */
    @ParameterizedTest
    @CsvSource({"C7, 1, Db", "C7, 6, F#", "C7, 8, Ab", "C7, 3, Eb", "Cdim7, 8, Ab", "Cm7b5, 6, Gb", "Ab7, 2, D"})
    void alterationsAreLoweredButForTheRaisedFourth(String symbol, int pitchClass, String name) {
        assertThat(text(Spelling.asAlteration(key("C", Mode.MAJOR), chord(symbol), pitchClass)))
                .isEqualTo(name);
    }

    @Test
    void noPitchHasMoreThanTwoNamesAndTheNaturalIsOneOfThem() {
        for (int pitchClass = 0; pitchClass < 12; pitchClass++) {
            var choices = Spelling.choices(key("C", Mode.MAJOR), pitchClass);
            int wanted = pitchClass;
            assertThat(choices).isNotEmpty().hasSizeLessThanOrEqualTo(2).allSatisfy(name -> assertThat(
                            name.pitchClass())
                    .isEqualTo(wanted));
        }
        assertThat(Spelling.choices(key("C", Mode.MAJOR), 1).stream().map(NoteName::toString))
                .containsExactlyInAnyOrder("C#", "Db");
    }

    private static Chord chord(String symbol) {
        return (Chord) ChordSymbol.parse(symbol).orElseThrow();
    }

    private static String text(Optional<NoteName> name) {
        return name.map(NoteName::toString).orElse("");
    }
}
