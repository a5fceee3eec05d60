package groundbass.engraving;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.Method;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;

/**
 * Which test proves which rule of engraving: REFERENCE section 3, every rule by its number there (the points of 3.1
 * counted from the first). A rule that says nothing of a drawing says why it has no test here.
 */
class RuleIndexTest {
    /** How many rules each section has. */
    private static final Map<String, Integer> SECTIONS = new LinkedHashMap<>();

    static {
        SECTIONS.put("3.1", 5);
        SECTIONS.put("3.2", 10);
        SECTIONS.put("3.3", 13);
        SECTIONS.put("3.4", 8);
        SECTIONS.put("3.5", 7);
        SECTIONS.put("3.6", 3);
        SECTIONS.put("3.7", 8);
        SECTIONS.put("3.8", 5);
        SECTIONS.put("3.9", 10);
        SECTIONS.put("3.10", 8);
        SECTIONS.put("3.11", 13);
        SECTIONS.put("3.12", 1);
        SECTIONS.put("3.13", 1);
    }

    private static final String RULES = """
            3.1.1   engraving.EngravingRulesTest#openEStandsOneLedgerBelowWithAStemOfAnOctave
            3.1.2   engraving.EngravingRulesTest#theSignatureOfEMajorStandsAtItsPlaces
            3.1.3   engraving.EngravingRulesTest#lowBHasTwoLedgersAndAStemToTheMiddleLine
            3.1.4   engraving.SignRulesTest#ledgerLinesReachBeyondTheHead
            3.1.5   engraving.OttavasTest#aLongHighPassageIsWrittenAnOctaveLower
            3.2.1   engraving.StemRulesTest#stemsPointAwayFromTheMiddleLine
            3.2.2   engraving.StemRulesTest#theFarthestNoteOfAChordDecides
            3.2.3   engraving.StemRulesTest#theFarthestNoteUnderABeamDecidesForAll
            3.2.4   engraving.EngravingRulesTest#openEStandsOneLedgerBelowWithAStemOfAnOctave
            3.2.5   engraving.EngravingRulesTest#theOctaveOfTheHighestStringHasThreeLedgersAndAStemToTheMiddleLine
            3.2.6   engraving.StemRulesTest#ofTwoVoicesTheUpperPointsUpAndTheLowerDown
            3.2.7   engraving.StemRulesTest#stemsStandAtTheSideOfTheirHead
            3.2.8   engraving.EngravingRulesTest#linesHaveTheFontsThickness
            3.2.9   engraving.StemRulesTest#flagsHangFromTheEndOfTheStem
            3.2.10  engraving.StemRulesTest#aDotStandsRightOfTheFlag
            3.3.1   engraving.EngravingRulesTest#beamsStackAtThreeQuartersOfASpace
            3.3.2   engraving.EngravingRulesTest#theShortestStemUnderABeamKeepsItsLength
            3.3.3   engraving.EngravingRulesTest#beamsLieLevelWhereTheyShould
            3.3.4   engraving.EngravingRulesTest#beamsRiseWithTheirNotesButNeverSteeply
            3.3.5   engraving.StemRulesTest#beamsInsideTheStaffTouchALine
            3.3.6   writing.BeamingTest#eighthsJoinOverMoreThanABeatOnlyAmongEighths
            3.3.7   writing.BeamingTest#beamsJoinAsTheHandbooksTableSays
            3.3.8   writing.BeamingTest#groupedMetresBeamByGroupsAndCutTimeByHalves
            3.3.9   writing.BeamingTest#groupedMetresBeamByGroupsAndCutTimeByHalves
            3.3.10  writing.BeamingTest#amongThirtySecondsOnlyTheFirstBeamCrossesAnEighth
            3.3.11  writing.BeamingTest#aPartialBeamInTheMiddlePointsToItsPair
            3.3.12  writing.BeamingTest#aBeamCoversARestOnlyBetweenNotesOfOneBeat
            3.3.13  writing.BeamingTest#beamsBreakWhereATupletEnds
            3.4.1   writing.BarLinesTest#aNoteHeldOverBarLinesIsTiedInEachBar
            3.4.2   writing.NoteSplittingTest#theMiddleOfABarShows
            3.4.3   writing.NoteSplittingTest#aNoteOnAnOffSixteenthShowsTheNextBeat
            3.4.4   writing.NoteSplittingTest#theFewestShapesCutAtTheStrongerPlaceWin
            3.4.5   engraving.StemRulesTest#aSlurLiesOnTheHeadsSide
            3.4.6   engraving.StemRulesTest#aTieLiesOppositeTheStem
            3.4.7   writing.AccidentalsTest#aTieNeedsNoSignAndLeavesNone
            3.4.8   engraving.TabRulesTest#numbersSayWhatTheNoteIs
            3.5.1   engraving.SignRulesTest#aWholeBarsRestStandsInItsMiddle
            3.5.2   writing.NoteSplittingTest#restsShowTheBeat
            3.5.3   writing.NoteSplittingTest#restsShowTheBeat
            3.5.4   writing.NoteSplittingTest#compoundRestsShowTheirBeat
            3.5.5   writing.NoteSplittingTest#restsShowTheBeat
            3.5.6   engraving.SignRulesTest#restsHangSitAndStandWhereTheyShould
            3.5.7   engraving.LongRestsTest#whatFallsWithinKeepsThemApart
            3.6.1   engraving.SignRulesTest#dotsStandInSpaces
            3.6.2   engraving.SignRulesTest#eachHeadOfAChordHasItsDot
            3.6.3   engraving.SignRulesTest#eachHeadOfAChordHasItsDot
            3.7.1   writing.AccidentalsTest#aSignHoldsForItsBar
            3.7.2   writing.AccidentalsTest#theBarLineCancelsAndACourtesySignSaysSoOnce
            3.7.3   writing.AccidentalsTest#anotherOctaveNeedsItsOwnSign
            3.7.4   engraving.SignRulesTest#aSignStandsCloseToItsHead
            3.7.5   engraving.SignRulesTest#signsOfAChordStandInColumnsWhereTheyMustAndInOneWhereTheyCan
            3.7.6   writing.AccidentalsTest#deadNotesTakeNoSign
            3.7.7   writing.AccidentalsTest#aPlainSharpCancelsADoubleSharp
            3.7.8   - of an exchange format, not of a drawing
            3.8.1   engraving.SignRulesTest#aBeamedTripletNeedsNoBracket
            3.8.2   engraving.SignRulesTest#otherTupletsHaveABracketWithHooks
            3.8.3   writing.TupletsTest#sharesAreDrawnInTheTimeOfTheNextLowerPowerOfTwo
            3.8.4   writing.WritingPropertiesTest#shapesLastWhatTheySay
            3.8.5   - of ticks, not of a drawing
            3.9.1   engraving.EngravingRulesTest#aQuarterIsTwoAndAQuarterTimesAsWideAsASixteenth
            3.9.2   engraving.SpacingRulesTest#columnsNeverStandNearerThanWhatIsInThem
            3.9.3   engraving.SpacingRulesTest#likeDurationsAreLikeWide
            3.9.4   engraving.LayoutTest#aLastSystemOfOneShortBarIsNotStretched
            3.9.5   engraving.SpacingRulesTest#numbersStandUnderTheirHeads
            3.9.6   engraving.SpacingRulesTest#aSystemOpensWithItsDistances
            3.9.7   engraving.SpacingRulesTest#notesKeepTheirDistanceFromTheBarline
            3.9.8   - a bass part keeps its clef; what is too high stands under an octave sign
            3.9.9   engraving.SpacingRulesTest#stavesHaveTheirUsualSize
            3.9.10  engraving.LayoutTest#eighthsStandThreeOrFourBarsToASystem
            3.10.1  engraving.BarRulesTest#theLastBarlineIsThinAndThick
            3.10.2  engraving.BarRulesTest#repeatDotsStandInTheMiddleSpaces
            3.10.3  score.PassesTest#theFirstRepeatStartMayBeLeftOut
            3.10.4  score.PassesTest#endingsTakeTheirPasses
            3.10.5  engraving.BarRulesTest#theLastEndingStaysOpen
            3.10.6  engraving.BarRulesTest#aSimileStandsInTheMiddleOfAnEmptyBar
            3.10.7  - line text has no da capo, no dal segno and no coda
            3.10.8  engraving.BarRulesTest#barNumbersStandOverTheClefOfLaterSystems
            3.11.1  engraving.TabRulesTest#everyStringHasItsLine
            3.11.2  engraving.TabRulesTest#noLineRunsThroughANumber
            3.11.3  engraving.TabRulesTest#numbersHaveTheirSize
            3.11.4  engraving.TabRulesTest#fourLinesHaveTheFourLineClef
            3.11.5  engraving.TabRulesTest#aloneItShowsItsRhythmBelow
            3.11.6  engraving.TabRulesTest#underNotationItHasNeitherRhythmNorKeyNorTime
            3.11.7  engraving.TabRulesTest#numbersSayWhatTheNoteIs
            3.11.8  engraving.TabRulesTest#numbersSayWhatTheNoteIs
            3.11.9  engraving.TabRulesTest#lettersStandInOneRow
            3.11.10 engraving.TabRulesTest#slidesLeanTheWayOfThePitch
            3.11.11 engraving.TabRulesTest#chordsStandInOneColumn
            3.11.12 engraving.TabRulesTest#barlinesJoinTheStaves
            3.11.13 engraving.SpacingRulesTest#theStavesStandApart
            3.12.1  engraving.EngravingRulesTest#linesHaveTheFontsThickness
            3.13.1  engraving.EngravingRulesTest#outlinesHaveThePublishedBoxes
            """;

    private static Map<String, String> index() {
        var index = new LinkedHashMap<String, String>();
        RULES.lines().forEach(line -> {
            var parts = line.split(" +", 2);
            assertThat(index.put(parts[0], parts[1])).as(parts[0] + " twice").isNull();
        });
        return index;
    }

    @Test
    void everyRuleIsInTheIndex() {
        var rules = SECTIONS.entrySet().stream()
                .flatMap(section ->
                        IntStream.rangeClosed(1, section.getValue()).mapToObj(rule -> section.getKey() + "." + rule))
                .toList();
        assertThat(List.copyOf(index().keySet())).isEqualTo(rules);
    }

    @Test
    void everyRuleHasATestThatExists() {
        index().forEach((rule, test) -> {
            if (!test.startsWith("- ")) {
                assertThat(isTest(test)).as(rule + " " + test).isTrue();
            }
        });
    }

    private static boolean isTest(String name) {
        int hash = name.indexOf('#');
        try {
            return Arrays.stream(Class.forName("groundbass." + name.substring(0, hash))
                            .getDeclaredMethods())
                    .filter(method -> method.getName().equals(name.substring(hash + 1)))
                    .anyMatch(RuleIndexTest::isTest);
        } catch (ClassNotFoundException e) {
            return false;
        }
    }

    private static boolean isTest(Method method) {
        return Stream.of(Test.class, ParameterizedTest.class).anyMatch(method::isAnnotationPresent);
    }
}
