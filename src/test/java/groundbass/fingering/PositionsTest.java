package groundbass.fingering;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.Tuning;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Where players put their hands: common practice, no source, unless a test names one. */
class PositionsTest {
    private static final Fretboard FIVE = new Fretboard(Tuning.FIVE_STRING, 24, Fretboard.LONG);
    private static final Fretboard SIX = new Fretboard(Tuning.SIX_STRING, 24, Fretboard.LONG);

    /** A major from the fifth fret of the E string, second finger first: 2-4 / 1-2-4 / 1-3-4 in fourth position. */
    @Test
    void theMajorScaleLiesUnderOneHandFromTheSecondFinger() {
        var scale = Necks.from(Necks.FOUR, 4, Necks.melody(Necks.FOUR, 0.5, 33, 35, 37, 38, 40, 42, 44, 45));
        var way = Search.inPosition(Necks.FOUR, Hand.AVERAGE, scale, 4).orElseThrow();
        assertThat(Necks.text(Necks.FOUR, way)).isEqualTo("E5/2 E7/4 A4/1 A5/2 A7/4 D4/1 D6/3 D7/4");
    }

    /** A minor pentatonic in fifth position: 1-4 / 1-3 / 1-3 / 1-3. */
    @Test
    void theMinorPentatonicBoxLiesInFifthPosition() {
        var box = Necks.from(Necks.FOUR, 4, Necks.melody(Necks.FOUR, 0.5, 33, 36, 38, 40, 43, 45, 48, 50));
        var way = Search.inPosition(Necks.FOUR, Hand.AVERAGE, box, 5).orElseThrow();
        assertThat(Necks.text(Necks.FOUR, way)).isEqualTo("E5/1 E8/4 A5/1 A7/3 D5/1 D7/3 G5/1 G7/3");
    }

    /** Root, fifth and octave under first, third (or little) finger and little finger; the octave is wider low down. */
    @Test
    void rootFifthAndOctaveLieUnderOneHand() {
        var high = Search.best(Necks.FOUR, Hand.AVERAGE, Necks.melody(Necks.FOUR, 0.5, 36, 43, 48))
                .orElseThrow();
        assertThat(high.isUnderOneHand()).isTrue();
        var low = Necks.melody(Necks.FOUR, 0.5, 29, 36, 41);
        var way = Search.inPosition(Necks.FOUR, Hand.AVERAGE, low, 1).orElseThrow();
        assertThat(Necks.text(Necks.FOUR, way)).isIn("E1/1 A3/4 D3/4", "E1/1 A3/3 D3/4", "E1/1 A3/4 D3/3");
    }

    /** As on a double bass (1-2-4), the little finger takes the third of three low frets. */
    @Test
    void lowPositionsAreFingeredOneTwoFour() {
        var way = Search.best(Necks.FOUR, Hand.AVERAGE, Necks.melody(Necks.FOUR, 0.5, 29, 30, 31))
                .orElseThrow();
        assertThat(Necks.text(Necks.FOUR, way)).isEqualTo("E1/1 E2/2 E3/4");
    }

    /**
     * One finger a fret from about the fifth fret on a long neck, from the third on a short one (rule: finger-a-fret).
     */
    @Test
    void fourFretsTakeFourFingersHigherUp() {
        var chromatic = Necks.from(Necks.FOUR, 4, Necks.melody(Necks.FOUR, 0.5, 33, 34, 35, 36));
        var way = Search.inPosition(Necks.FOUR, Hand.AVERAGE, chromatic, 5).orElseThrow();
        assertThat(Necks.text(Necks.FOUR, way)).isEqualTo("E5/1 E6/2 E7/3 E8/4");
        assertThat(way.cost().of(Cost.Part.STRETCH)).isZero();
        var shortNeck = new Fretboard(Tuning.STANDARD, 24, Fretboard.SHORT);
        var third = Search.inPosition(shortNeck, Hand.AVERAGE, Necks.melody(shortNeck, 0.5, 31, 32, 33, 34), 3);
        assertThat(third.orElseThrow().cost().of(Cost.Part.STRETCH)).isLessThan(0.2);
    }

    /** A C major scale at the nut uses the open D, and A and G where they lie open. */
    @Test
    void openStringsHelpInFirstPosition() {
        var scale = Necks.melody(Necks.FOUR, 0.5, 36, 38, 40, 41, 43, 45, 47, 48);
        var way = Search.best(Necks.FOUR, Hand.AVERAGE, scale).orElseThrow();
        assertThat(Necks.places(Necks.FOUR, way)).isEqualTo("A3 D0 D2 D3 G0 G2 G4 G5");
    }

    /** A dominant shell with its root on the A string (rule: shell-voicings): C2 E2 Bb2 at A3 D2 G3. */
    @Test
    void theShellOfCSevenIsFound() {
        var chord = SoundingMoment.of(
                0,
                1,
                NoteConstraint.pitch(Necks.FOUR, 36),
                NoteConstraint.pitch(Necks.FOUR, 40),
                NoteConstraint.pitch(Necks.FOUR, 46));
        var way = Search.best(Necks.FOUR, Hand.AVERAGE, List.of(chord)).orElseThrow();
        assertThat(Necks.text(Necks.FOUR, way)).isEqualTo("A3/2 D2/1 G3/3");
    }

    /** The same notes on a five-string lie under one hand where four strings need a shift: D1 is B3. */
    @Test
    void aFifthStringSparesAShift() {
        var line = Necks.melody(FIVE, 0.3, 26, 31, 33, 38);
        var way = Search.best(FIVE, Hand.AVERAGE, line).orElseThrow();
        assertThat(way.isUnderOneHand()).isTrue();
        assertThat(Search.best(SIX, Hand.AVERAGE, line).orElseThrow().cost().total())
                .isLessThanOrEqualTo(way.cost().total() + 1e-9);
    }

    /** Fast lines are kept under the hand. */
    @Test
    void speedKeepsTheHandWhereItIs() {
        var fast = Necks.melody(Necks.FOUR, 0.09, 40, 43, 45, 47, 45, 43, 40, 38);
        var way = Search.best(Necks.FOUR, Hand.AVERAGE, fast).orElseThrow();
        assertThat(way.cost().of(Cost.Part.HURRY)).isZero();
    }
}
