package groundbass.theory;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.text.Messages;
import groundbass.theory.ChordSymbol.Chord;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Names of runs, chords and approaches. rule: scale-degrees, shell-voicings, approach-notes. */
class NamesTest {
    private static final Messages ENGLISH = Messages.of(Locale.ENGLISH);
    private static final Messages GERMAN = Messages.of(Locale.GERMAN);

    private static List<Pitch> pitches(String text) {
        return Arrays.stream(text.split(" ")).map(TablesTest::pitch).toList();
    }

    private static Optional<Chord> chord(String symbol) {
        return Optional.ofNullable(symbol).flatMap(ChordSymbol::parse).map(Chord.class::cast);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "A dorian | | A1 B1 C2 D2              | up A Dorian",
                "A dorian | | E2 D2 C2 B1 A1           | down A Dorian",
                "Bb major | | Bb1 C2 D2 Eb2            | up B flat major",
                "A minor | | A1 C2 D2 E2 G2            | up the A minor pentatonic",
                "A minor | | E2 Eb2 D2 C2 A1           | down the A blues scale",
                "A minor | Am7 | A1 C2 E2 G2           | up through the notes of Am7",
                "C major | G7 | F2 D2 B1               | down through the notes of G7",
                "C major | | B1 C2 C#2 D2              | up by semitones from B",
                "A minor | | E2 F2 G#2 A2              | up A harmonic minor",
            })
    void runsHaveNames(String key, String symbol, String notes, String name) {
        var fragment = Fragment.of(KeyFindingTest.key(key), chord(symbol), pitches(notes));
        assertThat(fragment.map(Fragment::said).map(ENGLISH::say)).contains(name);
        assertThat(GERMAN.say(fragment.orElseThrow().said())).isNotBlank();
    }

    @ParameterizedTest
    @CsvSource({"A1 B1 A1 B1", "A1 B1 C2", "A1 C2 B1 D2", "A1 E2 B2 F#3", "A1 A1 A1 A1"})
    void whatTurnsLeapsOrIsTooShortHasNone(String notes) {
        assertThat(Fragment.of(KeyFindingTest.key("A dorian"), Optional.empty(), pitches(notes)))
                .isEmpty();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "C2 E2 Bb2   | C7    | SHELL          | C7   | 1 3 b7",
                "C2 Bb2 E3   |       | SHELL          | C7   | 1 b7 3",
                "C2 G2 C3    |       | POWER          | C5   | 1 5 1",
                "G1 B2       | G7    | TENTH          | G7   | 1 3",
                "E2 Bb2      | C9    | GUIDE_TONES    | C9   | 3 b7",
                "E2 G2 C3    |       | INVERSION      | C    | 3 5 1",
                "A1 C2 E2 G2 |       | ROOT_POSITION  | Am7  | 1 b3 5 b7",
                "E2 E3       | Em    | OCTAVE         | Em   | 1 1",
            })
    void chordsHaveNames(String notes, String over, NamedVoicing.Shape shape, String name, String degrees) {
        var voicing = NamedVoicing.of(pitches(notes), chord(over)).orElseThrow();
        assertThat(voicing.shape()).isEqualTo(shape);
        assertThat(voicing.chord()).hasToString(name);
        assertThat(String.join(
                        " ", voicing.tones().stream().map(Degree::toString).toList()))
                .isEqualTo(degrees);
        assertThat(GERMAN.say(voicing.said())).isNotBlank();
    }

    @ParameterizedTest
    @CsvSource({
        "C major, C#2, D2, CHROMATIC_FROM_BELOW",
        "C major, Eb2, D2, CHROMATIC_FROM_ABOVE",
        "C major, B1, C2, SCALE_FROM_BELOW",
        "C major, D2, C2, SCALE_FROM_ABOVE",
        "C major, G1, C2, FROM_FIFTH",
        "C major, G2, C2, FROM_FIFTH"
    })
    void notesApproachOthers(String key, String note, String target, Approach approach) {
        assertThat(Approach.of(
                        KeyFindingTest.key(key),
                        TablesTest.pitch(note).midi(),
                        TablesTest.pitch(target).midi()))
                .contains(approach);
        assertThat(GERMAN.has(approach.messageKey())).isTrue();
    }

    @Test
    void aLeapIsNoApproach() {
        assertThat(Approach.of(KeyFindingTest.key("C major"), 36, 40)).isEmpty();
    }

    @Test
    void everyScaleIsNamedInBothLanguages() {
        var name = NoteName.parse("Bb").orElseThrow();
        for (var scale : Scale.values()) {
            assertThat(ENGLISH.say(scale.saidOn(name))).contains("B flat");
            assertThat(GERMAN.say(scale.saidOn(name))).contains("B");
        }
        assertThat(GERMAN.say(NoteName.parse("B").orElseThrow().spoken())).isEqualTo("H");
    }
}
