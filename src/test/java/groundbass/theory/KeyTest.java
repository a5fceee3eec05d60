package groundbass.theory;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class KeyTest {
    // rule: key-signatures
    @ParameterizedTest
    @CsvSource({
        "0, C, A",
        "1, G, E",
        "2, D, B",
        "3, A, F#",
        "4, E, C#",
        "5, B, G#",
        "6, F#, D#",
        "7, C#, A#",
        "-1, F, D",
        "-2, Bb, G",
        "-3, Eb, C",
        "-4, Ab, F",
        "-5, Db, Bb",
        "-6, Gb, Eb",
        "-7, Cb, Ab"
    })
    void signaturesFollowTheCircleOfFifths(int fifths, String major, String minor) {
        assertThat(key(major, Mode.MAJOR).fifths()).isEqualTo(fifths);
        assertThat(key(minor, Mode.MINOR).fifths()).isEqualTo(fifths);
    }

    // rule: mode-signatures
    @ParameterizedTest
    @CsvSource({
        "D, DORIAN, 0",
        "E, DORIAN, 2",
        "A, MIXOLYDIAN, 2",
        "G, MIXOLYDIAN, 0",
        "F, LYDIAN, 0",
        "E, PHRYGIAN, 0",
        "B, LOCRIAN, 0"
    })
    void modesTakeTheSignatureOfTheirParentMajor(String tonic, Mode mode, int fifths) {
        assertThat(key(tonic, mode).fifths()).isEqualTo(fifths);
    }

    // order of sharps F C G D A E B, of flats B E A D G C F (rule: key-signatures)
    @Test
    void signsAppearInTheOrderOfFifths() {
        assertThat(altered(key("E", Mode.MAJOR))).isEqualTo("F# C# G# D#");
        assertThat(altered(key("Eb", Mode.MAJOR))).isEqualTo("Bb Eb Ab");
        assertThat(altered(key("C", Mode.MAJOR))).isEmpty();
        assertThat(altered(key("C#", Mode.MAJOR))).isEqualTo("F# C# G# D# A# E# B#");
        assertThat(altered(key("Cb", Mode.MAJOR))).isEqualTo("Bb Eb Ab Db Gb Cb Fb");
    }

    // rule: scale-degrees, scale-spelling: the modes on C, and scales spelled out
    @ParameterizedTest
    @CsvSource({
        "C, MAJOR, C D E F G A B", "C, DORIAN, C D Eb F G A Bb", "C, PHRYGIAN, C Db Eb F G Ab Bb",
        "C, LYDIAN, C D E F# G A B", "C, MIXOLYDIAN, C D E F G A Bb", "C, MINOR, C D Eb F G Ab Bb",
        "C, LOCRIAN, C Db Eb F Gb Ab Bb", "E, MAJOR, E F# G# A B C# D#", "Ab, MAJOR, Ab Bb C Db Eb F G",
        "F#, MAJOR, F# G# A# B C# D# E#", "Gb, MAJOR, Gb Ab Bb Cb Db Eb F", "Eb, MINOR, Eb F Gb Ab Bb Cb Db",
        "D, MIXOLYDIAN, D E F# G A B C"
    })
    void scalesAreSpelledWithEachLetterOnce(String tonic, Mode mode, String scale) {
        assertThat(names(key(tonic, mode).scale())).isEqualTo(scale);
    }

    // rule: scale-degrees, in semitones
    @ParameterizedTest
    @CsvSource({
        "MAJOR, 0 2 4 5 7 9 11",
        "DORIAN, 0 2 3 5 7 9 10",
        "PHRYGIAN, 0 1 3 5 7 8 10",
        "LYDIAN, 0 2 4 6 7 9 11",
        "MIXOLYDIAN, 0 2 4 5 7 9 10",
        "MINOR, 0 2 3 5 7 8 10",
        "LOCRIAN, 0 1 3 5 6 8 10"
    })
    void modesHaveTheirSteps(Mode mode, String steps) {
        assertThat(mode.steps().stream().map(String::valueOf).collect(Collectors.joining(" ")))
                .isEqualTo(steps);
    }

    @ParameterizedTest
    @EnumSource(Mode.class)
    void everyWritableKeySoundsItsModeAndUsesEachLetterOnce(Mode mode) {
        for (var tonic : allNames()) {
            if (!Key.isWritable(tonic, mode)) {
                continue;
            }
            var scale = new Key(tonic, mode).scale();
            assertThat(scale.stream()
                            .map(name -> Math.floorMod(name.pitchClass() - tonic.pitchClass(), 12))
                            .toList())
                    .as(tonic + " " + mode)
                    .isEqualTo(mode.steps());
            assertThat(scale.stream().map(NoteName::letter).distinct()).hasSize(7);
        }
    }

    @Test
    void aKeyOfEightSharpsIsRefused() {
        assertThatThrownBy(() -> key("G#", Mode.MAJOR)).isInstanceOf(IllegalArgumentException.class);
        assertThat(Key.isWritable(NoteName.parse("Fb").orElseThrow(), Mode.MAJOR))
                .isFalse();
    }

    @Test
    void eachModeHasFifteenSignatures() {
        var counted = new HashSet<String>();
        for (var mode : Mode.values()) {
            allNames().stream()
                    .filter(name -> Key.isWritable(name, mode))
                    .forEach(name -> counted.add(name + " " + mode));
        }
        assertThat(counted).hasSize(15 * Mode.values().length);
    }

    static Key key(String tonic, Mode mode) {
        return new Key(NoteName.parse(tonic).orElseThrow(), mode);
    }

    static List<NoteName> allNames() {
        return Arrays.stream(Letter.values())
                .flatMap(letter -> List.of(-2, -1, 0, 1, 2).stream().map(by -> new NoteName(letter, by)))
                .toList();
    }

    static String names(List<NoteName> names) {
        return names.stream().map(NoteName::toString).collect(Collectors.joining(" "));
    }

    private static String altered(Key key) {
        String order = key.fifths() >= 0 ? "FCGDAEB" : "BEADGCF";
        return order.chars()
                .mapToObj(letter -> Letter.valueOf(String.valueOf((char) letter)))
                .filter(letter -> key.alterationOf(letter) != 0)
                .map(letter -> new NoteName(letter, key.alterationOf(letter)).toString())
                .collect(Collectors.joining(" "));
    }
}
