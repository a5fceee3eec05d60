package groundbass.intake;

import static groundbass.intake.Scores.HEAD;
import static groundbass.intake.Scores.bass;
import static groundbass.intake.Scores.chord;
import static groundbass.intake.Scores.note;
import static groundbass.intake.Scores.rest;
import static groundbass.intake.Scores.technical;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.intake.Intake.Refused;
import groundbass.intake.Intake.Unclear;
import groundbass.intake.notice.FilePart;
import groundbass.intake.notice.Notice;
import groundbass.linetext.LineText;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.Ornaments.Spread;
import groundbass.text.Messages;
import groundbass.theory.ChordSymbol;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Scores of other programs: what is read, what is guessed, and what is told to be missing, and where. */
class MusicXmlInTest {
    private static final Messages ENGLISH = Messages.of(Locale.ENGLISH);

    /** A bar of A minor: A, C, E, A, sounding A1, C2, E2, A2. */
    private static final String FOUR = note("A", 2, 4) + note("C", 3, 4) + note("E", 3, 4) + note("A", 3, 4);

    private static Brought brought(byte[] file) {
        var outcome = Intake.read(file, Optional.empty());
        assertThat(outcome).isInstanceOf(Brought.class);
        return (Brought) outcome;
    }

    private static List<Integer> midi(Line line) {
        return line.bars().stream()
                .flatMap(bar -> bar.notes().stream())
                .map(note -> note.midi(line.header().tuning()).orElse(-1))
                .toList();
    }

    private static List<String> told(Brought brought) {
        return brought.notices().stream()
                .map(Notice::sentence)
                .map(ENGLISH::say)
                .toList();
    }

    private static List<Note> notes(Line line, int bar) {
        return line.bar(bar).notes();
    }

    @Test
    void aBassPartWithoutTablatureGetsItsPlacesFromTheHand() {
        var brought = brought(bass(HEAD + FOUR, FOUR));
        assertThat(midi(brought.line())).containsExactly(33, 36, 40, 45, 33, 36, 40, 45);
        assertThat(brought.line().header().tempo().perMinute()).isEqualTo(96);
        assertThat(told(brought))
                .anySatisfy(each -> assertThat(each).startsWith("Guessed, bars 1-2: strings and frets"))
                .anySatisfy(each -> assertThat(each).startsWith("Guessed: the neck"));
        assertThat(LineText.read(brought.text(ENGLISH)).problems()).isEmpty();
        assertThat(LineText.read(brought.text(ENGLISH)).line()).isEqualTo(brought.line());
        assertThat(brought.text(ENGLISH))
                .contains("# Guessed: strings and frets")
                .contains("\nbar 2\n");
    }

    @Test
    void measuresOfPartsSayTheSameAsPartsOfMeasures() {
        var parts = Map.of("Bass", List.of(HEAD + FOUR, FOUR), "Alto", List.of(HEAD + FOUR, FOUR));
        var partwise = brought(Scores.partwise(parts));
        var timewise = brought(Scores.timewise(parts));
        assertThat(timewise.line()).isEqualTo(partwise.line());
        assertThat(timewise.part().name()).isEqualTo("Bass");
        assertThat(told(timewise)).contains("Guessed: the part is “Bass”");
    }

    @Test
    void whereSeveralPartsMayBeMeantAPersonIsAsked() {
        byte[] score = Scores.partwise(Map.of("Left", List.of(HEAD + FOUR), "Right", List.of(HEAD + note("D", 3, 16))));
        var outcome = Intake.read(score, Optional.empty());
        assertThat(outcome).isEqualTo(new Unclear(List.of(new FilePart(1, "Left", 4), new FilePart(2, "Right", 1))));
        assertThat(((Brought) Intake.read(score, Optional.of(2))).line())
                .satisfies(line -> assertThat(midi(line)).containsExactly(38));
        assertThat(Intake.read(score, Optional.of(9))).isInstanceOf(Unclear.class);
    }

    @Test
    void otherInstrumentsWithBassInTheirNamesAreNone() {
        byte[] score = Scores.partwise(Map.of(
                "Bass Clarinet",
                List.of(HEAD + FOUR),
                "E-Bass",
                List.of(HEAD + FOUR),
                "Bassoon",
                List.of(HEAD + FOUR)));
        assertThat(brought(score).part().name()).isEqualTo("E-Bass");
    }

    @Test
    void stringAndFretAreTakenWhereTheyStand() {
        var brought = brought(bass(HEAD
                + note("E", 3, 8, technical("<string>4</string><fret>12</fret>"))
                + note("E", 3, 8, technical("<string>2</string><fret>2</fret>"))));
        assertThat(notes(brought.line(), 1))
                .extracting(note -> brought.line().header().tuning().typed(note.place()))
                .containsExactly("E12", "D2");
        assertThat(told(brought)).noneMatch(each -> each.contains("strings and frets"));
    }

    @Test
    void aTrillBeyondTheNeckIsLeftOutAndTold() {
        String trill = "<notations><technical><string>1</string><fret>%d</fret></technical>"
                + "<ornaments><trill-mark trill-step='whole'/></ornaments></notations>";
        var brought = brought(bass(HEAD + note("F", 5, 8, trill.formatted(22)) + note("G", 5, 8, trill.formatted(24))));
        assertThat(notes(brought.line(), 1))
                .extracting(each -> each.ornaments().trill().isPresent())
                .containsExactly(true, false);
        assertThat(told(brought)).contains("Left out, bar 1: a trill to a note beyond this neck; its own note stands");
    }

    /** MusicXML 4.0, arpeggiate and non-arpeggiate: the first at each note of its chord, the second at its ends alone. */
    @Test
    void rolledChordsAndBracketsOfChordsAreRead() {
        String chord = "<notations>%s</notations>";
        String wave = chord.formatted("<arpeggiate/>");
        String down = chord.formatted("<arpeggiate direction='down'/>");
        String bottom = chord.formatted("<non-arpeggiate type='bottom'/>");
        var second = note("E", 3, 16).replace("<note>", "<note><chord/>");
        var brought = brought(bass(
                HEAD + note("A", 2, 16, wave) + second,
                note("A", 2, 16, down) + second,
                note("A", 2, 16, bottom) + second,
                note("A", 2, 16, wave)));
        var said = brought.line().bars().stream()
                .flatMap(bar -> bar.notes().stream())
                .map(each -> each.ornaments().spread())
                .toList();
        assertThat(said)
                .containsExactly(
                        Optional.of(Spread.ROLL),
                        Optional.of(Spread.ROLL),
                        Optional.of(Spread.ROLL_DOWN),
                        Optional.of(Spread.ROLL_DOWN),
                        Optional.of(Spread.BRACKET),
                        Optional.of(Spread.BRACKET),
                        Optional.empty());
        assertThat(told(brought))
                .filteredOn(each -> each.contains("rolled"))
                .containsExactly("Left out, bar 4: the sign of a rolled chord at a note that begins alone");
    }

    @Test
    void aTrillThatNoHandPlaysIsLeftOutAndTold() {
        String trill = "<notations><ornaments><trill-mark/></ornaments>%s</notations>";
        String bend = "<technical><bend><bend-alter>1</bend-alter></bend></technical>";
        String node = "<technical><string>4</string><fret>12</fret><harmonic><natural/></harmonic></technical>";
        var brought = brought(bass(
                HEAD + note("A", 2, 16, "<notehead>x</notehead>", trill.formatted("")),
                note("A", 2, 16, trill.formatted(bend)),
                note("E", 3, 16, trill.formatted(node)),
                note("A", 2, 16, trill.formatted(""))));
        assertThat(told(brought))
                .filteredOn(each -> each.contains("trill"))
                .containsExactly("Left out, bars 1-3: a trill of a dead note, a harmonic or a bent string");
        assertThat(notes(brought.line(), 4).get(0).ornaments().trill()).isPresent();
    }

    @Test
    void aPlaceThatSoundsOtherwiseGivesWayToThePitch() {
        var brought = brought(bass(HEAD + note("E", 3, 16, technical("<string>4</string><fret>3</fret>"))));
        assertThat(midi(brought.line())).containsExactly(40);
        assertThat(told(brought)).anyMatch(each -> each.startsWith("Changed, bar 1: string and fret"));
    }

    @Test
    void notationAndTablatureInOnePartAreOneLine() {
        String staves = HEAD.replace("<clef>", "<staves>2</staves><clef number='2'><sign>TAB</sign></clef><clef>")
                .replace("<transpose>", "<transpose number='1'>");
        var brought = brought(bass(staves
                + note(
                        "E",
                        3,
                        16,
                        "<staff>1</staff>",
                        "<notations><articulations><accent/></articulations></notations>")
                + "<backup><duration>16</duration></backup>"
                + note("E", 2, 16, "<staff>2</staff>", technical("<string>3</string><fret>7</fret>"))));
        assertThat(LineText.print(brought.line())).contains("1-4  A7 accent");
        assertThat(notes(brought.line(), 1)).hasSize(1);
    }

    @Test
    void twoVoicesSoundTogether() {
        var brought = brought(bass(HEAD
                + note("A", 2, 16, "<voice>2</voice>")
                + "<backup><duration>16</duration></backup>"
                + rest(8)
                + note("E", 3, 4, "<voice>1</voice>")
                + chord("A", 3, 4)
                + rest(4)));
        assertThat(midi(brought.line())).containsExactly(33, 40, 45);
        assertThat(notes(brought.line(), 1).get(0).length().toString()).isEqualTo("1");
        assertThat(brought.notices()).noneMatch(notice -> notice.weight() != Notice.Weight.GUESSED);
    }

    @Test
    void whatALineCannotHoldIsToldByBar() {
        var brought = brought(bass(
                HEAD + FOUR,
                note("A", 2, 8, "<lyric><text>la</text></lyric>")
                        + note("A", 2, 8, "<notations><slur type='start'/></notations>"),
                "<note><unpitched/><duration>8</duration></note>"
                        + note("A", 2, 8, "<notations><ornaments><turn/></ornaments></notations>"),
                "<direction><direction-type><pedal type='start'/></direction-type></direction>" + note("A", 9, 16)));
        assertThat(told(brought))
                .contains(
                        "Left out, bar 2: words that are sung",
                        "Left out, bar 2: slurs without hammer-on, pull-off or slide",
                        "Left out, bar 3: notes without pitch",
                        "Left out, bar 3: “turn”",
                        "Left out, bar 4: “pedal”",
                        "Left out, bar 4: notes that are on no string of this neck");
    }

    @Test
    void aTieOverARepeatIsStruckAgain() {
        var brought = brought(bass(
                HEAD + note("A", 2, 16, "<tie type='start'/>")
                        + "<barline location='right'><repeat direction='backward'/></barline>",
                note("A", 2, 8, "<tie type='stop'/>") + rest(8)));
        assertThat(midi(brought.line())).containsExactly(33, 33);
        assertThat(told(brought)).contains("Changed, bar 2: a note that was tied over a repeat sign is struck again");
    }

    @Test
    void aTieInsideTheBarIsOneNote() {
        var brought =
                brought(bass(HEAD + note("A", 2, 4, "<tie type='start'/>") + note("A", 2, 12, "<tie type='stop'/>")));
        assertThat(notes(brought.line(), 1)).hasSize(1);
    }

    @Test
    void signsThatContradictOneAnotherAreTakenOutAndTold() {
        var brought = brought(
                bass(
                        HEAD + FOUR + "<barline location='right'><ending number='1' type='start'/></barline>",
                        FOUR,
                        FOUR
                                + "<barline location='right'><ending number='1' type='stop'/><repeat direction='backward'/></barline>"));
        assertThat(told(brought)).anyMatch(each -> each.contains("signs of repeats that contradict"));
        assertThat(brought.line().played()).hasSize(3);
    }

    @Test
    void aMeasureLongerThanItsMetreHasAMetreOfItsOwn() {
        var brought = brought(bass(HEAD + FOUR + note("A", 2, 4), FOUR));
        assertThat(brought.line().header().meter().toString()).isEqualTo("5/4");
        assertThat(brought.line().bar(2).changes().meter().orElseThrow().toString())
                .isEqualTo("4/4");
        assertThat(told(brought))
                .contains("Changed, bar 1: the bar is longer than its metre, so it has a metre of its own");
    }

    @Test
    void timesNoBarCanHaveAreMovedAndTold() {
        String uneven = HEAD.replace("<divisions>4</divisions>", "<divisions>10007</divisions>");
        var brought = brought(bass(uneven + note("A", 2, 10009) + note("C", 3, 30019)));
        assertThat(notes(brought.line(), 1))
                .extracting(note -> note.onset().toString())
                .containsExactly("0", "1/4");
        assertThat(told(brought)).anyMatch(each -> each.startsWith("Changed, bar 1: times too finely divided"));
    }

    @Test
    void chordsAreReadByKindByTextOrNearly() {
        var brought = brought(bass(HEAD
                + harmony("A", "<kind text='m7'>minor-seventh</kind>")
                + note("A", 2, 4)
                + harmony(
                        "D",
                        "<kind>dominant</kind><degree><degree-value>9</degree-value><degree-alter>-1</degree-alter><degree-type>add</degree-type></degree>")
                + note("A", 2, 4)
                + harmony(
                        "G",
                        "<kind>dominant</kind><degree><degree-value>2</degree-value><degree-alter>1</degree-alter><degree-type>subtract</degree-type></degree>")
                + note("A", 2, 4)
                + harmony("C", "<kind>Neapolitan</kind>")
                + note("A", 2, 4)));
        assertThat(brought.line().bar(1).chords())
                .extracting(each -> each.chord())
                .containsExactly(
                        ChordSymbol.parse("Am7").orElseThrow(),
                        ChordSymbol.parse("D7b9").orElseThrow(),
                        ChordSymbol.parse("G7").orElseThrow());
        assertThat(told(brought))
                .contains("Left out, bar 1: the chord C Neapolitan")
                .anyMatch(each -> each.startsWith("Changed, bar 1: the chord stands as G7"));
    }

    private static String harmony(String root, String kind) {
        return "<harmony><root><root-step>" + root + "</root-step></root>" + kind + "</harmony>";
    }

    @Test
    void jumpsAreReadFromTheirWords() {
        String words = "<direction><direction-type><words>%s</words></direction-type></direction>";
        var brought = brought(
                bass(HEAD + FOUR, FOUR + words.replace("%s", "Fine"), FOUR + words.replace("%s", "D.C. al Fine")));
        assertThat(brought.line().played()).extracting(each -> each.bar()).containsExactly(0, 1, 2, 0, 1);
    }

    @Test
    void aPickupIsABarBeforeTheFirst() {
        String score = new String(bass(HEAD + note("E", 3, 4), FOUR), StandardCharsets.UTF_8);
        var brought = brought(score.replace("<measure number='1'>", "<measure number='0' implicit='yes'>")
                .getBytes(StandardCharsets.UTF_8));
        assertThat(brought.line().firstNumber()).isZero();
        assertThat(brought.line().bar(0).notes().get(0).onset().toString()).isEqualTo("3/4");
    }

    @Test
    void aKeyWithoutAModeIsFoundAmongTheTwoOfItsSignature() {
        var minor = brought(bass(HEAD.replace("<mode>minor</mode>", "") + FOUR, FOUR, note("A", 2, 16)));
        assertThat(minor.line().header().key().toString()).isEqualTo("A minor");
        assertThat(told(minor)).contains("Guessed: the key is A minor");
    }

    @Test
    void aFileWithoutNotesSaysSo() {
        var refused = (Refused) Intake.read(bass(HEAD + rest(16)), Optional.empty());
        assertThat(ENGLISH.say(refused.why())).isEqualTo("There are no notes in this file.");
    }

    /** Written for an instrument in B flat: it sounds a major second lower than it is written (common practice, no source). */
    private static final String IN_B_FLAT = HEAD.replace(
                    "<fifths>0</fifths><mode>minor</mode>", "<fifths>1</fifths><mode>major</mode>")
            .replace("<chromatic>0</chromatic>", "<diatonic>-1</diatonic><chromatic>-2</chromatic>");

    @Test
    void keyChordsAndNamesOfATransposingPartAreThoseThatSound() {
        var brought = brought(bass(IN_B_FLAT
                + harmony("A", "<kind text='m7'>minor-seventh</kind>")
                + note("G", 3, 8)
                + harmony("D", "<kind>major</kind><bass><bass-step>F</bass-step><bass-alter>1</bass-alter></bass>")
                + note("C", 3, 8)));
        assertThat(brought.line().header().key().toString()).isEqualTo("F major");
        assertThat(midi(brought.line())).containsExactly(41, 34);
        assertThat(brought.line().bar(1).chords())
                .extracting(each -> each.chord().toString())
                .containsExactly("Gm7", "C/E");
        assertThat(Survives.names(brought.line())).containsExactly("F2", "Bb1");
    }

    @Test
    void withoutItsStepsATranspositionGoesToTheNearerKey() {
        var brought = brought(bass(IN_B_FLAT.replace("<diatonic>-1</diatonic>", "") + FOUR));
        assertThat(brought.line().header().key().toString()).isEqualTo("F major");
    }

    /** Six flats a whole tone lower would be eight: F flat, which is written E, with four sharps. */
    @Test
    void aKeyBeyondSevenSignsHasItsOtherName() {
        var brought = brought(bass(IN_B_FLAT.replace("<fifths>1<", "<fifths>-6<") + FOUR));
        assertThat(brought.line().header().key().toString()).isEqualTo("E major");
    }

    @Test
    void anotherTranspositionChangesTheKeyThatSounds() {
        var brought = brought(bass(
                IN_B_FLAT + FOUR,
                "<attributes><transpose><diatonic>0</diatonic><chromatic>0</chromatic></transpose></attributes>"
                        + FOUR));
        assertThat(brought.line().header().key().toString()).isEqualTo("F major");
        assertThat(brought.line().inForce().get(1).key().toString()).isEqualTo("G major");
    }

    private static String left(String content) {
        return "<barline location='left'>" + content + "</barline>";
    }

    private static String right(String content) {
        return "<barline location='right'>" + content + "</barline>";
    }

    private static String ending(String passes, String type) {
        return "<ending number='" + passes + "' type='" + type + "'/>";
    }

    private static Brought withEndings(String first, String second) {
        String back = "<repeat direction='backward'/>";
        return brought(bass(
                HEAD + left("<repeat direction='forward'/>") + FOUR,
                left(ending(first, "start")) + FOUR + right(ending(first, "stop") + back),
                left(ending(second, "start")) + note("G", 2, 16) + right(ending(second, "stop")),
                FOUR));
    }

    /** Numbers with commas between them are the passes one by one (MusicXML 4.0, ending-number). */
    @Test
    void passesThatDoNotFollowOneAnotherAreTold() {
        var apart = withEndings("1,3", "2");
        assertThat(apart.line().played()).extracting(each -> each.bar()).containsExactly(0, 1, 0, 2, 3);
        assertThat(told(apart))
                .contains("Left out, bar 2: passes of the ending “1,3” that a line has no bracket for;"
                        + " those of one bracket follow one another");
        var together = withEndings("1, 2", "3");
        assertThat(together.line().played()).extracting(each -> each.bar()).containsExactly(0, 1, 0, 1, 0, 2, 3);
        assertThat(told(together)).noneMatch(each -> each.contains("ending"));
    }

    @Test
    void endingsAndRepeatsThatNoLineHasAreTold() {
        assertThat(told(withEndings("1", "500")))
                .anyMatch(each -> each.startsWith("Left out, bar 3: passes of the ending “500”"));
        var brought = brought(bass(HEAD + FOUR + right("<repeat direction='backward' times='1000'/>"), FOUR));
        assertThat(told(brought)).contains("Left out, bar 1: how often a repeat is played (1,000)");
        assertThat(brought.line().played()).extracting(each -> each.bar()).containsExactly(0, 0, 1);
    }

    /** The lowest string of a guitar is E2 (common practice, no source); said three times it is still one part's strings. */
    @Test
    void aTuningCountsOnceHoweverOftenItIsSaid() {
        String tuned = "<attributes><staff-details><staff-tuning line='1'><tuning-step>%s</tuning-step>"
                + "<tuning-octave>%d</tuning-octave></staff-tuning></staff-details></attributes>";
        String low = tuned.formatted("E", 1);
        byte[] score = Scores.partwise(
                Map.of("Bass", List.of(HEAD + low + FOUR, FOUR), "Deep", List.of(HEAD + low + FOUR, low + low + FOUR)));
        assertThat(brought(score).part().name()).isEqualTo("Bass");
    }
}
