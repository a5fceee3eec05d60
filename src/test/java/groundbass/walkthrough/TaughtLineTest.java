package groundbass.walkthrough;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
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
                .contains("Bar 1, beat 2: rest on 2; then from 2e, play G (D string, fret 5); a dead note; F (fret 3).")
                .anyMatch(text -> text.startsWith("Bar 4, beat 3: rest on 3; then from 3e, play C (A string, fret 3)"));
    }

    /** 16 of 36 beats of lesson 5 are two quavers, 28 of 48 would not do either; in lesson 3 more than two thirds are alike. */
    @Test
    void whatIsUsualIsTrueOfTwoThirdsOfTheBeats() {
        assertThat(told(4).get(0)).doesNotContain("Usually");
        assertThat(told(0).get(0)).doesNotContain("Usually");
        assertThat(told(2).get(0)).contains("Most beats are played as a crotchet and a quaver.");
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
                .anyMatch(text ->
                        text.startsWith("Bar 3, beats 1 to 3") && text.endsWith("Then shift: index finger at fret 2."));
        assertThat(told(1))
                .anyMatch(text -> text.startsWith(
                        "Bar 1, over Gm7. Hand in position, index finger at fret 3, one finger per fret. "))
                .anyMatch(text -> text.startsWith("Bar 5, over Bbmaj7, loud (f). Shift: index finger at fret 6. "))
                .anyMatch(text -> text.startsWith("Bar 8, over C9. Shift: index finger at fret 2. "))
                .anyMatch(
                        text -> text.startsWith(
                                "Bar 8, shift before the last two notes: index finger at fret 3. Beat 4: keep holding until 4e"));
        assertThat(german(0)).noneMatch(text -> text.contains("Die Hand bleibt"));
        assertThat(german(1)).anyMatch(text -> text.contains(". Lagenwechsel: Zeigefinger in den 6. Bund. "));
    }

    /** Over A7 the raised fourth of E leads into the root of B minor; over E minor the same pitch is on the way from A to B. */
    @Test
    void aLeadingNoteIsRaisedAndANoteOnTheWayIsNot() {
        assertThat(told(0))
                .anyMatch(text -> text.startsWith("Bar 6") && text.contains("A sharp leads up to B."))
                .anyMatch(text -> text.startsWith("Bar 2, beat 4")
                        && text.endsWith("B flat (fret 1); B (fret 2). They go up by half steps."));
        assertThat(german(0))
                .anyMatch(text -> text.startsWith("Takt 6") && text.contains("Das Ais führt hinauf zum H."));
    }

    /** Over A7 A, C sharp, E, F sharp and G rise in bar 1 of lesson 3, then F sharp and E fall: 1 3 5 6 b7 6 5. */
    @Test
    void aBarIsToldByWhereItWentWhenItHasBeenPlayed() {
        assertThat(told(2))
                .anyMatch(
                        text -> text.startsWith("Bar 1, beat 4")
                                && text.endsWith(
                                        "So it goes from the root through the third, the fifth and the sixth to the flat seventh, then back down to the fifth."))
                .anyMatch(text ->
                        text.startsWith("Bar 9, counts 7") && text.endsWith("That is the run of bar 1, now from E."));
        assertThat(german(2))
                .anyMatch(
                        text -> text.startsWith("Takt 1, Schlag 4")
                                && text.endsWith(
                                        "So geht es vom Grundton über die Terz, die Quinte und die Sexte hinauf zur kleinen Septime und wieder hinab zur Quinte."))
                .anyMatch(text -> text.endsWith("Das ist der Lauf von Takt 1, jetzt ab E."));
        assertThat(told(5)).anyMatch(text -> text.endsWith("That is root, flat seventh, fifth and third."));
    }

    /** Bar 3 of lesson 5 over G7: G, B, D from count 3, and B, G back to count 7; D7 in lesson 3 has D, F sharp, A and C. */
    @Test
    void aFigureIsToldFromWhereItTurnsToWhereItTurns() {
        assertThat(told(4))
                .anyMatch(text -> text.startsWith("Bar 3, counts 5 to 7")
                        && text.endsWith(
                                "So it goes from the root through the third to the fifth, and back the same way."));
        assertThat(german(4))
                .anyMatch(
                        text -> text.startsWith("Takt 3, Z") && text.endsWith("zur Quinte und denselben Weg zurück."));
        assertThat(told(2))
                .anyMatch(text -> text.startsWith("Bar 10, counts 7")
                        && text.endsWith("So the bar spells out the D7 chord, up and back down."));
    }

    /** B, A and G of lesson 1, bar 7, come before E; D, D sharp and E are under three chords of lesson 3, bars 6 and 7. */
    @Test
    void aLineIsToldOverTheBarLine() {
        assertThat(told(0))
                .anyMatch(text ->
                        text.startsWith("Bar 7, shift") && text.contains("These three walk down to the E of bar 8."));
        assertThat(told(1)).anyMatch(text -> text.contains("The last two climb to the B flat of bar 5."));
        assertThat(told(2))
                .anyMatch(text -> text.startsWith("Bar 6")
                        && text.endsWith(
                                "Under the last of these chords the bass climbs by half steps, on to the E of bar 7."));
        assertThat(told(4))
                .anyMatch(text -> text.startsWith("Bar 4")
                        && text.endsWith("These three climb by half steps to the D of bar 5."));
        assertThat(german(5)).anyMatch(text -> text.endsWith("steigt der Bass in Halbtönen, weiter zum C in Takt 7."));
    }

    /** Lesson 4, bar 8: B is the fourth over F sharp, which the suspended chord holds, and A sharp its third. */
    @Test
    void aSuspensionIsToldWithWhatItFallsTo() {
        assertThat(told(3))
                .anyMatch(text -> text.startsWith("Bar 8, beat 3")
                        && text.endsWith("B, the fourth, falls to A sharp, the third."));
    }

    /** Bar 8 of lesson 1 over E minor has E, B and D: root, fifth and seventh of Em7 (rule: chord-tones). */
    @Test
    void aBarThatJumpsIsToldByItsChordTones() {
        assertThat(told(0))
                .anyMatch(text ->
                        text.startsWith("Bar 8, over Em7. Only chord notes here: root, fifth and flat seventh. "));
        assertThat(german(0))
                .anyMatch(
                        text -> text.contains("Hier kommen nur Akkordtöne vor: Grundton, Quinte und kleine Septime."));
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
        assertThat(closing(told(0))).contains("stop if anything hurts");
        assertThat(closing(german(0))).contains("hör auf, wenn etwas weh tut");
    }

    /** Lesson 4, bar 8: from fret 7 the index finger comes down on fret 2. */
    @Test
    void aHardPlaceIsToldWithItsCure() {
        assertThat(told(3))
                .anyMatch(text -> text.startsWith("Bar 8, ")
                        && text.contains(
                                "The fretting hand never has further to go in this line. Practise just these two notes, slowly")
                        && text.contains("and come down with the index finger."));
    }

    /** Nine notes up to beat 3 and then five; of lesson 2 the longest run goes on from bar 4 into bar 5. */
    @Test
    void theLongestRunIsToldWhereItEndsUnlessItCrossesTheBarLine() {
        String run = "E0, E1, E2, E3";
        var line = LineText.read(
                        "tempo 100\n\nbar 1\n1 %s\n2 %s\n3 E0\n4 rest\nbar 2\n1 %s\n2-4 E0\n".formatted(run, run, run))
                .line();
        assertThat(Walkthrough.of(line, Messages.of(Locale.ENGLISH)))
                .extracting(Step::text)
                .anyMatch(text -> text.startsWith("Bar 1, beat")
                        && text.contains("The last nine notes are the longest unbroken run. Loop them"));
        assertThat(told(1)).noneMatch(text -> text.contains("unbroken run"));
    }

    /** The run ends on 3, and an eighth of the same beat comes after it: "the last nine" would be others. */
    @Test
    void aRunThatEndsAmidABeatIsNotCountedFromItsEnd() {
        String run = "E0, E1, E2, E3";
        var line = LineText.read("tempo 100\n\nbar 1\n1 %s\n2 %s\n3 E0, E1\n4 E0\nbar 2\n1 %s\n2-4 E0\n"
                        .formatted(run, run, run))
                .line();
        assertThat(Walkthrough.of(line, Messages.of(Locale.ENGLISH)))
                .extracting(Step::text)
                .noneMatch(text -> text.contains("unbroken run"));
    }

    /** Lesson 2, bar 1: from the D string down to the A string at beat 3, from the E string over the A string in beat 4. */
    @Test
    void thePluckingHandIsToldWhereItCrosses() {
        assertThat(told(1))
                .anyMatch(
                        text -> text.startsWith(
                                "Bar 1, from the F on the D string down to the D on the A string, let the same plucking finger fall through: after its stroke it lies there already. Beat 3: "))
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
        assertThat(closing(told(3))).startsWith("When you practise, learn “Keel”, then “Ballast”, then all of it.");
    }

    @Test
    void nothingIsLeftOutThatKeepsTheHandMoving() {
        for (int i = 0; i < DEMO.size(); i++) {
            assertThat(told(i).get(0)).doesNotContain("without");
        }
    }

    /** Semiquavers are everywhere in lessons 1 and 2; in lesson 5 in bars 9 to 11 alone. */
    @Test
    void barsAreQuickOnlyWhereOthersAreNot() {
        assertThat(closing(told(0))).doesNotContain("Give most of your time");
        assertThat(closing(told(1))).doesNotContain("Give most of your time");
        assertThat(closing(told(4))).contains("Give most of your time to bars 9 to 11, where the notes come quickest.");
    }

    /** Lesson 6 begins on the fourth beat; after its first ending the hand lies at fret 3, in bar 1 at fret 1. */
    @Test
    void oneIsCountedInAndFindsTheWayBack() {
        assertThat(told(5))
                .anyMatch(text ->
                        text.startsWith("Pickup, over C7, moderately loud (mf). Count 1 2 3 and come in on 4. "))
                .contains("Back to bar 1. And shift back: index finger at fret 1.")
                .anyMatch(text -> text.startsWith("Bar 10") && !text.contains("hift"));
        assertThat(german(5)).anyMatch(text -> text.contains("Zähl 1 2 3 vor und setz auf 4 ein."));
    }

    /** Lesson 4, bar 5: E for two beats, above it G and B, twice; the thumb has the lowest string. */
    @Test
    void whatStaysIsToldBeforeWhatMovesAboveIt() {
        assertThat(told(3))
                .anyMatch(
                        text -> text.contains(
                                        "Beats 1 and 2: pluck E (B string, fret 5) and hold it for two beats; "
                                                + "above it, in quavers, pluck G (D string, fret 5), then B (G string, fret 4), twice.")
                                && text.endsWith(
                                        "The thumb takes the B string, the index finger the D string, the middle finger the G string."));
    }

    @Test
    void chordsHaveTheNamesOfTheNotesBesideThem() {
        assertThat(german(3)).anyMatch(text -> text.startsWith("Takt 1, über Hm7 (auf dem Blatt Bm7). "));
        assertThat(german(5)).anyMatch(text -> text.contains("über B6 (auf dem Blatt Bb6)"));
        var international = Walkthrough.of(DEMO.get(3), Messages.of(Locale.GERMAN), Naming.INTERNATIONAL);
        assertThat(international)
                .extracting(Step::text)
                .anyMatch(text -> text.contains("über Bm7"))
                .noneMatch(text -> text.contains("Blatt"));
        assertThat(german(3)).anyMatch(text -> text.startsWith("Takt 2, Schläge 1 bis 3, über Hm7: "));
        assertThat(told(5)).anyMatch(text -> text.startsWith("Bar 7, over F/C, from beat 3 over D7. "));
        assertThat(german(5)).anyMatch(text -> text.startsWith("Takt 7, über F/C, ab Schlag 3 über D7. "));
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
        assertThat(told(5).get(0)).contains("Swing the quavers: ");
    }

    /** Fret of the index finger from a moment on, as it was said. */
    private static TreeMap<Position, Integer> said(Line line) {
        var index = Pattern.compile("(?:\\. Shift:|shift,|And shift back:|in position,) index finger at fret (\\d+)");
        var next = Pattern.compile("Then shift: index finger at fret (\\d+)");
        var before = Pattern.compile("[Ss]hift before the last (?:note|(two) notes): index finger at fret (\\d+)");
        var hand = new TreeMap<Position, Integer>();
        for (var step : steps(line)) {
            var here = index.matcher(step.text());
            if (here.find()) {
                hand.put(step.passage().from(), Integer.parseInt(here.group(1)));
            }
            var late = before.matcher(step.text());
            while (late.find()) {
                hand.put(fromLast(line, step, late.group(1) == null ? 1 : 2), Integer.parseInt(late.group(2)));
            }
            var then = next.matcher(step.text());
            if (then.find()) {
                hand.put(step.passage().to(), Integer.parseInt(then.group(1)));
            }
        }
        return hand;
    }

    /** The moment at which so many notes of a step are still to be struck. */
    private static Position fromLast(Line line, Step step, int notes) {
        int bar = step.passage().from().bar();
        var onsets = line.bar(bar).notes().stream()
                .map(note -> new Position(bar, note.onset()))
                .filter(step.passage()::contains)
                .distinct()
                .sorted()
                .toList();
        return onsets.get(onsets.size() - notes);
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

    private static String closing(List<String> told) {
        return told.get(told.size() - 1);
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
