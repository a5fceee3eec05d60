package groundbass.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import groundbass.linetext.LineText;
import groundbass.theory.NoteName;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

/** Four strings a fourth apart (bass guitar, usual tuning): string 1 is G, string 4 is E. */
class ShiftTest {
    private static final int FRETS = 24;

    @Test
    void theShapeStaysWhereverItGoes() {
        assertThat(moved(note(Place.of(4, 5)), 1, 0)).contains(note(Place.of(3, 5)));
        assertThat(moved(note(Place.of(4, 5)), 0, -5)).contains(note(Place.of(4, 0)));
        assertThat(moved(note(Place.of(2, 5)), -2, 3)).contains(note(Place.of(4, 8)));
        assertThat(moved(note(Place.dead(4)), 1, -20)).contains(note(Place.dead(3)));
    }

    @Test
    void theNeckEnds() {
        assertThat(moved(note(Place.of(1, 5)), 1, 0)).isEmpty();
        assertThat(moved(note(Place.of(4, 5)), -1, 0)).isEmpty();
        assertThat(moved(note(Place.of(4, 1)), 0, -2)).isEmpty();
        assertThat(moved(note(Place.of(4, 23)), 0, 2)).isEmpty();
        var trilled = note(Place.of(4, 20)).withOrnaments(Ornaments.NONE.with(new Ornaments.Trill(2)));
        assertThat(moved(trilled, 0, 2)).contains(trilled.at(Place.of(4, 22)));
        assertThat(moved(trilled, 0, 3)).isEmpty();
        var bar = Bar.of(Meter.COMMON, List.of(trilled.at(Place.of(4, 23))));
        assertThatThrownBy(
                        () -> new Line(LineText.read("bar 1\n1-4 E0\n").line().header(), List.of(bar)))
                .hasMessageContaining("not on this neck");
        var graced = note(Place.of(4, 5)).with(Arrival.from(Arrival.Kind.HAMMER, 1));
        assertThat(moved(graced, 0, -2)).isEmpty();
    }

    @Test
    void graceNotesAndTouchedHarmonicsMoveAlong() {
        var graced = note(Place.of(4, 5)).with(Arrival.from(Arrival.Kind.SLIDE, 3));
        assertThat(moved(graced, 0, 2).flatMap(Note::arrival)).contains(Arrival.from(Arrival.Kind.SLIDE, 5));
        var touched = note(Place.of(4, 5)).withOrnaments(Ornaments.NONE.with(Harmonic.touchedAt(17)));
        assertThat(moved(touched, 0, 2).flatMap(note -> note.ornaments().harmonic()))
                .contains(Harmonic.touchedAt(19));
    }

    /** A natural harmonic sounds over a node of its string, which no shape moves. */
    @Test
    void aNaturalHarmonicStaysAtItsFret() {
        var natural = note(Place.of(4, 12)).withOrnaments(Ornaments.NONE.with(Harmonic.NATURAL));
        assertThat(moved(natural, 0, 2)).isEmpty();
        assertThat(moved(natural, 1, 0)).contains(natural.at(Place.of(3, 12)));
    }

    @Test
    void aChosenNameGoesWithThePitchThatItNamed() {
        var named = note(Place.of(4, 5))
                .withOrnaments(Ornaments.NONE.withSpelling(NoteName.parse("A").orElseThrow()));
        assertThat(moved(named, 0, 1).flatMap(note -> note.ornaments().spelling()))
                .isEmpty();
        assertThat(moved(named, 1, -5)).contains(named.at(Place.of(3, 0)));
    }

    @Test
    void theIntervalIsOneWhereStringsAreTunedEvenly() {
        var notes = List.of(note(Place.of(4, 5)), note(Place.of(3, 5)), note(Place.dead(1)));
        assertThat(new Shift(1, 2).semitones(notes, Tuning.STANDARD)).isEqualTo(OptionalInt.of(7));
        assertThat(new Shift(0, -3).semitones(List.of(), Tuning.STANDARD)).isEqualTo(OptionalInt.of(-3));
        assertThat(new Shift(1, 0).semitones(notes, Tuning.sounding("G2", "D2", "A1", "D1")))
                .isEmpty();
        assertThat(new Shift(1, 0).semitones(List.of(note(Place.dead(3))), Tuning.STANDARD))
                .isEmpty();
    }

    @Test
    void noNeckIsLargerThanTheLargest() {
        assertThat(Shift.of(Tuning.MOST_STRINGS, 0)).isEmpty();
        assertThat(new Shift(0, 30).then(new Shift(0, 30))).isEmpty();
        assertThat(new Shift(1, 3).then(new Shift(-1, -3))).contains(Shift.NONE);
        assertThatThrownBy(() -> new Shift(0, 37)).hasMessageContaining("37 frets");
    }

    private static Optional<Note> moved(Note note, int strings, int frets) {
        return new Shift(strings, frets).of(note, Tuning.STANDARD, FRETS);
    }

    private static Note note(Place place) {
        return Note.plucked(Fraction.ZERO, Fraction.of(1, 4), place, Technique.FINGER);
    }
}
