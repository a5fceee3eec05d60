package groundbass.engraving.sign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Mark;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Staves;
import groundbass.engraving.sign.staff.BeamSlope;
import groundbass.engraving.sign.staff.StemMarks;
import groundbass.engraving.spacing.KeySignature;
import groundbass.engraving.spacing.Measuring;
import groundbass.engraving.spacing.Positions;
import groundbass.engraving.spacing.TimeSignature;
import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.theory.Letter;
import groundbass.theory.Pitch;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Values worked out by hand from the rules named beside them. */
class EngravingRulesTest {
    private static int position(Letter letter, int soundingOctave) {
        return Positions.written(Pitch.of(letter, soundingOctave).octavesUp(1));
    }

    private static double stemLength(int position, boolean up) {
        return Math.abs(Measures.y(position) - StemMarks.tip(up, position));
    }

    @Test // rule: staff-positions, bass-written-high, ledger-lines, stem-length: E1 is written E2
    void openEStandsOneLedgerBelowWithAStemOfAnOctave() {
        assertThat(position(Letter.E, 1)).isEqualTo(-2);
        assertThat(Positions.ledgersBelow(-2)).isEqualTo(1);
        assertThat(stemLength(-2, true)).isEqualTo(3.5);
    }

    @Test // rule: stem-direction: D2 is written D3, position 4
    void openDStandsOnTheMiddleLine() {
        assertThat(position(Letter.D, 2)).isEqualTo(4);
        assertThat(Measures.y(4)).isEqualTo(2);
    }

    @Test // rule: ledger-lines, stem-to-middle-line: B0 is written B1, position -5
    void lowBHasTwoLedgersAndAStemToTheMiddleLine() {
        assertThat(position(Letter.B, 0)).isEqualTo(-5);
        assertThat(Positions.ledgersBelow(-5)).isEqualTo(2);
        assertThat(stemLength(-5, true)).isEqualTo(4.5);
    }

    @Test // rule: ledger-lines, stem-to-middle-line: G3 is written G4, position 14
    void theOctaveOfTheHighestStringHasThreeLedgersAndAStemToTheMiddleLine() {
        assertThat(position(Letter.G, 3)).isEqualTo(14);
        assertThat(Positions.ledgersAbove(14)).isEqualTo(3);
        assertThat(stemLength(14, false)).isEqualTo(5.0);
    }

    @Test // rule: staff-positions, ledger-lines: G4 is written G5, position 21
    void theHighestFretHasSixLedgers() {
        assertThat(position(Letter.G, 4)).isEqualTo(21);
        assertThat(Positions.ledgersAbove(21)).isEqualTo(6);
    }

    @Test // rule: key-signature-places
    void theSignatureOfEMajorStandsAtItsPlaces() {
        assertThat(KeySignature.positions(4)).containsExactly(6, 3, 7, 4);
        assertThat(KeySignature.positions(-7)).containsExactly(2, 5, 1, 4, 0, 3, -1);
    }

    @Test // rule: beam-stack: one, two and three beams
    void beamsStackAtThreeQuartersOfASpace() {
        assertThat(stack("1  E0, E0\n2-4  rest")).isCloseTo(0.5, within(1e-9));
        assertThat(stack("1  E0, E0, E0, E0\n2-4  rest")).isCloseTo(1.25, within(1e-9));
        assertThat(stack("1  E0, E0, E0, E0, E0, E0, E0, E0\n2-4  rest")).isCloseTo(2.0, within(1e-9));
    }

    /** How high the beams over equal notes are together. */
    private static double stack(String bar) {
        var drawn = Drawn.of("bar 1\n" + bar + "\n", Staves.NOTATION_ONLY);
        return drawn.of(Kind.BEAM).stream()
                .map(Mark::box)
                .reduce(Box::union)
                .orElseThrow()
                .height();
    }

    @Test // rule: spacing-by-length
    void aQuarterIsTwoAndAQuarterTimesAsWideAsASixteenth() {
        double ratio = Measuring.natural(Fraction.of(1, 4)) / Measuring.natural(Fraction.of(1, 16));
        assertThat(ratio).isCloseTo(2.25, within(1e-9));
    }

    @Test // rule: beam-level
    void beamsLieLevelWhereTheyShould() {
        assertThat(slope(0, 2, 0).isLevel()).as("outer notes agree").isTrue();
        assertThat(slope(0, 3, 1).isLevel()).as("an inner note is nearest").isTrue();
        assertThat(slope(0, 5, 0, 5).isLevel()).as("two pitches take turns").isTrue();
        assertThat(slope(0, 1, 2).isLevel()).as("a rising line").isFalse();
    }

    @Test // rule: beam-slope: never over two spaces
    void beamsRiseWithTheirNotesButNeverSteeply() {
        double[] ends = slope(-5, -2, 2, 7).ends();
        assertThat(ends[0] - ends[1]).isPositive().isLessThanOrEqualTo(2.0);
    }

    @Test // rule: beamed-stem-minimum: two and a half spaces to the nearest beam's edge
    void theShortestStemUnderABeamKeepsItsLength() {
        double[] ends = slope(1, 1).ends();
        assertThat(Measures.y(1) - ends[0] - Measures.BEAM).isGreaterThanOrEqualTo(2.5 - 1e-9);
    }

    private static BeamSlope slope(int... positions) {
        var stems = new java.util.ArrayList<BeamSlope.Stem>();
        for (int i = 0; i < positions.length; i++) {
            stems.add(new BeamSlope.Stem(i * 4, positions[i], positions[i]));
        }
        return new BeamSlope(true, 1, stems, List.of());
    }

    @Test // rule: groups-in-time-signature
    void unusualGroupsAreAddedUpInTheTimeSignature() {
        assertThat(TimeSignature.shapes(Meter.of(7, 8), 0, 2)).hasSize(2);
        assertThat(TimeSignature.shapes(new Meter(8, List.of(3, 2, 2)), 0, 2)).hasSize(6);
    }

    @Test // rule: groups-in-time-signature: a plus touches no figure, beside it or below
    void aPlusInATimeSignatureStandsFree() {
        for (var groups : List.of(List.of(3, 2, 2), List.of(2, 3), List.of(3, 3, 2, 2))) {
            var signs = TimeSignature.shapes(new Meter(8, groups), 0, 2);
            var pluses = signs.stream().filter(EngravingRulesTest::isPlus).toList();
            assertThat(pluses).hasSize(groups.size() - 1);
            for (var plus : pluses) {
                assertThat(signs.stream().filter(other -> other != plus))
                        .noneMatch(other -> plus.box().grown(0.05).overlaps(other.box()));
                assertThat(plus.box().height()).isGreaterThan(1);
            }
        }
    }

    private static boolean isPlus(Shape shape) {
        return shape instanceof Shape.Sign sign && sign.glyph() == Glyph.TIME_PLUS;
    }
}
