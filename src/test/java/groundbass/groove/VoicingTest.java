package groundbass.groove;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.theory.ChordSymbol;
import groundbass.theory.ChordSymbol.Chord;
import groundbass.theory.Letter;
import groundbass.theory.NoteName;
import groundbass.theory.Quality;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Chord tones: the table of REFERENCE 5.3. */
class VoicingTest {
    private static Voicing of(String symbol) {
        return Voicing.after(Optional.empty(), ChordSymbol.parse(symbol).orElseThrow());
    }

    private static Voicing after(Voicing before, String symbol) {
        return Voicing.after(Optional.of(before), ChordSymbol.parse(symbol).orElseThrow());
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
        var c = of("C");
        assertThat(after(c, "Am").movement(c)).isLessThanOrEqualTo(4);
        var dm7 = of("Dm7");
        // Dm7 to G7: D and F stay, C to B, A to G: 3 semitones there and back
        assertThat(after(dm7, "G7").movement(dm7)).isLessThanOrEqualTo(6);
    }

    @ParameterizedTest
    @EnumSource(Quality.class)
    void everyChordLiesInTheMiddleOfTheKeyboard(Quality quality) {
        for (var letter : Letter.values()) {
            var voicing = Voicing.after(Optional.empty(), Chord.of(NoteName.of(letter), quality));
            assertThat(voicing.midi()).hasSizeBetween(2, 4).isSorted();
            assertThat(voicing.midi()).allMatch(midi -> midi >= 52 && midi <= 76);
        }
    }
}
