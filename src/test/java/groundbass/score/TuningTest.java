package groundbass.score;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.theory.Pitch;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** rule: open-strings, twelve-frets-an-octave; MIDI note numbers, 60 = C4. */
class TuningTest {
    @ParameterizedTest
    @CsvSource({
        "1, 0, 43",
        "2, 0, 38",
        "3, 0, 33",
        "4, 0, 28", // open strings of a four-string bass
        "4, 5, 33", // the same pitch as the open third string
        "1, 12, 55",
        "1, 24, 67",
        "3, 7, 40",
        "2, 10, 48",
        "4, 12, 40" // table 1.3
    })
    void fourStringsSoundAsTheTableSays(int string, int fret, int midi) {
        assertThat(Tuning.STANDARD.midi(new Place.Fretted(string, fret))).isEqualTo(midi);
    }

    @Test
    void otherNecksSoundAsTheTableSays() {
        var dropD = Tuning.sounding("G2", "D2", "A1", "D1");
        assertThat(dropD.midi(new Place.Fretted(4, 12))).isEqualTo(38);
        assertThat(Tuning.SIX_STRING.midi(new Place.Fretted(1, 24))).isEqualTo(72);
        assertThat(Tuning.FIVE_STRING.midi(new Place.Fretted(5, 0))).isEqualTo(23);
    }

    @Test
    void aFretIsASemitoneOnEveryString() {
        // 12-TET: f(n + 1) / f(n) = 2^(1/12); fret 12 doubles the frequency (ISO 16 fixes A4 at 440 Hz)
        for (int string = 1; string <= Tuning.SIX_STRING.size(); string++) {
            double open = Pitch.hertz(Tuning.SIX_STRING.midi(new Place.Fretted(string, 0)));
            for (int fret = 0; fret <= 24; fret++) {
                double stopped = Pitch.hertz(Tuning.SIX_STRING.midi(new Place.Fretted(string, fret)));
                assertThat(stopped / open).isCloseTo(Math.pow(2, fret / 12.0), within(1e-12));
            }
        }
    }

    @Test
    void findsEveryPlaceOfAPitch() {
        assertThat(Tuning.STANDARD.placesOf(40, 20)).isEqualTo(places(4, 12, 3, 7, 2, 2));
        assertThat(Tuning.FIVE_STRING.placesOf(43, 24)).isEqualTo(places(5, 20, 4, 15, 3, 10, 2, 5, 1, 0));
        assertThat(Tuning.STANDARD.placesOf(27, 24)).isEmpty(); // below the open E
    }

    @ParameterizedTest
    @CsvSource({
        "3, 7, 52", // rule: harmonic-nodes: open A1, fret 7, sounds E3
        "1, 12, 55",
        "1, 5, 67", // open G2
        "4, 4, 56" // open E1 at fret 4 sounds G#3
    })
    void naturalHarmonicsSoundTheirPartial(int string, int fret, int midi) {
        var note = Note.plucked(Fraction.ZERO, Fraction.of(1, 4), Place.of(string, fret), Technique.FINGER)
                .withOrnaments(Ornaments.NONE.with(Harmonic.NATURAL));
        assertThat(note.midi(Tuning.STANDARD)).hasValue(midi);
    }

    @Test
    void anArtificialHarmonicAnOctaveUpSoundsAnOctaveUp() {
        // touched 12 frets above the stopped fret, half the sounding length: an octave (Mersenne's law of lengths)
        assertThat(Harmonic.touchedAt(17).semitonesAboveOpen(5)).hasValue(17);
        assertThat(Harmonic.NATURAL.semitonesAboveOpen(1)).isEmpty();
    }

    private static org.assertj.core.data.Offset<Double> within(double offset) {
        return org.assertj.core.data.Offset.offset(offset);
    }

    private static List<Place.Fretted> places(int... stringsAndFrets) {
        var places = new java.util.ArrayList<Place.Fretted>();
        for (int i = 0; i < stringsAndFrets.length; i += 2) {
            places.add(new Place.Fretted(stringsAndFrets[i], stringsAndFrets[i + 1]));
        }
        return places;
    }
}
