package groundbass.theory;

import static groundbass.theory.KeyTest.allNames;
import static groundbass.theory.KeyTest.names;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.Place;
import groundbass.score.Tuning;
import groundbass.theory.ChordSymbol.Chord;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ChordSymbolTest {
    // rule: chord-tones
    @ParameterizedTest
    @CsvSource({
        "C, C E G, 0 4 7",
        "Cm, C Eb G, 0 3 7",
        "Cdim, C Eb Gb, 0 3 6",
        "Caug, C E G#, 0 4 8",
        "Csus4, C F G, 0 5 7",
        "C6, C E G A, 0 4 7 9",
        "C7, C E G Bb, 0 4 7 10",
        "Cmaj7, C E G B, 0 4 7 11",
        "Cm7, C Eb G Bb, 0 3 7 10",
        "Cm7b5, C Eb Gb Bb, 0 3 6 10",
        "Cdim7, C Eb Gb Bbb, 0 3 6 9",
        "CmMaj7, C Eb G B, 0 3 7 11",
        "C9, C E G Bb D, 0 4 7 10 14",
        "C7#9, C E G Bb D#, 0 4 7 10 15",
        "Bb7, Bb D F Ab, 0 4 7 10",
        "Dm7, D F A C, 0 3 7 10",
        "G7, G B D F, 0 4 7 10",
        "F#m7, F# A C# E, 0 3 7 10",
        "Ebmaj7, Eb G Bb D, 0 4 7 11"
    })
    void chordsHaveTheirTones(String symbol, String tones, String semitones) {
        var chord = (Chord) parsed(symbol);
        assertThat(names(chord.tones())).isEqualTo(tones);
        assertThat(chord.quality().degrees().stream()
                        .map(degree -> String.valueOf(degree.semitones()))
                        .collect(Collectors.joining(" ")))
                .isEqualTo(semitones);
    }

    // rule: shell-voicings: C7, root on the A string: A string fret 3, D string fret 2, G string fret 3 = C2 E2 Bb2
    @Test
    void theShellOfC7LiesOnItsTones() {
        var midi = Stream.of(Place.of(3, 3), Place.of(2, 2), Place.of(1, 3))
                .map(place -> Tuning.STANDARD.midi((Place.Fretted) place))
                .toList();
        assertThat(midi).containsExactly(36, 40, 46);
        var tones = parsed("C7").tones().stream().map(NoteName::pitchClass).toList();
        assertThat(tones).containsAll(midi.stream().map(each -> each % 12).toList());
    }

    @Test
    void everyChordReadsBackAsItIsPrinted() {
        List<Optional<NoteName>> basses = new ArrayList<>();
        basses.add(Optional.empty());
        allNames().forEach(name -> basses.add(Optional.of(name)));
        for (var root : allNames()) {
            for (var quality : Quality.values()) {
                for (var bass : basses) {
                    var chord = new Chord(root, quality, bass);
                    assertThat(ChordSymbol.parse(chord.toString())).contains(chord);
                }
            }
        }
    }

    @Test
    void noTwoQualitiesAreWrittenAlike() {
        var suffixes = Stream.of(Quality.values()).map(Quality::suffix).toList();
        assertThat(suffixes).doesNotHaveDuplicates();
    }

    @Test
    void everyToneSoundsItsDegree() {
        for (var root : allNames()) {
            for (var quality : Quality.values()) {
                var tones = Chord.of(root, quality).tones();
                for (int i = 0; i < tones.size(); i++) {
                    int semitones = quality.degrees().get(i).semitones();
                    assertThat(tones.get(i).pitchClass())
                            .as(root + quality.suffix())
                            .isEqualTo((root.pitchClass() + semitones) % 12);
                }
            }
        }
    }

    // the other ways in which players write a chord (common practice, no source)
    @ParameterizedTest
    @CsvSource({
        "C-7, Cm7",
        "Cmin7, Cm7",
        "CM7, Cmaj7",
        "C+, Caug",
        "C°7, Cdim7",
        "Cø, Cm7b5",
        "C6/9, C69",
        "C7sus, C7sus4",
        "C7(#9), C7#9",
        "C/C, C",
        "CM, C"
    })
    void usualVariantsMeanTheSameChord(String variant, String canonical) {
        assertThat(parsed(variant)).hasToString(canonical);
    }

    @Test
    void aSlashChordKeepsItsBass() {
        var chord = (Chord) parsed("Bbmaj7/D");
        assertThat(chord.bass()).contains(NoteName.of(Letter.D));
        assertThat(names(chord.tones())).isEqualTo("Bb D F A");
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "H7", "c", "C77", "C/", "/C", "C/H", "Cmaj7/", "N.C", "C ", "Bbbb", "E#b"})
    void whatIsNoChordIsNotRead(String text) {
        assertThat(ChordSymbol.parse(text)).isEmpty();
    }

    @Test
    void noChordHasNoTones() {
        assertThat(parsed("N.C.")).isEqualTo(ChordSymbol.NO_CHORD);
        assertThat(parsed("N.C.").tones()).isEmpty();
    }

    private static ChordSymbol parsed(String text) {
        return ChordSymbol.parse(text).orElseThrow();
    }
}
