package groundbass.groove;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.theory.ChordSymbol;
import groundbass.theory.ChordSymbol.Chord;
import groundbass.theory.Letter;
import groundbass.theory.NoteName;
import groundbass.theory.Quality;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

/** rule: chord-tones. */
class VoicingTest {
    private static Voicing of(String symbol) {
        return led(symbol).get(0);
    }

    private static List<Voicing> led(String... symbols) {
        return VoiceLeading.of(Arrays.stream(symbols)
                .map(symbol -> ChordSymbol.parse(symbol).orElseThrow())
                .toList());
    }

    private static int movement(List<Voicing> voicings) {
        return IntStream.range(1, voicings.size())
                .map(i -> voicings.get(i).movement(voicings.get(i - 1)))
                .sum();
    }

    private static Set<Integer> classes(Voicing voicing) {
        return voicing.midi().stream().map(midi -> midi % 12).collect(Collectors.toCollection(TreeSet::new));
    }

    @Test
    void aSeventhChordHasItsFourTones() {
        assertThat(classes(of("C7"))).containsExactly(0, 4, 7, 10);
        assertThat(classes(of("Cm7b5"))).containsExactly(0, 3, 6, 10);
    }

    @Test
    void aNinthLeavesItsRootToTheBass() {
        assertThat(classes(of("C9"))).containsExactly(2, 4, 7, 10);
        assertThat(classes(of("C7#9"))).containsExactly(3, 4, 7, 10);
    }

    @Test
    void noChordIsSilent() {
        assertThat(of("N.C.").midi()).isEmpty();
    }

    @Test
    void aTurnaroundMovesByStep() {
        // C to Am shares two tones, the third moves a whole tone: 2 semitones there and back
        assertThat(movement(led("C", "Am"))).isLessThanOrEqualTo(4);
        // Dm7 to G7: D and F stay, C to B, A to G: 3 semitones there and back
        assertThat(movement(led("Dm7", "G7"))).isLessThanOrEqualTo(6);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Dm7 G7 Cmaj7 A7",
                "Em7 A7 Gmaj7 Bm7",
                "F6 D7 Gm7 C7 F7",
                "C Am F G",
                "Am7 D9 Gmaj7 Cmaj7 F#m7b5 B7",
                "Bb7 Eb7 Bb7 G7 Cm7"
            })
    void allVoicesTogetherMoveAsLittleAsTheyCan(String progression) {
        // every combination of positions, tried one by one
        var symbols = progression.split(" ");
        assertThat(movement(led(symbols))).isEqualTo(leastOf(symbols, 0, Optional.empty()));
    }

    private static int leastOf(String[] symbols, int index, Optional<Voicing> before) {
        if (index == symbols.length) {
            return 0;
        }
        return Voicing.positions(ChordSymbol.parse(symbols[index]).orElseThrow()).stream()
                .mapToInt(position ->
                        before.map(position::movement).orElse(0) + leastOf(symbols, index + 1, Optional.of(position)))
                .min()
                .orElseThrow();
    }

    @Test
    void everyPositionOfAChordIsTried() {
        // rule: open-voicings. C with its lowest tone from D3 to C4: on E, G and C
        assertThat(Voicing.positions(ChordSymbol.parse("C").orElseThrow()))
                .extracting(voicing -> voicing.midi().get(0))
                .containsExactly(52, 55, 60);
    }

    @Test
    void noMinorSecondLiesAtTheBottom() {
        // rule: open-voicings
        for (var quality : Quality.values()) {
            for (var voicing : Voicing.positions(Chord.of(NoteName.of(Letter.C), quality))) {
                assertThat(voicing.midi().get(1) - voicing.midi().get(0)).isGreaterThan(1);
            }
        }
        // C E G with the E an octave higher: C4 G4 E5
        assertThat(Voicing.positions(ChordSymbol.parse("C").orElseThrow())
                        .get(2)
                        .midi())
                .containsExactly(60, 67, 76);
    }

    @Test
    void silenceFreesTheHand() {
        assertThat(led("C", "N.C.", "C")).hasSize(3);
        assertThat(led("C", "N.C.", "C").get(1).midi()).isEmpty();
    }

    @ParameterizedTest
    @EnumSource(Quality.class)
    void everyChordLiesInTheMiddleOfTheKeyboard(Quality quality) {
        for (var letter : Letter.values()) {
            var voicing = VoiceLeading.of(List.of(Chord.of(NoteName.of(letter), quality)))
                    .get(0);
            assertThat(voicing.midi()).hasSizeBetween(2, 4).isSorted();
            assertThat(voicing.midi()).isNotEmpty().allMatch(midi -> midi >= 50 && midi <= 80);
        }
    }
}
