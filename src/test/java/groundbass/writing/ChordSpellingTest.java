package groundbass.writing;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.score.Bar;
import groundbass.score.ChordAt;
import groundbass.score.Fraction;
import groundbass.score.Header;
import groundbass.score.Line;
import groundbass.score.Meter;
import groundbass.score.Note;
import groundbass.score.Place;
import groundbass.score.Technique;
import groundbass.theory.ChordSymbol;
import groundbass.theory.Key;
import groundbass.theory.Letter;
import groundbass.theory.Mode;
import groundbass.theory.NoteName;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * A note is named by its chord first (rule: chord-tone-names), outside the chord by where it goes (rule: outside-notes).
 */
class ChordSpellingTest {
    /** Chord formulas of theory handbooks, by steps above the root. */
    private static final Map<String, String> FORMULAS = formulas("""
            :1 3 5
            m:1 b3 5
            dim:1 b3 b5
            aug:1 3 #5
            5:1 5
            sus2:1 2 5
            sus4:1 4 5
            add9:1 3 5 9
            madd9:1 b3 5 9
            6:1 3 5 6
            m6:1 b3 5 6
            69:1 3 5 6 9
            m69:1 b3 5 6 9
            7:1 3 5 b7
            maj7:1 3 5 7
            m7:1 b3 5 b7
            mmaj7:1 b3 5 7
            m7b5:1 b3 b5 b7
            dim7:1 b3 b5 bb7
            7#5:1 3 #5 b7
            7b5:1 3 b5 b7
            7sus4:1 4 5 b7
            7b9:1 3 5 b7 b9
            7#9:1 3 5 b7 #9
            7#11:1 3 5 b7 #11
            7b13:1 3 5 b7 b13
            maj7#11:1 3 5 7 #11
            9:1 3 5 b7 9
            maj9:1 3 5 7 9
            m9:1 b3 5 b7 9
            9sus4:1 4 5 b7 9
            11:1 5 b7 9 11
            m11:1 b3 5 b7 9 11
            13:1 3 5 b7 9 13
            13sus4:1 4 5 b7 9 13
            maj13:1 3 5 7 9 13
            m13:1 b3 5 b7 9 13
            """);

    private static final int[] MAJOR_SCALE = {0, 2, 4, 5, 7, 9, 11};
    private static final String LETTERS = "CDEFGAB";

    private static Map<String, String> formulas(String table) {
        return table.lines()
                .map(row -> row.split(":"))
                .collect(Collectors.toMap(row -> row[0], row -> row[1], (a, b) -> a, TreeMap::new));
    }

    static Stream<String> qualities() {
        return FORMULAS.keySet().stream();
    }

    @Test
    void theTableKnowsEveryChordThatTheProgramKnows() {
        assertThat(groundbass.theory.Quality.values())
                .extracting(groundbass.theory.Quality::suffix)
                .containsExactlyInAnyOrderElementsOf(FORMULAS.keySet());
    }

    @ParameterizedTest
    @MethodSource("qualities")
    void everyToneOfAChordHasItsOwnLetterOnEveryRootInEveryKey(String suffix) {
        int checked = 0;
        for (var key : keys()) {
            for (String root : roots()) {
                var expected = expected(root, FORMULAS.get(suffix));
                if (expected.stream().allMatch(name -> NoteName.parse(name).isPresent())) {
                    assertThat(spelled(key, root + suffix, expected))
                            .as(root + suffix + " in " + key)
                            .isEqualTo(expected);
                    checked++;
                }
            }
        }
        assertThat(checked).isGreaterThan(300);
    }

    private static List<Key> keys() {
        return roots().stream()
                .map(name -> NoteName.parse(name).orElseThrow())
                .flatMap(name -> Stream.of(Mode.MAJOR, Mode.MINOR)
                        .filter(mode -> Key.isWritable(name, mode))
                        .map(mode -> new Key(name, mode)))
                .toList();
    }

    private static List<String> roots() {
        return Stream.of(Letter.values())
                .flatMap(letter -> Stream.of("", "b", "#").map(sign -> letter + sign))
                .toList();
    }

    /** By letters and semitones, as one learns it: the names may need more signs than there are. */
    private static List<String> expected(String root, String formula) {
        var names = new ArrayList<String>();
        int rootLetter = LETTERS.indexOf(root.charAt(0));
        int rootSigns = signs(root.substring(1));
        for (String degree : formula.split(" ")) {
            String figure = degree.replaceAll("[b#]", "");
            int steps = Integer.parseInt(figure) - 1;
            int wanted = MAJOR_SCALE[rootLetter] + rootSigns + MAJOR_SCALE[steps % 7] + signs(degree);
            int letter = (rootLetter + steps) % 7;
            int signs = Math.floorMod(wanted - MAJOR_SCALE[letter] + 6, 12) - 6;
            names.add(LETTERS.charAt(letter) + (signs < 0 ? "b" : "#").repeat(Math.abs(signs)));
        }
        return names;
    }

    private static int signs(String text) {
        return (int) (text.chars().filter(c -> c == '#').count()
                - text.chars().filter(c -> c == 'b').count());
    }

    /** The chord broken upward from its root on the lowest string. */
    private static List<String> spelled(Key key, String chord, List<String> tones) {
        var places = tones.stream()
                .map(name -> NoteName.parse(name).orElseThrow().pitchClass())
                .map(pitchClass -> Place.of(4, Math.floorMod(pitchClass - 4, 12)))
                .toList();
        var eighth = Fraction.of(1, 8);
        var notes = IntStream.range(0, places.size())
                .mapToObj(i -> Note.plucked(eighth.times(i), eighth, places.get(i), Technique.FINGER))
                .toList();
        var bar = Bar.of(Meter.COMMON, notes)
                .withChords(List.of(
                        new ChordAt(Fraction.ZERO, ChordSymbol.parse(chord).orElseThrow())));
        return names(new Line(Header.PLAIN.with(key), List.of(bar))).get(0);
    }

    private static List<List<String>> names(Line line) {
        return Spellings.of(line).stream()
                .map(bar -> bar.stream()
                        .map(spelled -> spelled.pitch().name().toString())
                        .toList())
                .toList();
    }

    private static String names(String text) {
        var reading = LineText.read(text);
        assertThat(reading.problems()).isEmpty();
        return names(reading.line()).stream().map(bar -> String.join(" ", bar)).collect(Collectors.joining(" | "));
    }

    private static String oneBar(String key, String chord, String beats) {
        String over = chord.isEmpty() ? "" : " over " + chord;
        return names("title T\nkey " + key + "\nbar 1" + over + "\n" + beats.replace("; ", "\n") + "\n");
    }

    // the tones of D7, B7, E7 and A7 as any table of chords has them
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "C major; D7; D7, D4, A5, A3; A F# D C",
                "C major; B7; A6, A2, E2, D1; D# B F# D#",
                "C major; E7; A2, E4, E0, D0; B G# E D",
                "F major; A7/C#; A7, A4, E5, D11; E C# A C#",
                "E minor; B7; D1, A2, D4, G2; D# B F# A"
            })
    void aChordToneIsSpelledByItsChordWhereverTheLineGoes(String key, String chord, String notes, String names) {
        assertThat(oneBar(key, chord, "1-4 " + notes)).isEqualTo(names);
    }

    // a ninth, eleventh or thirteenth is a step of the chord too: F sharp over A7 and over E7
    @Test
    void theTensionsOfAChordAreItsOwnSteps() {
        assertThat(oneBar("C major", "E7", "1-4 E0, E2, E0, A2")).isEqualTo("E F# E B");
        assertThat(oneBar("C major", "A7", "1-4 A0, E2, A4, E0")).isEqualTo("A F# C# E");
        assertThat(oneBar("Eb major", "B7", "1-4 A2, A6, E4, A2")).isEqualTo("B D# G# B");
    }

    // rule: outside-notes; F sharp over an octave down to G
    @Test
    void aSemitoneIsAStepInWhateverOctave() {
        assertThat(oneBar("C major", "", "1-4 D4, E3, D4, E1")).isEqualTo("F# G Gb F");
        assertThat(oneBar("C major", "", "1-4 E4, D7, E4, D5")).startsWith("G# A");
    }

    // rule: one-name-in-a-bar; a leap leaves a note standing
    @Test
    void aPitchClassHasOneNameInABarUnlessTheDirectionTurns() {
        assertThat(oneBar("D minor", "Gm", "1-3 A5, A6, D3, A5, A6, A5; 4 D0")).isEqualTo("D Eb F D Eb D D");
        assertThat(oneBar("C major", "", "1-4 A5, A4, A5, E4, E3, E4, E5, E3")).isEqualTo("D C# D Ab G G# A G");
    }

    // rule: outside-notes; into the root of a new chord the tritone of a minor key is its leading note, else the blue
    // note
    @Test
    void aLeadingNoteIsRaisedWhereTheBlueNoteIsFlat() {
        var line = LineText.read("title T\nkey E dorian\nbar 1 over A7\n1-4 A0, E5, E5, E6\nbar 2 over Bm7\n1-4 E7\n"
                        + "bar 3 over Em7\n1-4 E5, E6, E7, E6\n")
                .line();
        var names = Spellings.of(line).stream()
                .map(bar ->
                        bar.stream().map(each -> each.pitch().name().toString()).toList())
                .toList();
        assertThat(names.get(0)).containsExactly("A", "A", "A", "A#");
        assertThat(names.get(2)).containsExactly("A", "Bb", "B", "Bb");
    }

    // rule: double-stop-names
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "Ab major; Ab; 1-4 D5+G4; G B",
                "C major; ; 1-4 A4+D2; C# E",
                "C major; ; 1-4 A3+D1; C Eb",
                "C major; ; 1-4 A6+D5; Eb G"
            })
    void aDoubleStopIsSpelledAsTheIntervalThatItIs(String key, String chord, String beats, String names) {
        assertThat(oneBar(key, chord == null ? "" : chord, beats)).isEqualTo(names);
    }

    // nobody writes B double flat between A flat and B flat (common practice, no source)
    @Test
    void aRisingChromaticStepNeedsNoDoubleFlat() {
        assertThat(oneBar("Ab major", "", "1-4 E4, E5, E6, E6")).isEqualTo("Ab A Bb Bb");
    }

    @Test
    void theWritersOwnNameStillRules() {
        assertThat(oneBar("C major", "D7", "1-4 D7, D4 as Gb, A5, A3")).isEqualTo("A Gb D C");
    }

    // a grace note is named like any other: on its way to its note
    @Test
    void aGraceNoteIsNamedByWhereItGoes() {
        var line = LineText.read("title T\nkey C major\nbar 1\n1-4 A7 hammer from 6, A7 pull from 8\n")
                .line();
        assertThat(Spellings.of(line).get(0))
                .extracting(each -> each.grace().orElseThrow().name().toString())
                .containsExactly("D#", "F");
    }
}
