package groundbass.groove;

import static groundbass.performance.Lines.even;
import static groundbass.performance.Lines.f;
import static groundbass.performance.Lines.line;
import static groundbass.performance.Lines.note;
import static groundbass.performance.Lines.pickup;
import static groundbass.performance.Lines.quarters;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.linetext.LineText;
import groundbass.performance.Lines;
import groundbass.performance.Performance;
import groundbass.performance.Playing;
import groundbass.score.Bar;
import groundbass.score.Changes;
import groundbass.score.Feel;
import groundbass.score.Fraction;
import groundbass.score.Header;
import groundbass.score.Meter;
import groundbass.score.RandomLines;
import groundbass.score.Swing;
import groundbass.score.Technique;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Moments by hand; what fits which style is common practice, no source. */
class BandTest {
    private static final Feel SWUNG = Feel.swung(new Swing(f(1, 8), 2, 1));

    @Test
    void theCountInHasOneClickForEachBeatAndTheFirstStandsOut() {
        var clicks = Clicks.of(Performance.of(line(Header.PLAIN, even(4))));
        assertThat(clicks).hasSize(8);
        assertThat(clicks).filteredOn(Click::countIn).hasSize(4);
        assertThat(clicks).extracting(Click::first).startsWith(true, false, false, false, true, false);
        assertThat(clicks.get(5).at()).isEqualTo(f(5, 4));
    }

    @Test
    void compoundMetersClickOnTheDottedQuarterAndGroupedOnesOnTheEighth() {
        // rule: clicks-of-a-metre: 12/8 clicks on the dotted quarter, 7/8 on the eighth
        var twelve = Meter.of(12, 8);
        var seven = Meter.of(7, 8);
        assertThat(Clicks.of(Performance.of(line(Header.PLAIN.with(twelve), empty(twelve)))))
                .hasSize(8);
        assertThat(Clicks.of(Performance.of(line(Header.PLAIN.with(seven), empty(seven)))))
                .hasSize(14);
    }

    @Test
    void theGroupsOfAnUnevenMeterStandOut() {
        // 7/8 as 2 + 2 + 3: the first, third and fifth eighth (common practice, no source)
        var seven = Meter.of(7, 8);
        assertThat(Clicks.of(Performance.of(line(Header.PLAIN.with(seven), empty(seven)))))
                .extracting(Click::weight)
                .startsWith(
                        Click.Weight.BAR,
                        Click.Weight.COUNT,
                        Click.Weight.BEAT,
                        Click.Weight.COUNT,
                        Click.Weight.BEAT,
                        Click.Weight.COUNT,
                        Click.Weight.COUNT,
                        Click.Weight.BAR);
    }

    private static Bar empty(Meter meter) {
        return Lines.bar(meter);
    }

    @Test
    void halfTimeClicksEverySecondBeatAfterTheCountIn() {
        var header = Header.PLAIN.with(new Feel(Optional.empty(), true));
        var clicks = Clicks.of(Performance.of(line(header, even(4))));
        assertThat(clicks)
                .filteredOn(click -> !click.countIn())
                .extracting(Click::at)
                .containsExactly(f(1, 1), f(3, 2));
        assertThat(clicks).filteredOn(Click::countIn).hasSize(4);
    }

    @Test
    void drumsSwingAsTheLineDoes() {
        var ride = GrooveLibrary.named("Swing ride").orElseThrow();
        var hits = Drums.of(Performance.of(line(Header.PLAIN.with(SWUNG), even(4))), ride);
        // the second ride stroke of beat 2 at two thirds of the beat
        assertThat(hits)
                .filteredOn(hit -> hit.piece() == Piece.RIDE)
                .extracting(DrumHit::at)
                .startsWith(f(1, 1), f(5, 4), f(5, 4).plus(f(1, 6)), f(3, 2));
    }

    @Test
    void tripletGroovesAreNotSwungTwice() {
        var shuffle = GrooveLibrary.named("Shuffle").orElseThrow();
        var swung = Drums.of(Performance.of(line(Header.PLAIN.with(SWUNG), even(4))), shuffle);
        var straight = Drums.of(Performance.of(line(Header.PLAIN, even(4))), shuffle);
        assertThat(swung)
                .extracting(DrumHit::at)
                .isEqualTo(straight.stream().map(DrumHit::at).toList());
    }

    private static final Performance TWO_SECTIONS =
            Performance.of(LineText.read("""
                    section A
                    bar 1
                    1-4 A0
                    bar 2
                    1-4 A0
                    section B
                    bar 3
                    1-4 A0
                    """).line());

    private static List<DrumHit> rock(int feel) {
        return Drums.of(
                TWO_SECTIONS, GrooveLibrary.named("Straight rock").orElseThrow().withFeel(feel));
    }

    /** Common practice, no source. */
    @Test
    void aFillLeadsIntoASectionAndItsFirstStrokeIsTheCrash() {
        var hits = rock(Groove.USUAL_FEEL);
        // after a bar of count-in: the last beat of bar 2 from 11/4, bar 3 from 3
        assertThat(hits)
                .filteredOn(hit -> hit.piece() == Piece.CRASH)
                .extracting(DrumHit::at)
                .containsExactly(f(3, 1));
        assertThat(hits)
                .filteredOn(hit -> hit.piece() == Piece.HAT)
                .extracting(DrumHit::at)
                .contains(f(5, 2), f(7, 4))
                .doesNotContain(f(11, 4), f(3, 1));
        assertThat(hits)
                .filteredOn(hit -> hit.piece() == Piece.LOWTOM)
                .extracting(DrumHit::at)
                .isNotEmpty()
                .allSatisfy(at -> assertThat(at).isBetween(f(11, 4), f(3, 1)));
    }

    @Test
    void peopleLagALittleAndEqualBarsAreEqual() {
        var hits = rock(Groove.USUAL_FEEL);
        assertThat(hits).extracting(BandTest::late).allMatch(late -> late >= 0 && late < 0.01);
        assertThat(hits).extracting(BandTest::late).anyMatch(late -> late > 0.001);
        assertThat(hits).extracting(DrumHit::force).allMatch(force -> force > 0.75 && force < 1.2);
        var halves = rock(50);
        assertThat(late(halves.get(0))).isEqualTo(late(hits.get(0)) / 2, within(1e-9));
        assertThat(rock(Groove.USUAL_FEEL)).isEqualTo(hits);
    }

    private static double late(DrumHit hit) {
        return hit.seconds() - TWO_SECTIONS.seconds(hit.at());
    }

    private static List<VoicedChord> chords(String row, String line) {
        var groove = GrooveText.read("columns 8\nkick x-------\nchords " + row)
                .groove()
                .orElseThrow();
        return ChordPlayer.of(Performance.of(LineText.read(line).line()), groove);
    }

    @Test
    void chordsAreStruckInTheRhythmOfTheGroove() {
        // moments by hand, after a bar of count-in: on 1, the and of 2 until 3, and the second chord where it comes
        var played = chords("x- -x .- --", """
                bar 1 over Am, G at 4
                1-4 A0
                """);
        assertThat(played)
                .extracting(chord -> chord.when().at())
                .containsExactly(f(1, 1), f(1, 1).plus(f(3, 8)), f(7, 4));
        assertThat(played)
                .extracting(chord -> chord.when().until())
                .containsExactly(f(1, 1).plus(f(3, 8)), f(3, 2), f(2, 1));
    }

    @Test
    void aRhythmThatRestsOnTheOneLetsTheChordWait() {
        assertThat(chords("-- x. -- x.", "bar 1 over Am\n1-4 A0\n"))
                .extracting(chord -> chord.when().at())
                .containsExactly(f(5, 4), f(7, 4));
    }

    private static List<Fraction> kicks(String row, String follow, String line) {
        var groove = GrooveText.read("columns 8\n" + follow + "\nkick " + row + "\nsnare --X---X-")
                .groove()
                .orElseThrow();
        return Drums.of(Performance.of(LineText.read(line).line()), groove).stream()
                .filter(hit -> hit.piece() == Piece.KICK)
                .map(hit -> hit.at().minus(f(1, 1)))
                .toList();
    }

    @Test
    void aKickTakesItsCueFromTheLine() {
        // rule: kick-and-line. Notes on 1, the and of 2 and the and of 3: the kick on 3 moves half a beat back, and the
        // and of 3 gets one
        String line = "bar 1\n1 A0\n2 rest, A3\n3 rest, A2\n";
        assertThat(kicks("X--- x---", "", line)).containsExactly(f(0, 1), f(1, 2));
        assertThat(kicks("X--- x---", "follow kick", line)).containsExactly(f(0, 1), f(3, 8), f(5, 8));
    }

    @Test
    void groovesOfTheLibraryAreFourBarsAndTheLastLeadsOn() {
        // rule: four-bar-units
        assertThat(GrooveLibrary.all()).allSatisfy(groove -> {
            assertThat(groove.bars()).isEqualTo(4);
            assertThat(groove.style().chords()).isNotEmpty();
            assertThat(bar(groove, 3)).isNotEqualTo(bar(groove, 1));
        });
    }

    private static List<Stroke> bar(Groove groove, int bar) {
        return groove.rows().values().stream()
                .flatMap(row -> row.subList(bar * groove.columns(), (bar + 1) * groove.columns()).stream())
                .toList();
    }

    @Test
    void aMachinePlaysWhatIsWritten() {
        var hits = rock(Groove.MACHINE);
        assertThat(hits)
                .isNotEmpty()
                .allMatch(hit -> late(hit) == 0 && hit.force() == 1)
                .noneMatch(hit -> hit.piece() == Piece.CRASH || hit.piece() == Piece.LOWTOM);
    }

    @Test
    void drumsRestInAPickupAndTheBarCutShortEndsThem() {
        var up = pickup(Meter.COMMON, f(3, 4), note(f(3, 4), f(1, 4), 5));
        var groove = GrooveLibrary.named("Straight rock").orElseThrow();
        var hits = Drums.of(Performance.of(line(Header.PLAIN, up, Lines.empty().between(f(0, 1), f(1, 2)))), groove);
        assertThat(hits).isNotEmpty().allSatisfy(hit -> assertThat(hit.at()).isBetween(f(1, 1), f(3, 2)));
        assertThat(hits).noneMatch(hit -> hit.at().equals(f(3, 2)));
    }

    @Test
    void aBarOfAnotherMeterGetsItsOwnGroove() {
        var seven = Meter.of(7, 8);
        var line = line(Header.PLAIN, even(4), empty(seven).with(Changes.NONE.with(seven)));
        var hits = Drums.of(
                Performance.of(line), GrooveLibrary.named("Straight rock").orElseThrow());
        assertThat(hits).filteredOn(hit -> hit.at().compareTo(f(2, 1)) >= 0).isNotEmpty();
        assertThat(hits).allMatch(hit -> hit.at().isBefore(f(23, 8)));
    }

    @Test
    void theGrooveSuitsMeterFeelAndStyle() {
        assertThat(GrooveLibrary.suited(line(Header.PLAIN.with(Technique.SLAP), even(4)))
                        .name())
                .isEqualTo("Slap funk");
        assertThat(GrooveLibrary.suited(line(Header.PLAIN.with(SWUNG), even(4))).name())
                .isEqualTo("Swing ride");
        var blues = Meter.of(12, 8);
        assertThat(GrooveLibrary.suited(line(Header.PLAIN.with(blues), empty(blues)))
                        .meter())
                .isEqualTo(blues);
        var odd = Meter.of(11, 8);
        assertThat(GrooveLibrary.suited(line(Header.PLAIN.with(odd), empty(odd)))
                        .meter())
                .isEqualTo(odd);
    }

    @Test
    void everyStrokeLiesInsideThePerformanceForRandomLines() {
        for (long seed = 0; seed < 150; seed++) {
            var performance = Performance.of(RandomLines.line(seed), new Playing(100, 2));
            var band = Band.of(performance);
            assertThat(band.drums()).as("seed %d", seed).allMatch(hit -> hit.at()
                    .isBefore(performance.end()));
            assertThat(band.clicks()).as("seed %d", seed).isNotEmpty();
            assertThat(band.drums().stream().map(DrumHit::at))
                    .as("seed %d", seed)
                    .isSorted();
        }
    }

    @Test
    void secondsAreThoseOfTheTempo() {
        var clicks = Clicks.of(Performance.of(line(quarters(120), even(4))));
        assertThat(clicks.get(3).seconds()).isEqualTo(1.5);
    }
}
