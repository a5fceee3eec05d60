package groundbass.theory;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PitchTest {
    // rule: equal-temperament
    @ParameterizedTest
    @CsvSource({
        "A4, 69, 440.0000",
        "B0, 23, 30.8677",
        "E1, 28, 41.2034",
        "A1, 33, 55.0000",
        "D2, 38, 73.4162",
        "G2, 43, 97.9989",
        "C3, 48, 130.8128",
        "G4, 67, 391.9954"
    })
    void namesNumbersAndFrequenciesAgree(String name, int midi, double hertz) {
        var pitch = Pitch.sounding(NoteName.parse(name.substring(0, 1)).orElseThrow(), midi);
        assertThat(pitch).hasToString(name);
        assertThat(pitch.midi()).isEqualTo(midi);
        assertThat(pitch.hertz()).isCloseTo(hertz, within(0.00005));
    }

    // MIDI 1.0: middle C, C4, is 60
    @Test
    void middleCIsSixty() {
        assertThat(Pitch.of(Letter.C, 4).midi()).isEqualTo(60);
    }

    // scientific pitch notation changes its octave figure at the letter C: Cb4 is B3's key, B#3 is C4's
    @Test
    void theOctaveBelongsToTheLetter() {
        assertThat(Pitch.sounding(new NoteName(Letter.C, -1), 59)).hasToString("Cb4");
        assertThat(Pitch.sounding(new NoteName(Letter.B, 1), 60)).hasToString("B#3");
        assertThat(Pitch.sounding(new NoteName(Letter.B, 2), 61)).hasToString("B##3");
    }

    @Test
    void everyNameFindsItsOctave() {
        for (var name : KeyTest.allNames()) {
            for (int octave = 0; octave < 9; octave++) {
                var pitch = new Pitch(name, octave);
                assertThat(Pitch.sounding(name, pitch.midi())).isEqualTo(pitch);
            }
        }
    }

    @Test
    void aNameOfAnotherPitchIsRefused() {
        assertThatThrownBy(() -> Pitch.sounding(NoteName.of(Letter.C), 61))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void namesReadBackAndNothingElseIsAName() {
        for (var name : KeyTest.allNames()) {
            assertThat(NoteName.parse(name.toString())).contains(name);
        }
        for (var text : new String[] {"", "H", "b", "C#b", "C###", "Dbbb", "C 4", "É"}) {
            assertThat(NoteName.parse(text)).as(text).isEmpty();
        }
    }

    // rule: staff-positions: the bottom line of the bass clef is written G2, its middle line D3
    @Test
    void staffStepsCountLettersNotSemitones() {
        assertThat(Pitch.of(Letter.D, 3).diatonicIndex() - Pitch.of(Letter.G, 2).diatonicIndex())
                .isEqualTo(4);
        assertThat(new Pitch(new NoteName(Letter.D, -1), 3).diatonicIndex())
                .isEqualTo(Pitch.of(Letter.D, 3).diatonicIndex());
    }
}
