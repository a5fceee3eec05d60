package groundbass.linetext.edit;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.score.Copy;
import groundbass.score.Count;
import groundbass.score.Fraction;
import groundbass.score.Shift;
import groundbass.score.Technique;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What a change does to a text; expected texts written by hand from the specification in {@code spec/line-text}. */
class LineEditTest {
    private static final String TEXT = """
            # first try
            title   Lantern Street
            tempo 96

            bar 1 over Am7   # the groove
            1    E5
            1&   E5, E8   # lazily
            2    A5, Ax
            3-4  D4+G5 pluck

            section Turnaround
            bar 2 = bar 1
            4    A5

            bar 3 over D9, Am7 at 4
            1-4  rest
            repeat end
            """;

    @Test
    void onlyTheEventsOfTheCountChange() {
        assertThat(edited(new Edit.Events(1, count("1&"), "E7*2, D5 pop")))
                .isEqualTo(TEXT.replace("1&   E5, E8   # lazily", "1&   E7*2, D5 pop   # lazily"));
    }

    @Test
    void aCopiedCountGetsALineOfItsOwnInOrder() {
        assertThat(edited(new Edit.Events(2, count("2"), "G5")))
                .isEqualTo(TEXT.replace("bar 2 = bar 1\n", "bar 2 = bar 1\n2    G5\n"));
    }

    @Test
    void typedLineEndsCannotBreakALine() {
        assertThat(edited(new Edit.Events(2, count("4"), " A5,\n A7 ")))
                .isEqualTo(TEXT.replace("4    A5\n", "4    A5, A7\n"));
    }

    @Test
    void whatIsStruckOneWayInSomeBarsIsStruckAnotherWay() {
        String text = """
                bar 1
                1    E5 slap
                2    D5 pop, E5 slap "slap it"
                3-4  D4+G5 slap   # slap

                bar 2 = bar 1

                bar 3
                1-4  E3 slap
                """;
        String struck = text.replace("E5 slap\n", "E5 thumb\n")
                .replace("E5 slap \"", "E5 thumb \"")
                .replace("G5 slap ", "G5 thumb ");
        assertThat(LineEdit.apply(text, new Edit.Exchange(1, 2, Technique.SLAP, Technique.THUMB)))
                .isEqualTo(struck);
        String alone = LineEdit.apply(text, new Edit.Exchange(1, 1, Technique.SLAP, Technique.THUMB));
        assertThat(LineText.read(alone).line().bar(1).notes())
                .isEqualTo(LineText.read(struck).line().bar(1).notes());
        assertThat(LineText.read(alone).line().bar(2).notes())
                .as("the bar that took it over sounds as before")
                .isEqualTo(LineText.read(text).line().bar(2).notes());
        assertThat(LineEdit.of(text, new Edit.Exchange(1, 3, Technique.TAP, Technique.SLAP)))
                .isEmpty();
    }

    @Test
    void aCountMoreSplitsAFigureWithoutChangingTheSound() {
        String after = edited(new Edit.AddCount(1, count("2&")));
        assertThat(after).isEqualTo(TEXT.replace("2    A5, Ax\n", "2    A5\n2&   Ax\n"));
        assertThat(LineText.read(after).line()).isEqualTo(LineText.read(TEXT).line());
    }

    @Test
    void aCountMoreHoldsALongNoteOn() {
        String after = edited(new Edit.AddCount(1, count("4")));
        assertThat(after).isEqualTo(TEXT.replace("3-4  D4+G5 pluck\n", "3    D4+G5 pluck\n4    hold\n"));
        assertThat(LineText.read(after).problems()).isEmpty();
        assertThat(LineText.read(after).line().bar(1).notes())
                .isEqualTo(LineText.read(TEXT).line().bar(1).notes());
    }

    @Test
    void aCountInsideAnUnevenFigureIsLeftAlone() {
        assertThat(LineEdit.of("bar 1\n1    E5, E7, E8\n2-4  rest\n", new Edit.AddCount(1, count("1&"))))
                .isEmpty();
    }

    @Test
    void theCountBeforeFillsTheTimeOfOneThatGoes() {
        assertThat(edited(new Edit.RemoveCount(1, count("2"))))
                .isEqualTo(TEXT.replace("1&   E5, E8   # lazily\n2    A5, Ax\n", "1&-2  E5, E8   # lazily\n"));
        assertThat(edited(new Edit.RemoveCount(1, count("1&"))))
                .isEqualTo(TEXT.replace("1&   E5, E8   # lazily\n", ""));
        assertThat(edited(new Edit.RemoveCount(3, count("1")))).isEqualTo(TEXT);
    }

    @Test
    void aStepIntoSilenceLeavesTheSilenceAroundIt() {
        assertThat(edited(new Edit.Step(3, count("2"), Fraction.of(1, 8), "E5")))
                .isEqualTo(TEXT.replace("1-4  rest\n", "1    rest\n2    E5\n3-4  rest\n"));
    }

    @Test
    void stepsOnTheOffbeatShareTheBeat() {
        String one = edited(new Edit.Step(3, count("1"), Fraction.of(1, 8), "E5"));
        String two = LineEdit.apply(one, new Edit.Step(3, count("1&"), Fraction.of(1, 8), "E8 slap"));
        assertThat(two).isEqualTo(TEXT.replace("1-4  rest\n", "1    E5\n1&   E8 slap\n2-4  rest\n"));
        assertThat(LineText.read(two).problems()).isEmpty();
    }

    @Test
    void aStepReplacesTheEventThatBeginsThere() {
        assertThat(edited(new Edit.Step(1, count("2&"), Fraction.of(1, 8), "D3")))
                .isEqualTo(TEXT.replace("2    A5, Ax", "2    A5, D3"));
    }

    @Test
    void aStepAtOneOfSeveralCountsOfALineChangesNothing() {
        String several = "bar 1\n1 3  E5\n2 4  E7\n";
        for (String at : List.of("1", "3", "3&", "4")) {
            assertThat(LineEdit.apply(several, new Edit.Step(1, count(at), Fraction.of(1, 8), "D3")))
                    .as(at)
                    .isEqualTo(several);
        }
    }

    @Test
    void aBarMoreMovesTheNumbersAndCopiesBehindIt() {
        assertThat(edited(new Edit.AddBar(1)))
                .isEqualTo(TEXT.replace(
                                "3-4  D4+G5 pluck\n",
                                "3-4  D4+G5 pluck\n\nbar 2\n1    rest\n2    rest\n3    rest\n4    rest\n")
                        .replace("bar 2 = bar 1", "bar 3 = bar 1")
                        .replace("bar 3 over", "bar 4 over"));
        String copied = "bar 1\n1-4 E0\nbar 2\n1-4 E1\nbar 3 = bar 2\n";
        assertThat(LineEdit.apply(copied, new Edit.AddBar(1)))
                .isEqualTo(
                        "bar 1\n1-4 E0\n\nbar 2\n1   rest\n2   rest\n3   rest\n4   rest\nbar 3\n1-4 E1\nbar 4 = bar 3\n"
                                .replace("E0\n\n", "E0\n"));
    }

    @Test
    void aBarAfterARepeatStandsBehindItsSign() {
        assertThat(edited(new Edit.AddBar(3)))
                .isEqualTo(TEXT + "\nbar 4\n1    rest\n2    rest\n3    rest\n4    rest\n");
    }

    @Test
    void anEmptyTextGetsItsFirstBar() {
        assertThat(LineEdit.apply("", new Edit.AddBar(0)))
                .isEqualTo("bar 1\n1    rest\n2    rest\n3    rest\n4    rest\n");
        assertThat(LineEdit.apply("tempo 90", new Edit.AddBar(0)))
                .isEqualTo("tempo 90\n\nbar 1\n1    rest\n2    rest\n3    rest\n4    rest\n");
        assertThat(LineEdit.apply("meter 3/4\n", new Edit.AddBar(0)))
                .isEqualTo("meter 3/4\n\nbar 1\n1    rest\n2    rest\n3    rest\n");
    }

    @Test
    void aBarThatGoesIsWrittenOutWhereItWasCopied() {
        String after = edited(new Edit.DeleteBar(1));
        assertThat(after)
                .startsWith("# first try\ntitle   Lantern Street\ntempo 96\n\nsection Turnaround\nbar 1 over Am7\n");
        var before = LineText.read(TEXT).line();
        var line = LineText.read(after).line();
        assertThat(LineText.read(after).problems()).isEmpty();
        assertThat(line.bar(1).notes()).isEqualTo(before.bar(2).notes());
        assertThat(line.bar(2)).isEqualTo(before.bar(3));
    }

    @Test
    void signsAroundABarThatGoesStay() {
        assertThat(edited(new Edit.DeleteBar(3))).isEqualTo(TEXT.replace("bar 3 over D9, Am7 at 4\n1-4  rest\n", ""));
    }

    @Test
    void repeatedBarsStandBehindTheLastAsTheBarsThatTheyRepeat() {
        assertThat(edited(new Edit.Repeat(1, 2)))
                .isEqualTo(TEXT.replace("4    A5\n\nbar 3", "4    A5\n\nbar 3 = bar 1\n\nbar 4 = bar 2\n\nbar 5"));
        assertThat(LineEdit.apply("bar 1\n1-4 E0\nbar 2 = bar 1\n", new Edit.Repeat(2, 2)))
                .isEqualTo("bar 1\n1-4 E0\nbar 2 = bar 1\nbar 3 = bar 2\n");
        assertThat(edited(new Edit.Repeat(2, 1))).isEqualTo(TEXT);
        assertThat(edited(new Edit.Repeat(2, 4))).isEqualTo(TEXT);
    }

    @Test
    void pastedBarsAreWrittenOutWithoutSignsAndSettings() {
        String after = edited(new Edit.Paste(1, TEXT, 2, 3));
        var before = LineText.read(TEXT).line();
        var line = LineText.read(after).line();
        assertThat(LineText.read(after).problems()).isEmpty();
        assertThat(line.bars()).hasSize(5);
        assertThat(line.bar(2).notes()).isEqualTo(before.bar(2).notes());
        assertThat(line.bar(2).changes().section()).isEmpty();
        assertThat(line.bar(2).copy()).isEmpty();
        assertThat(line.bar(3).chords()).isEqualTo(before.bar(3).chords());
        assertThat(line.bar(3).repeats().end()).isEmpty();
        assertThat(line.bar(4).copy()).contains(Copy.of(1));
        assertThat(line.bar(5)).isEqualTo(before.bar(3));
    }

    /**
     * The lowest string of a bass in dropped D sounds D1, a whole tone below E1, so its third fret is F1 where that of E is G1
     * (common practice, no source).
     */
    @Test
    void barsFromAStringOfAnotherPitchAreNotPasted() {
        String dropped = "strings D A D G\nbar 1\n1-4  s4f3\nbar 2\n1-4  A3\nbar 3\n1-4  s4x\n";
        String usual = "bar 1\n1-4  E1\n";
        assertThat(LineText.read(dropped).problems()).isEmpty();
        assertThat(LineEdit.of(usual, new Edit.Paste(1, dropped, 1, 1))).isEmpty();
        assertThat(LineEdit.of(dropped, new Edit.Paste(1, usual, 1, 1))).isEmpty();
        assertThat(LineEdit.of(
                        "strings E A D G C\nbar 1\n1-4  E1\n",
                        new Edit.Paste(1, "strings B E A D G\nbar 1\n1-4  E3\n", 1, 1)))
                .isEmpty();
        assertThat(LineEdit.of(usual, new Edit.Paste(1, dropped, 2, 2))).isNotEmpty();
        assertThat(LineEdit.of(usual, new Edit.Paste(1, dropped, 3, 3))).isNotEmpty();
    }

    /** What style leaves unsaid in one text is said in another; what does not fit its neck or its meter is refused. */
    @Test
    void barsOfAnotherLineArePastedAsTheySound() {
        String slapped = "style slap\nbar 1\n1-4  E5\nbar 2\n1-4  A24\n";
        assertThat(LineEdit.apply("bar 1\n1-4  E1\n", new Edit.Paste(1, slapped, 1, 1)))
                .isEqualTo("bar 1\n1-4  E1\n\nbar 2\n1-4  E5 slap\n");
        assertThat(LineEdit.of("frets 20\nbar 1\n1-4  E1\n", new Edit.Paste(1, slapped, 2, 2)))
                .isEmpty();
        assertThat(LineEdit.of("strings A\nbar 1\n1-4  A1\n", new Edit.Paste(1, slapped, 1, 1)))
                .isEmpty();
        assertThat(LineEdit.of("meter 3/4\nbar 1\n1-3  E1\n", new Edit.Paste(1, slapped, 1, 1)))
                .isEmpty();
    }

    @Test
    void aPassageMovesPlaceByPlaceWithItsChordsAndKeepsEverythingElse() {
        assertThat(edited(new Edit.Move(1, 2, new Shift(0, 2))))
                .isEqualTo(TEXT.replace("bar 1 over Am7", "bar 1 over Bm7")
                        .replace("1    E5\n", "1    E7\n")
                        .replace("E5, E8", "E7, E10")
                        .replace("A5, Ax", "A7, Ax")
                        .replace("D4+G5", "D6+G7")
                        .replace("4    A5", "4    A7"));
    }

    @Test
    void aBarThatIsTakenOverFromElsewhereSaysHowFarItMoved() {
        assertThat(edited(new Edit.Move(2, 2, new Shift(0, 2))))
                .isEqualTo(TEXT.replace("bar 2 = bar 1\n4    A5", "bar 2 = bar 1, two frets up\n4    A7"));
        String moved = "bar 1\n1-4 E5\nbar 2 as bar 1, two frets up over A\n";
        assertThat(LineEdit.apply(moved, new Edit.Move(2, 2, new Shift(0, -2))))
                .isEqualTo("bar 1\n1-4 E5\nbar 2 as bar 1 over G\n");
    }

    @Test
    void barsThatCopyWhatMovedSoundAsBefore() {
        String after = edited(new Edit.Move(1, 1, new Shift(0, 2)));
        var before = LineText.read(TEXT).line();
        var line = LineText.read(after).line();
        assertThat(line.bar(1).notes()).isNotEqualTo(before.bar(1).notes());
        assertThat(line.bar(2).notes()).isEqualTo(before.bar(2).notes());
        assertThat(line.bar(2).chords()).isEqualTo(before.bar(2).chords());
    }

    @Test
    void wordsThatNameAFretOrAPitchMoveAlong() {
        String text = "bar 1\n1-2  E5 hammer from 3 \"from 3\" as A\n3-4  E5 harmonic at 17 + A7\n";
        assertThat(LineEdit.apply(text, new Edit.Move(1, 1, new Shift(0, 2))))
                .isEqualTo("bar 1\n1-2  E7 hammer from 5 \"from 3\"\n3-4  E7 harmonic at 19 + A9\n");
        assertThat(LineEdit.apply("bar 1\n1-2  E5\n3-4  E hold\n", new Edit.Move(1, 1, new Shift(1, 0))))
                .isEqualTo("bar 1\n1-2  A5\n3-4  A hold\n");
        assertThat(LineEdit.apply("bar 1\n1-4  E5 as A\n", new Edit.Move(1, 1, new Shift(1, -5))))
                .isEqualTo("bar 1\n1-4  A0 as A\n");
    }

    @Test
    void theUpperFretOfATrillMovesAlong() {
        String text = "bar 1\n1-2  E5 trill to 6\n3-4  A7 trill  to  9 + D5 trill\n";
        String moved = "bar 1\n1-2  E8 trill to 9\n3-4  A10 trill  to  12 + D8 trill\n";
        assertThat(LineEdit.apply(text, new Edit.Move(1, 1, new Shift(0, 3)))).isEqualTo(moved);
        assertThat(LineEdit.apply(moved, new Edit.Move(1, 1, new Shift(0, -3)))).isEqualTo(text);
        String high = "bar 1\n1-4  E22 trill to 24\n";
        assertThat(LineEdit.apply(high, new Edit.Move(1, 1, new Shift(0, 1)))).isEqualTo(high);
    }

    @Test
    void whatWouldLeaveTheNeckIsNotMoved() {
        assertThat(edited(new Edit.Move(1, 1, new Shift(1, 0)))).isEqualTo(TEXT);
        assertThat(edited(new Edit.Move(1, 1, new Shift(0, -6)))).isEqualTo(TEXT);
        assertThat(edited(new Edit.Move(1, 1, Shift.NONE))).isEqualTo(TEXT);
        String held = "bar 1\n1-4  E5\nbar 2\n1-4  E hold\n";
        assertThat(LineEdit.apply(held, new Edit.Move(1, 1, new Shift(1, 0)))).isEqualTo(held);
    }

    @Test
    void aBarThatIsTakenOverLosesItsOwnCounts() {
        assertThat(edited(new Edit.TakeOver(3, "bar 1, one string higher")))
                .isEqualTo(TEXT.replace(
                        "bar 3 over D9, Am7 at 4\n1-4  rest\n",
                        "bar 3 = bar 1, one string higher over D9, Am7 at 4\n"));
        assertThat(edited(new Edit.TakeOver(2, "= bar 1"))).isEqualTo(TEXT.replace("bar 1\n4    A5\n", "bar 1\n"));
        assertThat(edited(new Edit.TakeOver(2, "as 1 counts 1-2")))
                .isEqualTo(TEXT.replace("bar 1\n4    A5\n", "bar 1 counts 1-2\n"));
        assertThat(LineEdit.apply("bar\n1-4 E1\nbar\n1-2 E2\n# why\n3-4 E3", new Edit.TakeOver(2, "1")))
                .isEqualTo("bar\n1-4 E1\nbar = bar 1\n# why");
        assertThat(edited(new Edit.TakeOver(2, "the first"))).isEqualTo(TEXT);
    }

    @Test
    void aBarThatWasTakenOverIsWrittenOutAgain() {
        String after = edited(new Edit.TakeOver(2, " "));
        assertThat(LineText.read(after).line().bar(2).copy()).isEmpty();
        assertThat(LineText.read(after).line().bar(2).notes())
                .isEqualTo(LineText.read(TEXT).line().bar(2).notes());
        assertThat(edited(new Edit.TakeOver(1, " "))).isEqualTo(TEXT);
    }

    @Test
    void aMovedCopyShowsWhatItPlaysCountByCount() {
        var bar = Outline.of("bar 1\n1-2  E5\n3-4  E7\nbar 2 as bar 1, one string higher\n3-4  rest\n")
                .bars()
                .get(1);
        assertThat(bar.taken()).isEqualTo("bar 1, one string higher");
        assertThat(bar.moved()).extracting(Outline.CountPart::events).containsExactly("A5", "rest");
    }

    @Test
    void chordsAreChangedAddedAndTakenOut() {
        assertThat(edited(new Edit.Chords(3, "G7"))).isEqualTo(TEXT.replace("over D9, Am7 at 4", "over G7"));
        assertThat(edited(new Edit.Chords(2, "Em"))).isEqualTo(TEXT.replace("= bar 1\n", "= bar 1 over Em\n"));
        assertThat(edited(new Edit.Chords(1, ""))).isEqualTo(TEXT.replace("bar 1 over Am7 ", "bar 1 "));
        assertThat(LineEdit.apply("bar 1 over A until 3\n1-2 E0\n", new Edit.Chords(1, "B")))
                .isEqualTo("bar 1 over B until 3\n1-2 E0\n");
    }

    @Test
    void settingsKeepTheirColumnAndTheirPlace() {
        assertThat(edited(new Edit.Setting("tempo", "104"))).isEqualTo(TEXT.replace("tempo 96", "tempo 104"));
        assertThat(edited(new Edit.Setting("meter", "6/8")))
                .isEqualTo(TEXT.replace("Lantern Street\n", "Lantern Street\nmeter   6/8\n"));
        assertThat(edited(new Edit.Setting("tempo", " "))).isEqualTo(TEXT.replace("tempo 96\n", ""));
        assertThat(LineEdit.apply("bar 1\n1-4 E0\n", new Edit.Setting("tempo", "90")))
                .isEqualTo("tempo   90\n\nbar 1\n1-4 E0\n");
    }

    @Test
    void windowsLineEndsStayWhatTheyAre() {
        String text = TEXT.replace("\n", "\r\n");
        for (var edit : java.util.List.of(
                new Edit.Events(2, count("2"), "G5"),
                new Edit.AddBar(1),
                new Edit.DeleteBar(1),
                new Edit.AddCount(1, count("4")),
                new Edit.Repeat(1, 2),
                new Edit.Paste(1, TEXT, 3, 3),
                new Edit.Move(1, 2, new Shift(0, 2)),
                new Edit.TakeOver(2, "bar 1"))) {
            assertThat(LineEdit.apply(text, edit)).isEqualTo(edited(edit).replace("\n", "\r\n"));
        }
    }

    @Test
    void whatIsNotThereIsNotChanged() {
        assertThat(edited(new Edit.DeleteBar(9))).isEqualTo(TEXT);
        assertThat(edited(new Edit.Events(1, count("5"), "E5"))).isEqualTo(TEXT);
        assertThat(edited(new Edit.Setting("volume", "11"))).isEqualTo(TEXT);
    }

    private static String edited(Edit edit) {
        return LineEdit.apply(TEXT, edit);
    }

    private static Count count(String text) {
        return Count.parse(text).orElseThrow();
    }
}
