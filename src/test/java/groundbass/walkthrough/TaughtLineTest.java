package groundbass.walkthrough;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.NoteAt;
import groundbass.score.Place.Fretted;
import groundbass.score.Position;
import groundbass.text.Messages;
import groundbass.walkthrough.words.Naming;
import java.util.List;
import java.util.Locale;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * What a teacher says of the lines of the demonstration, read from the lines themselves: rhythms that begin with a rest
 * are told, the hand lies where fingers that are written put it, and a note is named by where it leads.
 */
class TaughtLineTest {
    private static final List<Line> DEMO = Demonstration.lines();

    /** Fourteen of 32 beats of lesson 2 begin with a rest and go on alike: not most of them, and never told as usual. */
    @Test
    void aRhythmThatBeginsWithARestIsToldWithItsBeat() {
        var told = told(1);
        assertThat(told.get(0)).doesNotContain("Usually");
        assertThat(told)
                .anyMatch(text -> text.startsWith("Bar 1, beat 2")
                        && text.contains(", in on 2e, three semiquavers: play G (D string, fret 5"))
                .anyMatch(text -> text.startsWith("Bar 4, beat 3, in on 3e, three semiquavers: "));
    }

    /** 16 of 36 beats of lesson 5 are two quavers, 28 of 48 would not do either; in lesson 3 more than two thirds are alike. */
    @Test
    void whatIsUsualIsTrueOfTwoThirdsOfTheBeats() {
        assertThat(told(4).get(0)).doesNotContain("Usually");
        assertThat(told(0).get(0)).doesNotContain("Usually");
        assertThat(told(2).get(0)).contains("Usually a beat is a crotchet and a quaver.");
    }

    /** A finger lies as many frets above the index as it is fingers away, in a double stop at most one nearer (common practice, no source). */
    @Test
    void theHandLiesWhereWrittenFingersPutIt() {
        for (var line : DEMO) {
            var hand = said(line);
            for (int i = 0; i < line.bars().size(); i++) {
                for (var note : line.bars().get(i).notes()) {
                    var at = NoteAt.of(i + line.firstNumber(), note).position();
                    boolean said = hand.floorEntry(at) != null && !isCopy(line, at);
                    if (said
                            && note.ornaments().finger().isPresent()
                            && note.arrival().isEmpty()) {
                        int finger = note.ornaments().finger().getAsInt();
                        assertThat(fret(note) - hand.floorEntry(at).getValue())
                                .as("%s %s", line.header().title(), at)
                                .isBetween(finger == 3 ? 1 : finger - 1, finger - 1);
                    }
                }
            }
        }
    }

    /** Lesson 1, bar 2 beat 4: index on 1; bar 3 beat 4: index on 2. Lesson 2, bar 8: middle finger on 3, then ring on 5. */
    @Test
    void theHandMovesBeforeTheNotes() {
        assertThat(told(0))
                .anyMatch(text -> text.startsWith("Bar 3, beat 4") && text.contains("index finger at fret 2"));
        assertThat(told(1))
                .anyMatch(text -> text.startsWith(
                        "Bar 1, over Gm7. Hand in position, index finger at fret 3, one finger per fret. "))
                .anyMatch(text -> text.startsWith("Bar 5, over Bbmaj7, loud (f). Shift: index finger at fret 6. "))
                .anyMatch(text -> text.startsWith("Bar 8, over C9. Shift: index finger at fret 2. "))
                .anyMatch(text ->
                        text.startsWith("Bar 8, beat 4") && text.contains(", shift (index finger at fret 3): "));
        assertThat(german(0)).noneMatch(text -> text.contains("Die Hand bleibt"));
        assertThat(german(1)).anyMatch(text -> text.contains(". Lagenwechsel: Zeigefinger in den 6. Bund. "));
    }

    /** Over A7 the raised fourth of E leads into the root of B minor; over E minor the same pitch is the blue note. */
    @Test
    void aLeadingNoteIsRaisedAndABlueNoteIsNot() {
        assertThat(told(0))
                .anyMatch(text -> text.startsWith("Bar 6") && text.contains("A sharp leads up to B."))
                .anyMatch(text -> text.startsWith("Bar 2") && text.contains("B flat leads up to B."));
        assertThat(german(0))
                .anyMatch(text -> text.startsWith("Takt 6") && text.contains("Das Ais führt hinauf zum H."));
    }

    /** Over A7 A, C sharp, E, F sharp and G rise in bar 1 of lesson 3, then F sharp and E fall: 1 3 5 6 b7 6 5. */
    @Test
    void aBarIsToldFirstByWhereItGoes() {
        assertThat(told(2))
                .anyMatch(
                        text -> text.startsWith("Bar 1, over A7. ")
                                && text.contains(
                                        "Between 3 and 12 you go from the root by way of the third, the fifth and the sixth up to the flat seventh, then by way of the sixth down to the fifth."));
        assertThat(german(2))
                .anyMatch(
                        text -> text.startsWith("Takt 1, über A7. ")
                                && text.contains(
                                        "Zwischen 3 und 12 geht es vom Grundton über die Terz, die Quinte und die Sexte hinauf zur kleinen Septime, dann über die Sexte hinab zur Quinte."));
        assertThat(told(5))
                .anyMatch(text ->
                        text.contains("from the root by way of the flat seventh and the fifth down to the third."));
    }

    /** Bar 3 of lesson 5 over G7: G, B, D from count 3, and B, G back to count 7. */
    @Test
    void aFigureIsToldFromWhereItTurnsToWhereItTurns() {
        assertThat(told(4))
                .anyMatch(
                        text -> text.startsWith("Bar 3, over G7")
                                && text.contains(
                                        "Between 3 and 7 you go from the root by way of the third up to the fifth, and the same way back."));
        assertThat(german(4))
                .anyMatch(text -> text.startsWith("Takt 3, über G7")
                        && text.contains("über die Terz hinauf zur Quinte und denselben Weg zurück."));
    }

    /** Bar 8 of lesson 1 over E minor has E, B and D: root, fifth and seventh of Em7 (rule: chord-tones). */
    @Test
    void aBarThatJumpsIsToldByItsChordTones() {
        assertThat(told(0))
                .anyMatch(text ->
                        text.startsWith("Bar 8, over Em7. Nothing but the root, the fifth and the flat seventh. "));
        assertThat(german(0)).anyMatch(text -> text.contains("Nur Grundton, Quinte und kleine Septime."));
    }

    /** How each is done: common practice, no source. */
    @Test
    void aTechniqueIsExplainedWhereItIsNew() {
        for (int lesson : new int[] {0, 1, 3}) {
            assertThat(
                            told(lesson).stream()
                                    .filter(
                                            text -> text.contains(
                                                    "the hammer-on. Drop the finger onto the string right behind the fret; the plucking hand waits.")))
                    .hasSize(1);
        }
        assertThat(told(0).get(0)).contains("stop if anything hurts");
        assertThat(german(0).get(0)).contains("hör auf, wenn etwas weh tut");
    }

    /** Lesson 4, bar 8: from fret 7 the index finger comes down on fret 2. Lesson 2, bar 4 beat 4 is the fastest. */
    @Test
    void aHardPlaceIsToldWithItsCure() {
        assertThat(told(3))
                .anyMatch(text -> text.startsWith("Bar 8, beat 4")
                        && text.contains("Practise just these two notes, slowly")
                        && text.endsWith("and come down with the index finger."));
        assertThat(told(1)).anyMatch(text -> text.startsWith("Bar 4, beat 4") && text.contains("Loop this beat alone"));
    }

    /** Lesson 2, bar 1: from the D string down to the A string at beat 3, from the E string over the A string in beat 4. */
    @Test
    void thePluckingHandIsToldWhereItCrosses() {
        assertThat(told(1))
                .anyMatch(
                        text -> text.startsWith("Bar 1, beat 3")
                                && text.endsWith(
                                        "From the D string to the A string use the same finger: after its stroke it lies on the lower string and plays on from there."))
                .anyMatch(text -> text.startsWith("Bar 1, beat 4")
                        && text.contains("The plucking hand leaps over a string here"));
        assertThat(told(0)).noneMatch(text -> text.contains("The plucking hand leaps"));
    }

    /** From index at 3, one finger a fret, ring at 5 goes without saying; ring at 3 beside index at 2 does not. */
    @Test
    void aFingerIsNamedWhereItIsNotTheOneThatLiesThere() {
        assertThat(told(1))
                .anyMatch(text -> text.startsWith("Bar 1, beat 2") && text.contains("G (D string, fret 5);"))
                .anyMatch(text -> text.startsWith("Bar 8, beat 2") && text.contains("(G string, fret 3, ring finger)"));
    }

    /** Three of four bars of lesson 4's third part are those of its first: nobody learns them twice. */
    @Test
    void aPartThatWasPlayedBeforeIsNotLearntAgain() {
        assertThat(told(3).get(0)).endsWith("Learn “Keel”, then “Ballast”, then all of it.");
    }

    @Test
    void nothingIsLeftOutThatKeepsTheHandMoving() {
        for (int i = 0; i < DEMO.size(); i++) {
            assertThat(told(i).get(0)).doesNotContain("without");
        }
    }

    /** In lesson 1 one beat of four is as dense as the densest; in lesson 2 one beat alone is, and sixteenths are everywhere. */
    @Test
    void aPlaceIsHardOnlyWhereOthersAreNot() {
        assertThat(told(0).get(0)).doesNotContain("Give most of your time");
        assertThat(told(1).get(0)).contains("Give most of your time to bar 4, beat 4, where the notes come thickest.");
        assertThat(told(4).get(0)).contains("to bar 9, beat 1, where it is fastest");
    }

    @Test
    void chordsHaveTheNamesOfTheNotesBesideThem() {
        assertThat(german(3)).anyMatch(text -> text.startsWith("Takt 1, über Hm7 (auf dem Blatt Bm7)"));
        assertThat(german(5)).anyMatch(text -> text.contains("über B6 (auf dem Blatt Bb6)"));
        var international = Walkthrough.of(DEMO.get(3), Messages.of(Locale.GERMAN), Naming.INTERNATIONAL);
        assertThat(international)
                .extracting(Step::text)
                .anyMatch(text -> text.contains("über Bm7"))
                .noneMatch(text -> text.contains("Blatt"));
        assertThat(told(5)).anyMatch(text -> text.startsWith("Bar 7, over F/C, then D7 from 3"));
        assertThat(german(5)).anyMatch(text -> text.startsWith("Takt 7, über F/C, ab 3 D7"));
    }

    @Test
    void oneNoteIsNoShape() {
        assertThat(told(1))
                .anyMatch(text ->
                        text.startsWith("Bar 5, over Bbmaj7") && text.contains("play B flat (E string, fret 6)"));
    }

    @Test
    void whatIsPlayedAgainIsToldOnceInBrief() {
        var brief = Walkthrough.of(DEMO.get(2), Messages.of(Locale.ENGLISH), Naming.USUAL, Depth.BRIEF);
        assertThat(brief)
                .extracting(Step::text)
                .anyMatch(text ->
                        text.startsWith("Bar 7, over A7/E: 1 and 3 play E (A 7); 4 C sharp (A 4); 6 and 7 A (E 5); "));
    }

    @Test
    void britishMusiciansSwingQuavers() {
        assertThat(told(5).get(0)).contains("of two quavers the first is long");
    }

    /** Fret of the index finger from a moment on, as it was said. */
    private static TreeMap<Position, Integer> said(Line line) {
        var index = Pattern.compile("index finger at fret (\\d+)");
        var within = Pattern.compile("index finger at fret \\d+\\) from");
        var hand = new TreeMap<Position, Integer>();
        for (var step : steps(line)) {
            var matcher = index.matcher(step.text());
            if (matcher.find() && !within.matcher(step.text()).find()) {
                hand.put(step.passage().from(), Integer.parseInt(matcher.group(1)));
            }
        }
        return hand;
    }

    private static boolean isCopy(Line line, Position at) {
        return steps(line).stream()
                .skip(1)
                .filter(step -> step.passage().contains(at))
                .anyMatch(step -> step.text().contains("as bar") || step.text().contains("the same as"));
    }

    private static int fret(Note note) {
        return note.place() instanceof Fretted place ? place.fret() : 0;
    }

    private static List<Step> steps(Line line) {
        return Walkthrough.of(line, Messages.of(Locale.ENGLISH), Naming.BRITISH);
    }

    private static List<String> told(int lesson) {
        return steps(DEMO.get(lesson)).stream().map(Step::text).toList();
    }

    private static List<String> german(int lesson) {
        return Walkthrough.of(DEMO.get(lesson), Messages.of(Locale.GERMAN)).stream()
                .map(Step::text)
                .toList();
    }
}
