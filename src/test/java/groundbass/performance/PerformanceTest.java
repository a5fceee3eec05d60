package groundbass.performance;

import static groundbass.performance.Lines.bar;
import static groundbass.performance.Lines.by;
import static groundbass.performance.Lines.empty;
import static groundbass.performance.Lines.even;
import static groundbass.performance.Lines.f;
import static groundbass.performance.Lines.line;
import static groundbass.performance.Lines.note;
import static groundbass.performance.Lines.pickup;
import static groundbass.performance.Lines.quarters;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.score.Arrival;
import groundbass.score.Changes;
import groundbass.score.ChordAt;
import groundbass.score.Direction;
import groundbass.score.Dynamic;
import groundbass.score.Feel;
import groundbass.score.Fraction;
import groundbass.score.Header;
import groundbass.score.Line;
import groundbass.score.Meter;
import groundbass.score.Note;
import groundbass.score.Ornaments;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Ornaments.Spread;
import groundbass.score.Passage;
import groundbass.score.Place;
import groundbass.score.Position;
import groundbass.score.Repeats;
import groundbass.score.Roadmap;
import groundbass.score.Swing;
import groundbass.score.Technique;
import groundbass.score.Tempo;
import groundbass.theory.ChordSymbol;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class PerformanceTest {
    private static final double EXACT = 1e-9;

    private static TimedNote first(Line line) {
        return Performance.of(line).notes().get(0);
    }

    @Test
    void endingsUnfoldInTheirOrder() {
        // A B A C (rule: repeats-unfold)
        var line = line(
                Header.PLAIN,
                even(4).with(Repeats.NONE.withStart()),
                even(4).with(Repeats.NONE
                        .with(new Repeats.Ending(1, 1))
                        .withEndingEnd()
                        .with(Repeats.RepeatEnd.PLAIN)),
                even(4).with(Repeats.NONE.with(new Repeats.Ending(2, 2)).withEndingEnd()));
        var bars = Performance.of(line).bars();
        assertThat(bars).extracting(TimedBar::number).containsExactly(1, 2, 1, 3);
        assertThat(bars).extracting(TimedBar::pass).containsExactly(1, 1, 2, 2);
        assertThat(Performance.of(line).notes()).hasSize(16);
    }

    @Test
    void aJumpIsHeardInItsOrder() {
        // rule: jumps-unfold: repeat A, B, D.S. al Coda from B (the sign), to the coda C
        var jump = new Roadmap.Jump(Roadmap.From.SEGNO, Roadmap.Until.CODA);
        var line = line(
                Header.PLAIN,
                even(4).with(Repeats.NONE.withStart().with(Repeats.RepeatEnd.PLAIN)),
                even(4).with(Repeats.NONE.with(Roadmap.NONE.withSegno().withToCoda())),
                even(4).with(Repeats.NONE.with(Roadmap.NONE.with(jump))),
                even(4).with(Repeats.NONE.with(Roadmap.NONE.withCoda())));
        var performance = Performance.of(line);
        assertThat(performance.bars()).extracting(TimedBar::number).containsExactly(1, 1, 2, 3, 2, 4);
        assertThat(performance.bars()).extracting(TimedBar::pass).containsExactly(1, 2, 1, 1, 2, 1);
        assertThat(performance.notes()).hasSize(24);
    }

    @Test
    void aBarOfFourAtNinetyTwoLastsItsSeconds() {
        // rule: tempo-counts-beats: 4 * 60 / 92
        var performance = Performance.of(line(quarters(92), even(4)));
        assertThat(performance.seconds(f(1, 1))).isCloseTo(2.608696, within(5e-7));
        assertThat(performance.seconds()).isCloseTo(2 * 2.608696, within(1e-6));
    }

    @Test
    void aDottedQuarterOfEightyIsAQuarterOfAHundredAndTwenty() {
        // rule: tempo-counts-beats
        var meter = Meter.of(6, 8);
        var header = Header.PLAIN.with(meter).with(new Tempo(80, meter.pulse()));
        var performance = Performance.of(line(header, bar(meter)));
        assertThat(performance.tempos().changes().get(0).quartersPerMinute()).isEqualTo(Fraction.of(120));
    }

    @Test
    void threeQuartersOfNinetyTwoIsSixtyNine() {
        // rule: practice-tempo
        var performance = Performance.of(line(quarters(92), even(4)), Playing.at(75));
        assertThat(performance.tempos().at(f(3, 2))).isEqualTo(Fraction.of(69));
    }

    @Test
    void quickLinesAreCountedInOverTwoBars() {
        // rule: count-in
        assertThat(Performance.of(line(quarters(140), even(4))).countIn().bars())
                .isEqualTo(1);
        assertThat(Performance.of(line(quarters(141), even(4))).countIn().bars())
                .isEqualTo(2);
        assertThat(Performance.of(line(quarters(160), even(4)), Playing.at(50))
                        .countIn()
                        .bars())
                .isEqualTo(1);
    }

    @Test
    void aPickupSoundsInsideTheCountIn() {
        var line = line(quarters(120), pickup(Meter.COMMON, f(3, 4), note(f(3, 4), f(1, 4), 5)), even(4));
        var performance = Performance.of(line);
        assertThat(performance.notes().get(0).when().at()).isEqualTo(f(3, 4));
        assertThat(performance.bars().get(1).start()).isEqualTo(f(1, 1));
        assertThat(performance.end()).isEqualTo(f(2, 1));
    }

    @Test
    void aPickupComesAgainOnlyWhereTheLastBarLeavesRoom() {
        var up = pickup(Meter.COMMON, f(3, 4), note(f(3, 4), f(1, 4), 5));
        var full = Performance.of(line(Header.PLAIN, up, even(4)), Playing.ONCE.times(2));
        var cut = Performance.of(line(Header.PLAIN, up, empty().between(f(0, 1), f(3, 4))), Playing.ONCE.times(2));
        assertThat(full.bars()).extracting(TimedBar::number).containsExactly(0, 1, 1);
        assertThat(cut.bars()).extracting(TimedBar::number).containsExactly(0, 1, 0, 1);
        assertThat(cut.bars()).extracting(TimedBar::round).containsExactly(1, 1, 2, 2);
    }

    @Test
    void slowingFallsByOneStepAtEachBeatAndStays() {
        // 96 to 76 over four beats: five steps of 4, the fifth at the next bar; worked by hand
        var line = line(quarters(96), even(4), even(4).with(Changes.NONE.withSlowingTo(76)), even(4));
        assertThat(Performance.of(line).tempos().changes())
                .containsExactly(
                        new TempoMap.Change(f(0, 1), Fraction.of(96)),
                        new TempoMap.Change(f(2, 1), Fraction.of(92)),
                        new TempoMap.Change(f(9, 4), Fraction.of(88)),
                        new TempoMap.Change(f(5, 2), Fraction.of(84)),
                        new TempoMap.Change(f(11, 4), Fraction.of(80)),
                        new TempoMap.Change(f(3, 1), Fraction.of(76)));
    }

    @Test
    void secondsAndMomentsAreInverse() {
        var line = line(quarters(96), even(4).with(Changes.NONE.withSlowingTo(60)), even(4));
        var tempos = Performance.of(line).tempos();
        for (int i = 0; i <= 48; i++) {
            var moment = f(i, 16);
            assertThat(tempos.moment(tempos.seconds(moment))).isCloseTo(moment.toDouble(), within(EXACT));
        }
    }

    @Test
    void aNoteHeldOverTheBarLineIsOneNote() {
        var line = line(quarters(60), bar(note(f(3, 4), f(1, 2), 5)), bar(note(f(1, 4), f(1, 4), 5)));
        var notes = Performance.of(line).notes();
        assertThat(notes).hasSize(2);
        // half a whole note at a gate of nine tenths, a quarter a second: 1.8 s
        assertThat(notes.get(0).when().seconds()).isCloseTo(1.8, within(EXACT));
    }

    @Test
    void soundingLengthsFollowTheSigns() {
        // rule: gate-length: normal 90 %, slap 85 %, staccato 50 %, dead 60 ms
        var quarter = f(1, 4);
        var plain = note(f(0, 1), quarter, 5);
        var slapped = note(f(0, 1), quarter, Place.of(4, 5), Technique.SLAP);
        var dead = note(f(0, 1), quarter, Place.dead(4), Technique.FINGER);
        var cut = plain.withOrnaments(Ornaments.NONE.with(Mark.SHORT));
        assertThat(lengthAtSixty(plain)).isCloseTo(0.9, within(EXACT));
        assertThat(lengthAtSixty(slapped)).isCloseTo(0.85, within(EXACT));
        assertThat(lengthAtSixty(cut)).isCloseTo(0.5, within(EXACT));
        // tenuto all of it, with a dot as well 75 %
        var held = Ornaments.NONE.with(Mark.TENUTO);
        assertThat(lengthAtSixty(plain.withOrnaments(held))).isCloseTo(1, within(EXACT));
        assertThat(lengthAtSixty(plain.withOrnaments(held.with(Mark.SHORT)))).isCloseTo(0.75, within(EXACT));
        assertThat(lengthAtSixty(dead)).isCloseTo(0.06, within(EXACT));
    }

    private static double lengthAtSixty(Note note) {
        return first(line(quarters(60), bar(note))).when().seconds();
    }

    @Test
    void aRingingNoteSoundsUntilItsStringIsTouched() {
        var ringing = note(f(0, 1), f(1, 8), 5).withOrnaments(Ornaments.NONE.with(Mark.RING));
        var other = note(f(1, 4), f(1, 4), Place.of(3, 5), Technique.FINGER);
        var touched = line(Header.PLAIN, bar(ringing, other, note(f(3, 4), f(1, 8), 3)));
        assertThat(first(touched).when().until()).isEqualTo(f(7, 4));
        assertThat(first(line(Header.PLAIN, bar(ringing, other))).when().until())
                .isEqualTo(f(2, 1));
    }

    @Test
    void hammeredAndPulledNotesCarryTheSoundOnMoreSoftly() {
        // rule: stroke-velocities, legato-velocity: normal 96, hammer 70 to 75 %, pull 65 to 70 % of the source
        var notes = Performance.of(line(
                        Header.PLAIN,
                        bar(
                                note(f(0, 1), f(1, 8), 5),
                                by(Arrival.Kind.HAMMER, f(1, 8), f(1, 8), 7),
                                note(f(1, 4), f(1, 8), 7),
                                by(Arrival.Kind.PULL, f(3, 8), f(1, 8), 5))))
                .notes();
        assertThat(notes.get(0).velocity()).isEqualTo(96);
        assertThat(notes.get(1).velocity()).isBetween(67, 72);
        assertThat(notes.get(3).velocity()).isBetween(62, 68);
        assertThat(notes.get(0).when().until()).isEqualTo(notes.get(1).when().at());
        assertThat(notes.get(1).attack()).isEqualTo(new Attack.Continued(Arrival.Kind.HAMMER, Technique.FINGER));
    }

    @Test
    void accentsAndDynamicsMoveTheVelocity() {
        // rule: stroke-velocities: slap 112, pop 120, accent +16; of what goes beyond 120 an eighth
        var slap = note(f(0, 1), f(1, 4), Place.of(4, 5), Technique.SLAP);
        var pop = note(f(0, 1), f(1, 4), Place.of(1, 5), Technique.POP);
        var accent = Ornaments.NONE.with(Mark.ACCENT);
        assertThat(first(line(Header.PLAIN, bar(slap))).velocity()).isEqualTo(112);
        assertThat(first(line(Header.PLAIN, bar(pop))).velocity()).isEqualTo(120);
        assertThat(first(line(Header.PLAIN, bar(pop.withOrnaments(accent)))).velocity())
                .isEqualTo(122);
        // an accent adds 16, a marcato 24: a finger's stroke of 96 becomes 112 and 120
        var finger = note(f(0, 1), f(1, 4), 5);
        assertThat(first(line(Header.PLAIN, bar(finger.withOrnaments(accent)))).velocity())
                .isEqualTo(112);
        var strong = finger.withOrnaments(Ornaments.NONE.with(Mark.MARCATO));
        assertThat(first(line(Header.PLAIN, bar(strong))).velocity()).isEqualTo(120);
        var soft = bar(slap).withDirections(List.of(new Direction.Loudness(f(0, 1), Dynamic.PP)));
        assertThat(first(line(Header.PLAIN, soft)).velocity())
                .isEqualTo(56); // 112 x 48 / 96, both as Velocity has them; ours
    }

    @Test
    void aHairpinLeadsEvenlyToTheNextDynamic() {
        // rule: hairpin-course: p is 64 and f 108 of a normal stroke's 96 (ours); four quarters on the way: 64, 75, 86,
        // 97
        var grows = even(4).withDirections(List.of(
                new Direction.Loudness(f(0, 1), Dynamic.P),
                new Direction.Hairpin(f(0, 1), Direction.Hairpin.Way.CRESCENDO)));
        var loud = even(4).withDirections(List.of(new Direction.Loudness(f(0, 1), Dynamic.F)));
        assertThat(velocities(line(Header.PLAIN, grows, loud))).containsExactly(64, 75, 86, 97, 108, 108, 108, 108);
    }

    @Test
    void aHairpinWithoutADynamicOnItsWayLeadsOneFurther() {
        // rule: hairpin-course: mf 96 falls to mp 80 within its bar, and stays there
        var falls = even(4).withDirections(List.of(new Direction.Hairpin(f(0, 1), Direction.Hairpin.Way.DIMINUENDO)));
        assertThat(velocities(line(Header.PLAIN, falls, even(2)))).containsExactly(96, 92, 88, 84, 80, 80);
        // louder up to a softer dynamic: to f 108 first, then p 64
        var grows = even(4).withDirections(List.of(
                new Direction.Hairpin(f(0, 1), Direction.Hairpin.Way.CRESCENDO),
                new Direction.Loudness(f(1, 2), Dynamic.P)));
        assertThat(velocities(line(Header.PLAIN, grows))).containsExactly(96, 102, 64, 64);
        // twice round: each round begins at mf again
        assertThat(Performance.of(line(Header.PLAIN, falls), Playing.ONCE.times(2))
                        .notes())
                .extracting(TimedNote::velocity)
                .containsExactly(96, 92, 88, 84, 96, 92, 88, 84);
    }

    private static List<Integer> velocities(Line line) {
        return Performance.of(line).notes().stream().map(TimedNote::velocity).toList();
    }

    @Test
    void deadAndGhostNotesAreSoft() {
        // rule: stroke-velocities: 30 to 45
        var dead = note(f(0, 1), f(1, 4), Place.dead(4), Technique.SLAP);
        var ghost = note(f(0, 1), f(1, 4), 5).withOrnaments(Ornaments.NONE.with(Mark.GHOST));
        assertThat(first(line(Header.PLAIN, bar(dead))).velocity()).isBetween(30, 45);
        assertThat(first(line(Header.PLAIN, bar(ghost))).velocity()).isBetween(30, 45);
        // a dead note has the open string's number: E1 is 28
        assertThat(first(line(Header.PLAIN, bar(dead))).pitch()).isEqualTo(28);
    }

    @Test
    void aGraceNoteComesBeforeTheBeat() {
        var grace = new Note(
                f(1, 4),
                f(1, 4),
                Place.of(4, 7),
                Optional.of(Technique.FINGER),
                Optional.of(Arrival.from(Arrival.Kind.HAMMER, 5)),
                Ornaments.NONE);
        var notes = Performance.of(line(quarters(60), bar(note(f(0, 1), f(1, 4), 3), grace)))
                .notes();
        assertThat(notes).extracting(TimedNote::grace).containsExactly(false, true, false);
        assertThat(notes).extracting(TimedNote::pitch).containsExactly(31, 33, 35);
        assertThat(notes.get(1).when().start()).isCloseTo(5 - 0.06, within(EXACT)); // 60 ms: ours
        assertThat(notes.get(1).when().until()).isEqualTo(f(5, 4));
        assertThat(notes.get(2).isContinued()).isTrue();
    }

    @Test
    void aSlideReachesTheNextPitchAsThatBegins() {
        var notes = Performance.of(
                        line(quarters(60), bar(note(f(0, 1), f(1, 4), 5), by(Arrival.Kind.SLIDE, f(1, 4), f(1, 4), 9))))
                .notes();
        var source = notes.get(0);
        assertThat(source.curve().at(0.5)).isZero();
        assertThat(source.curve().at(source.when().seconds())).isCloseTo(4, within(EXACT));
        assertThat(notes.get(1).curve().isFlat()).isTrue();
    }

    /** rule: trill-rate: eight notes a second; of 1.8 s (a half at 60, gate-length 90 per cent) 14, made odd. */
    @Test
    void aTrillGoesUpAndBackAndEndsWhereItBegan() {
        var trilled = note(f(0, 1), f(1, 2), 5).withOrnaments(Ornaments.NONE.with(new Ornaments.Trill(2)));
        var notes = Performance.of(line(quarters(60), bar(trilled))).notes();
        assertThat(notes).hasSize(13);
        assertThat(notes)
                .extracting(TimedNote::pitch)
                .startsWith(33, 35, 33, 35)
                .endsWith(35, 33);
        assertThat(notes)
                .extracting(TimedNote::isContinued)
                .containsOnlyOnce(false)
                .startsWith(false);
        assertThat(notes).extracting(TimedNote::grace).containsOnlyOnce(false).startsWith(false);
        assertThat(notes.get(12).when().until()).isEqualTo(f(1, 1).plus(f(9, 20)));
        for (int i = 1; i < notes.size(); i++) {
            assertThat(notes.get(i).when().at())
                    .isEqualTo(notes.get(i - 1).when().until());
            assertThat(notes.get(i).when().seconds()).isCloseTo(1.8 / 13, within(EXACT));
        }
    }

    /** rule: trill-rate: 16 in the 2 s of a half at 60, made odd; the last rings to the end of the bar. */
    @Test
    void aTrillIsAsLongAsItIsWrittenAndItsLastNoteRings() {
        var ornaments = Ornaments.NONE.with(new Ornaments.Trill(2)).with(Mark.RING);
        var trilled = note(f(0, 1), f(1, 2), 5).withOrnaments(ornaments);
        var notes = Performance.of(line(quarters(60), bar(trilled))).notes();
        assertThat(notes).hasSize(15);
        assertThat(notes.get(14).when().at()).isEqualTo(f(1, 1).plus(f(14, 30)));
        assertThat(notes.get(14).when().until()).isEqualTo(f(2, 1));
    }

    /** rule: trill-rate. */
    @Test
    void aTrilledNoteIsSlidIntoAndOutOfAndHasItsVibratoAtItsEnd() {
        var ornaments = Ornaments.NONE
                .with(new Ornaments.Trill(2))
                .with(Mark.VIBRATO)
                .with(Ornaments.SlideIn.BELOW)
                .with(Ornaments.SlideOff.DOWN);
        var trilled = note(f(0, 1), f(1, 2), 5).withOrnaments(ornaments);
        var notes = Performance.of(line(quarters(60), bar(trilled))).notes();
        assertThat(notes.get(0).curve().at(0)).isNegative();
        assertThat(notes.get(0).curve().at(notes.get(0).when().seconds())).isCloseTo(0, within(EXACT));
        assertThat(notes.get(1).curve().isFlat()).isTrue();
        var last = notes.get(notes.size() - 1);
        assertThat(last.curve().vibrato()).isTrue();
        assertThat(last.curve().at(last.when().seconds())).isLessThan(-1);
    }

    @Test
    void aShortTrillStillGoesUpAndBack() {
        var trilled = note(f(0, 1), f(1, 16), 5).withOrnaments(Ornaments.NONE.with(new Ornaments.Trill(1)));
        assertThat(Performance.of(line(quarters(120), bar(trilled))).notes())
                .extracting(TimedNote::pitch)
                .containsExactly(33, 34, 33);
    }

    @Test
    void aBendReachesItsAmountAndVibratoStaysNarrow() {
        var bent = note(f(0, 1), f(1, 2), 5).withOrnaments(Ornaments.NONE.with(new Ornaments.Bend(2)));
        assertThat(first(line(quarters(60), bar(bent))).curve().at(1)).isCloseTo(1, within(EXACT));
        var wavering = note(f(0, 1), f(1, 2), 5).withOrnaments(Ornaments.NONE.with(Mark.VIBRATO));
        // rule: vibrato-figures: 10 to 30 cents
        assertThat(first(line(quarters(60), bar(wavering))).curve().reach()).isBetween(0.1, 0.3);
    }

    @Test
    void aBendBeforeTheStrokeIsThereAtOnceAndAReleaseLeadsBack() {
        var both = note(f(0, 1), f(1, 2), 5).withOrnaments(Ornaments.NONE.with(new Ornaments.Bend(2, true, true)));
        var curve = first(line(quarters(60), bar(both))).curve();
        assertThat(curve.at(0)).isCloseTo(1, within(EXACT));
        assertThat(curve.at(1)).isCloseTo(1, within(EXACT));
        assertThat(curve.at(1.7)).isCloseTo(0, within(EXACT));
        var released = note(f(0, 1), f(1, 2), 5).withOrnaments(Ornaments.NONE.with(new Ornaments.Bend(2).letBack()));
        assertThat(first(line(quarters(60), bar(released))).curve().at(0)).isZero();
    }

    @Test
    void aChordHoldsUntilTheNextAcrossBars() {
        var chord = new ChordAt(f(0, 1), ChordSymbol.parse("Am7").orElseThrow());
        var late = new ChordAt(f(3, 4), ChordSymbol.parse("D7").orElseThrow());
        var chords = Performance.of(line(
                        Header.PLAIN, even(4).withChords(List.of(chord)), even(4).withChords(List.of(late)), even(4)))
                .chords();
        assertThat(chords).extracting(each -> each.chord().toString()).containsExactly("Am7", "Am7", "D7", "D7");
        assertThat(chords).extracting(each -> each.when().at()).containsExactly(f(1, 1), f(2, 1), f(11, 4), f(3, 1));
    }

    @Test
    void aChordPushedAheadSwings() {
        var header = Header.PLAIN.with(Feel.swung(new Swing(f(1, 8), 2, 1)));
        var pushed = new ChordAt(f(7, 8), ChordSymbol.parse("D7").orElseThrow());
        // a bar of count-in, then the last pair from 3/4: 1 + 3/4 + 1/6
        assertThat(Performance.of(line(header, even(8).withChords(List.of(pushed))))
                        .chords()
                        .get(0)
                        .when()
                        .at())
                .isEqualTo(f(23, 12));
    }

    @Test
    void everythingWaitsForAFermata() {
        // a quarter at 60 under a fermata lasts two seconds (common practice, no source)
        var held = note(f(3, 4), f(1, 4), 5).withOrnaments(Ornaments.NONE.with(Mark.FERMATA));
        var performance = Performance.of(line(quarters(60), bar(note(f(0, 1), f(1, 4), 5), held), even(4)));
        assertThat(performance.seconds(f(7, 4))).isEqualTo(7);
        assertThat(performance.seconds(f(2, 1))).isEqualTo(9);
        assertThat(performance.seconds()).isEqualTo(13);
    }

    @Test
    void aRepeatGoesOnAsLoudAsItsEndWas() {
        // a dynamic holds until the next that is played (common practice, no source); finger 96 at mf, 108 at f
        var loud = even(1).withDirections(List.of(new Direction.Loudness(f(0, 1), Dynamic.F)));
        var line = line(
                Header.PLAIN,
                even(1).with(Repeats.NONE.withStart()),
                loud.with(Repeats.NONE.with(Repeats.RepeatEnd.PLAIN)));
        assertThat(Performance.of(line).notes()).extracting(TimedNote::velocity).containsExactly(96, 108, 108, 108);
        // the whole line from its beginning again is as loud as it was
        assertThat(Performance.of(line, Playing.ONCE.times(2)).notes())
                .extracting(TimedNote::velocity)
                .startsWith(96, 108, 108, 108, 96);
    }

    @Test
    void aRakeRunsFromTheHighestStringDownAndAPluckedChordFromTheLowest() {
        // rule: rake-order: a rake usually goes from high to low
        var raked =
                Performance.of(line(quarters(60), bar(chord(Technique.RAKE)))).notes();
        assertThat(raked).extracting(TimedNote::string).containsExactly(1, 2, 3);
        assertThat(raked.get(1).when().start() - raked.get(0).when().start())
                .isCloseTo(0.022, within(EXACT)); // 22 ms from string to string: ours
        var plucked =
                Performance.of(line(quarters(60), bar(chord(Technique.PLUCK)))).notes();
        assertThat(plucked).extracting(TimedNote::string).containsExactly(3, 2, 1);
        assertThat(plucked.get(2).when().start() - plucked.get(0).when().start())
                .isBetween(0.005, 0.02);
        assertThat(plucked.get(0).when().at()).isEqualTo(f(1, 1));
    }

    private static List<TimedNote> spread(Spread spread, Note... notes) {
        var said = Arrays.stream(notes)
                .map(note -> note.withOrnaments(note.ornaments().withSpread(Optional.of(spread))))
                .toArray(Note[]::new);
        return Performance.of(line(quarters(60), bar(said))).notes();
    }

    /** rule: rolled-chord-time: on its beat, 45 ms apart. */
    @Test
    void aRolledChordBeginsOnItsBeatAndGoesUpOrDown() {
        for (var up : List.of(Spread.ROLL, Spread.ROLL_UP)) {
            var notes = spread(up, chord(Technique.FINGER));
            assertThat(notes).extracting(TimedNote::string).containsExactly(3, 2, 1);
            assertThat(notes.get(0).when().at()).isEqualTo(f(1, 1));
            assertThat(notes.get(1).when().start() - notes.get(0).when().start())
                    .isCloseTo(0.045, within(EXACT));
            assertThat(notes.get(2).when().start() - notes.get(1).when().start())
                    .isCloseTo(0.045, within(EXACT));
        }
        var down = spread(Spread.ROLL_DOWN, chord(Technique.FINGER));
        assertThat(down).extracting(TimedNote::string).containsExactly(1, 2, 3);
        assertThat(down.get(0).when().at()).isEqualTo(f(1, 1));
    }

    /** rule: rolled-chord-time: by pitch, so the twelfth fret of the E string (E) comes after the second of the A string (B). */
    @Test
    void aRolledChordGoesByPitch() {
        var notes = spread(
                Spread.ROLL,
                note(f(0, 1), f(1, 4), Place.of(4, 12), Technique.FINGER),
                note(f(0, 1), f(1, 4), Place.of(3, 2), Technique.FINGER));
        assertThat(notes).extracting(TimedNote::string).containsExactly(3, 4);
    }

    /** rule: rolled-chord-time: a quarter of a sixteenth of 250 ms for all of it, 31.25 ms for each of two steps. */
    @Test
    void aShortChordIsRolledCloser() {
        var notes = spread(
                Spread.ROLL,
                note(f(0, 1), f(1, 16), Place.of(3, 5), Technique.FINGER),
                note(f(0, 1), f(1, 16), Place.of(2, 5), Technique.FINGER),
                note(f(0, 1), f(1, 16), Place.of(1, 6), Technique.FINGER));
        assertThat(notes.get(1).when().start() - notes.get(0).when().start()).isCloseTo(0.03125, within(EXACT));
        assertThat(notes.get(2).when().start() - notes.get(0).when().start()).isCloseTo(0.0625, within(EXACT));
    }

    /** rule: rolled-chord-time: thumb and fingers alone would open from the lowest. */
    @Test
    void underABracketAllSoundAtOnce() {
        assertThat(spread(Spread.BRACKET, chord(Technique.PLUCK)))
                .hasSize(3)
                .extracting(note -> note.when().at())
                .containsOnly(f(1, 1));
    }

    @Test
    void aRolledChordIsOneChordToWhoeverJudgesTheWrittenLine() {
        var line = line(quarters(60), bar(chord(Technique.RAKE)));
        assertThat(Performance.of(line).firstPlaying())
                .extracting(Played::onset)
                .containsOnly(f(1, 1));
    }

    private static Note[] chord(Technique hand) {
        return new Note[] {
            note(f(0, 1), f(1, 4), Place.of(3, 5), hand),
            note(f(0, 1), f(1, 4), Place.of(2, 5), hand),
            note(f(0, 1), f(1, 4), Place.of(1, 6), hand)
        };
    }

    @Test
    void everyNoteKnowsItsPassageAndPass() {
        var line = line(Header.PLAIN, even(2).with(Repeats.NONE.withStart().with(Repeats.RepeatEnd.PLAIN)));
        var notes = Performance.of(line).notes();
        assertThat(notes).extracting(note -> note.origin().pass()).containsExactly(1, 1, 2, 2);
        assertThat(notes.get(3).passage()).isEqualTo(new Passage(new Position(1, f(1, 2)), new Position(1, f(1, 1))));
    }
}
