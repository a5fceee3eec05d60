package groundbass.theory;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.theory.ChordSymbol.Chord;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Scales, chords and degrees against what tonal 6.4.3, a theory library of another house, prints. rule: scale-degrees,
 * chord-tones.
 */
class TablesTest {
    private record Row(String kind, String what, String tonic, List<NoteName> notes) {}

    static Stream<Row> scales() {
        return rows().filter(row -> row.kind().equals("scale"));
    }

    static Stream<Row> chords() {
        return rows().filter(row -> row.kind().equals("chord"));
    }

    /** Without the few rows that need a triple sign or have no entry. */
    private static Stream<Row> rows() {
        return KeyFindingTest.rows("scales-and-chords.txt")
                .filter(text -> !text.contains("bbb") && !text.contains("###") && !text.endsWith(": "))
                .map(TablesTest::row);
    }

    private static Row row(String text) {
        var parts = text.split(": ");
        var head = parts[0].split(" ");
        var notes = Arrays.stream(parts[1].split(" "))
                .map(name -> NoteName.parse(name).orElseThrow())
                .toList();
        return new Row(head[0], head[1], head.length > 2 ? head[2] : "", notes);
    }

    @ParameterizedTest
    @MethodSource("scales")
    void scalesAreSpelledAsTheLibrarySpellsThem(Row row) {
        var tonic = NoteName.parse(row.tonic()).orElseThrow();
        assertThat(Scale.valueOf(row.what()).on(tonic)).as(row.toString()).isEqualTo(row.notes());
    }

    @ParameterizedTest
    @MethodSource("chords")
    void chordsAreSpelledAsTheLibrarySpellsThem(Row row) {
        var chord = (Chord) ChordSymbol.parse(row.what()).orElseThrow();
        assertThat(chord.tones()).as(row.toString()).containsExactlyInAnyOrderElementsOf(row.notes());
        for (var tone : row.notes()) {
            assertThat(chord.degree(tone.pitchClass()).orElseThrow().above(chord.root()))
                    .isEqualTo(tone);
        }
    }

    @ParameterizedTest
    @MethodSource("scales")
    void aNoteHasTheDegreeThatItsScaleGivesIt(Row row) {
        var tonic = NoteName.parse(row.tonic()).orElseThrow();
        var degrees = row.notes().stream()
                .map(name -> Degree.of(tonic, name).orElseThrow())
                .toList();
        assertThat(degrees).isEqualTo(Scale.valueOf(row.what()).degrees());
    }

    /** rule: interval-sizes. */
    @ParameterizedTest
    @CsvSource({
        "C3, D3, 2, MAJOR", "C3, Eb3, 3, MINOR", "C3, E3, 3, MAJOR", "C3, F3, 4, PERFECT", "C3, F#3, 4, AUGMENTED",
        "C3, Gb3, 5, DIMINISHED", "C3, G3, 5, PERFECT", "C3, Ab3, 6, MINOR", "C3, A3, 6, MAJOR", "C3, Bb3, 7, MINOR",
        "C3, Bbb3, 7, DIMINISHED", "C3, C4, 8, PERFECT", "C3, E4, 10, MAJOR", "G3, C3, 5, PERFECT", "B2, C3, 2, MINOR"
    })
    void intervalsHaveTheirNames(String one, String other, int number, Interval.Kind kind) {
        var interval = Interval.between(pitch(one), pitch(other));
        assertThat(interval.number()).isEqualTo(number);
        assertThat(interval.kind()).contains(kind);
    }

    /** Thirds and sevenths tell a chord (theory handbooks, from memory). */
    @ParameterizedTest
    @CsvSource({"C7, 3 b7", "Am7, b3 b7", "Gmaj7, 3 7", "F6, 3 6", "D7sus4, 4 b7", "Bdim7, b3 bb7", "C, 3", "C5, ''"})
    void guideTonesAreThirdAndSeventh(String symbol, String degrees) {
        var chord = (Chord) ChordSymbol.parse(symbol).orElseThrow();
        assertThat(String.join(
                        " ", chord.guideTones().stream().map(Degree::toString).toList()))
                .isEqualTo(degrees);
    }

    static Pitch pitch(String text) {
        int last = text.length() - 1;
        return new Pitch(NoteName.parse(text.substring(0, last)).orElseThrow(), Character.digit(text.charAt(last), 10));
    }
}
