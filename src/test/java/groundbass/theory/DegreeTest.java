package groundbass.theory;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DegreeTest {
    // intervals in semitones (rule: interval-sizes)
    @ParameterizedTest
    @CsvSource({
        "b2, 1", "2, 2", "b3, 3", "3, 4", "4, 5", "#4, 6", "b5, 6", "5, 7", "#5, 8", "b6, 8", "6, 9", "bb7, 9",
        "b7, 10", "7, 11", "8, 12", "9, 14", "#9, 15", "11, 17", "13, 21"
    })
    void degreesLieWhereTheirIntervalsDo(String degree, int semitones) {
        assertThat(Degree.parse(degree).semitones()).isEqualTo(semitones);
        assertThat(Degree.parse(degree)).hasToString(degree);
    }

    @Test
    void aDegreeThatWouldNeedThreeFlatsMovesToTheNextLetter() {
        // the diminished seventh of Ebb sounds nine semitones above it, on the key of B
        var name = Degree.parse("bb7").above(new NoteName(Letter.E, -2));
        assertThat(name.pitchClass()).isEqualTo((2 + 9) % 12);
        assertThat(Math.abs(name.alteration())).isLessThanOrEqualTo(2);
    }

    @Test
    void aDegreeOutsideTwoOctavesIsRefused() {
        assertThatThrownBy(() -> new Degree(14, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Degree(5, 3)).isInstanceOf(IllegalArgumentException.class);
    }
}
