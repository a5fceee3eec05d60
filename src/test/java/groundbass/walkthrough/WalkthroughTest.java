package groundbass.walkthrough;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Passage;
import groundbass.score.Position;
import groundbass.text.Messages;
import groundbass.walkthrough.words.Naming;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Every sentence here was worked out by reading the line, not taken from the program. */
class WalkthroughTest {
    private static final String SIXTEENTHS = """
            key     A dorian
            meter   4/4
            tempo   96
            strings E A D G
            style   finger

            bar 1 over Am7
            1    E5
            1&   E5, E8
            2    A5, Ax
            2&   A7 short
            3    E5 down, E7 up, A5 down
            4    E8*2 slap, D5 pop, D7 hammer
            """;

    private static final String FORM = """
            key     F minor
            meter   4/4
            tempo   80
            strings B E A D G
            style   thumb

            bar 0
            4    rest, E0

            section Verse
            repeat start
            bar 1 over Fm7, Bb7 at 3&
            1-2  E1 mp
            3    A0, A1
            4    rest*2, D3 slide in below, D1 short

            ending 1
            bar 2 = bar 1
            ending end
            repeat end

            ending 2
            bar 3 over Db
            1-4  rest
            ending end

            bar 4 over N.C.
            1    E1+D3 pluck
            2    hold, Ax lefthand
            3    E12 harmonic
            4    G1 bend 1/2 vibrato with 2
            """;

    private static final String SEVEN = """
            key     D dorian
            meter   7/8 (2+2+3)
            tempo   200
            strings E A D G
            style   finger

            bar 1 over Dm7
            1    A5 accent, Ax
            3    rest
            5    D5, D7 hammer, D5 pull
            """;

    private static final String TRIPLET = """
            key     E minor
            meter   4/4
            tempo   60
            strings E A D G
            style   pick

            repeat start
            bar 1
            1-2  E0, E3 slide from 2, E5
            3-4  rest
            repeat end x3
            """;

    private static final String TWO_PARTS = """
            key     G major
            meter   4/4
            tempo   60
            strings E A D G
            style   pluck

            bar 1 over G
            1    E3 until end + D5, G4
            2    D5, G4
            3-4  rest
            """;

    private static final String CHANGES = """
            key     C major
            meter   4/4
            tempo   100
            strings E=D A D G
            style   finger

            bar 1
            1-3  rest
            4    E0

            key D major
            meter 3/4
            tempo 80
            feel swing 8ths 2:1 half-time
            slowing to 60
            bar 2
            1    hold
            2-3  E2
            """;

    /** rule: jumps-unfold. */
    @Test
    void jumpsAreToldWhereTheyStandAndWhereTheyLead() {
        String form = """
                bar 1
                1-4  E0
                segno
                bar 2
                1-4  E1
                to coda
                bar 3
                1-4  E3
                dal segno al coda
                coda
                bar 4
                1-4  E5
                """;
        assertThat(english(form))
                .containsSubsequence(
                        "The sign (segno) stands here: you come back to it.",
                        "To Coda: the first time play on; after the jump, go from here to the coda, bar 4.",
                        "D.S. al Coda: back to bar 2, then without repeats to the end of bar 2, and from there to the coda, bar 4.",
                        "The coda begins here.");
        assertThat(english("bar 1\n1-4  E0\nfine\nbar 2\n1-4  E1\nda capo al fine\n"))
                .containsSubsequence(
                        "Fine: the first time play on; after the jump, the line ends here.",
                        "D.C. al Fine: back to bar 1, then without repeats to the Fine after bar 1, where it ends.");
    }

    @Test
    void eachBeatIsOneSentenceOfRhythmAndHands() {
        assertThat(english(SIXTEENTHS))
                .containsExactly(
                        "One bar. We’re in A Dorian, in 4/4, at 96 beats per minute. Count aloud: 1 e & a 2 e & a 3 e & a 4 e & a. Begin slowly: set the metronome to 76.",
                        "Bar 1, over Am7. Hand in position, index finger at fret 5, one finger per fret. With the plucking hand, alternate index and middle finger unless something else is said. Beat 1, an eighth and two sixteenths: play A (E string, fret 5), twice; C (fret 8).",
                        "Bar 1, beat 2, two sixteenths and an eighth: play D (A string, fret 5); a dead note; E (fret 7), short. From the beat before on, that is root, minor third, fourth and fifth. New in this line: the dead note. Touch the string with two fingers or more without pressing, so that it clicks and gives no pitch; one finger alone may sound a harmonic.",
                        "Bar 1, new in this line: the thumb downstroke. Drop the thumb through the string, from the wrist, until it lies on the next one. Also new: the thumb upstroke. On its way back the thumb catches the string from below. Beat 3: a triplet (three eighths): thumb down and up on A, then B (E string, frets 5 and 7); down through D (A string, fret 5).",
                        "Bar 1, new in this line: the slap. Turn the wrist and let the side of the thumb bounce off the string where the neck meets the body. Also new: the pop. Hook the index finger of the plucking hand under the string, pull it a little away from the neck with a turn of the wrist, and let the string snap back. Also new: the hammer-on. Drop the finger onto the string right behind the fret; the plucking hand waits. Beat 4, an eighth and two sixteenths: slap C (E string, fret 8); pop G (D string, fret 5); hammer on to A (fret 7).",
                        "Take breaks, and stop if anything hurts.");
    }

    @Test
    void germanMusiciansReadTheirOwnWords() {
        assertThat(german(SIXTEENTHS))
                .containsExactly(
                        "Ein Takt. Die Tonart ist A-Dorisch, die Taktart 4/4, das Tempo 96 Schläge pro Minute. Zähl laut: 1 e & a 2 e & a 3 e & a 4 e & a. Fang langsam an: Stell das Metronom auf 76.",
                        "Takt 1, über Am7. Lage: Zeigefinger im 5. Bund, ein Finger pro Bund. In der Zupfhand wechseln sich Zeige- und Mittelfinger ab, wo nichts anderes steht. Schlag 1, eine Achtel und zwei Sechzehntel: spiele A (E-Saite, 5. Bund), zweimal; C im 8. Bund.",
                        "Takt 1, Schlag 2, zwei Sechzehntel und eine Achtel: spiele D (A-Saite, 5. Bund); eine Deadnote; E im 7. Bund, kurz. Mit dem Schlag davor sind das Grundton, kleine Terz, Quarte und Quinte. Neu in dieser Linie: die Deadnote. Die Saite mit zwei Fingern oder mehr berühren, ohne zu drücken, sodass es klickt und kein Ton klingt; bei einem Finger allein kann ein Flageolett klingen.",
                        "Takt 1, neu in dieser Linie: der Daumenabschlag. Den Daumen aus dem Handgelenk durch die Saite fallen lassen, bis er auf der nächsten liegt. Auch neu: der Daumenaufschlag. Auf dem Rückweg nimmt der Daumen die Saite von unten mit. Schlag 3: eine Triole (drei Achtel): spiele mit dem Daumen abwärts und aufwärts A, dann H (E-Saite, Bünde 5 und 7); abwärts D (A-Saite, 5. Bund).",
                        "Takt 1, neu in dieser Linie: der Slap. Das Handgelenk drehen und die Daumenseite dort von der Saite abprallen lassen, wo der Hals in den Korpus übergeht. Auch neu: der Pop. Den Zeigefinger der Zupfhand unter die Saite haken, sie mit einer Drehung des Handgelenks ein wenig wegziehen und zurückschnappen lassen. Auch neu: das Hammer-on. Den Finger schnell und fest dicht hinter das Bundstäbchen setzen, sodass der Ton ohne neuen Anschlag klingt. Schlag 4, eine Achtel und zwei Sechzehntel: slappe C (E-Saite, 8. Bund); poppe G (D-Saite, 5. Bund); Hammer-on auf A im 7. Bund.",
                        "Mach Pausen, und hör auf, wenn etwas weh tut.");
    }

    @Test
    void theFormIsToldWithItsRepeatsAndWhatIsTheSameIsSaidSo() {
        assertThat(english(FORM))
                .containsExactly(
                        "4 bars, “Verse”. We’re in F minor, in 4/4, at 80 beats per minute. The strings, from low to high, are B, E, A, D and G. Count aloud: 1 e & a 2 e & a 3 e & a 4 e & a. Begin slowly: set the metronome to 63.",
                        "Pickup. Count 1 2 3 4 and come in on 4&. Rest on 4; then on 4& with the thumb play the open E string. E leads up to F.",
                        "Section “Verse” begins.",
                        "A repeat begins here.",
                        "Bar 1, over Fm7, moderately soft (mp). Hand in position, index finger at fret 1, one finger per fret. Beats 1 and 2: with the thumb play F (E string, fret 1), for two beats.",
                        "Bar 1, beat 3, two eighths, from 3& over Bb7: with the thumb play the open A string; B flat (fret 1). A leads up to B flat.",
                        "Bar 1, beat 4: rest on 4; then from 4&, with the thumb play F (D string, fret 3), sliding in from below; E flat (fret 1), short.",
                        "Ending 1: only the first time.",
                        "Bar 2, over Fm7, from 3& over Bb7: the same as bar 1.",
                        "Back to bar 1.",
                        "Ending 2: only the second time.",
                        "Bar 3, over Db: rest for the whole bar.",
                        "Bar 4, beat 1, without a chord, a dotted quarter: pluck F (E string, fret 1) and F (D string, fret 3) together. New in this line: strings plucked by several fingers. The thumb takes the E string, the index finger the D string.",
                        "Bar 4, new in this line: the fretting hand alone. The fretting hand strikes the strings by itself; the other one waits. Also new: the dead note. Touch the string with two fingers or more without pressing, so that it clicks and gives no pitch; one finger alone may sound a harmonic. Beat 2: keep holding until 2&; on 2& with the fretting hand alone strike a dead note (A string).",
                        "Bar 4, new in this line: the harmonic. Touch the string right above the fret without pressing, and lift the finger after the stroke. Also new: the bend. Push the string across the neck, with a second finger behind the first. Beats 3 and 4: with the thumb play the harmonic E (E string, touched at fret 12); A flat (G string, fret 1, middle finger), bent up a semitone, with vibrato. The fretting hand never has further to go in this line. Practise just these two notes, slowly: look where you are going before the hand leaves.",
                        "Take breaks, and stop if anything hurts.");
    }

    @Test
    void theFormIsToldInGerman() {
        assertThat(german(FORM))
                .containsExactly(
                        "4 Takte: „Verse“. Die Tonart ist f-Moll, die Taktart 4/4, das Tempo 80 Schläge pro Minute. Die Saiten heißen von tief nach hoch H, E, A, D und G. Zähl laut: 1 e & a 2 e & a 3 e & a 4 e & a. Fang langsam an: Stell das Metronom auf 63.",
                        "Auftakt. Zähl 1 2 3 4 vor und setz auf 4& ein. Pause auf der 4; auf 4& zupfe mit dem Daumen die leere E-Saite. Das E führt hinauf zum F.",
                        "Jetzt kommt der Teil „Verse“.",
                        "Wiederholungszeichen: Bis hierher geht es später zurück.",
                        "Takt 1, über Fm7, halbleise (mp). Lage: Zeigefinger im 1. Bund, ein Finger pro Bund. Schläge 1 und 2: zupfe mit dem Daumen F (E-Saite, 1. Bund), zwei Schläge lang.",
                        "Takt 1, Schlag 3, zwei Achtel, ab 3& über B7 (auf dem Blatt Bb7): zupfe mit dem Daumen die leere A-Saite; B im 1. Bund. Das A führt hinauf zum B.",
                        "Takt 1, Schlag 4: Pause auf der 4; ab 4& zupfe mit dem Daumen F (D-Saite, 3. Bund), von unten hineinrutschen; Es im 1. Bund, kurz.",
                        "Klammer 1: nur beim 1. Mal.",
                        "Takt 2, über Fm7, ab 3& über B7 (auf dem Blatt Bb7): genau wie Takt 1.",
                        "Zurück zu Takt 1.",
                        "Klammer 2: nur beim 2. Mal.",
                        "Takt 3, über Db: ganzer Takt Pause.",
                        "Takt 4, Schlag 1, ohne Akkord, eine punktierte Viertel: zupfe F (E-Saite, 1. Bund) und F (D-Saite, 3. Bund) zusammen. Neu in dieser Linie: Zupfen mit mehreren Fingern. Der Daumen nimmt die E-Saite, der Zeigefinger die D-Saite.",
                        "Takt 4, neu in dieser Linie: die Greifhand allein. Die Greifhand schlägt allein auf die Saiten, die andere wartet. Auch neu: die Deadnote. Die Saite mit zwei Fingern oder mehr berühren, ohne zu drücken, sodass es klickt und kein Ton klingt; bei einem Finger allein kann ein Flageolett klingen. Schlag 2: bis 2& weiter halten; auf 2& spiele nur mit der Greifhand eine Deadnote (A-Saite).",
                        "Takt 4, neu in dieser Linie: das Flageolett. Die Saite genau über dem Bundstäbchen berühren, ohne zu drücken, und den Finger nach dem Anschlag abheben. Auch neu: das Bending. Die Saite quer über das Griffbrett schieben, mit einem zweiten Finger hinter dem ersten. Schläge 3 und 4: zupfe mit dem Daumen Flageolett E (E-Saite, am 12. Bund berührt); As (G-Saite, 1. Bund, Mittelfinger), um einen Halbton gezogen, mit Vibrato. Das ist der weiteste Weg der Greifhand in dieser Linie. Übe nur diese beiden Töne, langsam: Schau auf das Ziel, bevor die Hand losgeht.",
                        "Mach Pausen, und hör auf, wenn etwas weh tut.");
    }

    @Test
    void unequalBeatsNameTheirCounts() {
        assertThat(english(SEVEN))
                .containsExactly(
                        "One bar. We’re in D Dorian, in 7/8, at 200 eighths per minute. Count it in groups of 2, 2 and 3. Count aloud: 1 2 · 3 4 · 5 6 7. Begin slowly: set the metronome to 160.",
                        "Bar 1, over Dm7. Hand in position, index finger at fret 5, one finger per fret. With the plucking hand, alternate index and middle finger unless something else is said. Beat 1 (counts 1 and 2), in eighths: play D (A string, fret 5), accented; a dead note. New in this line: the dead note. Touch the string with two fingers or more without pressing, so that it clicks and gives no pitch; one finger alone may sound a harmonic.",
                        "Bar 1, beat 2 (counts 3 and 4): rest.",
                        "Bar 1, new in this line: the hammer-on. Drop the finger onto the string right behind the fret; the plucking hand waits. Also new: the pull-off. Have the finger for the lower note down already. Pull the finger of the higher note off a little sideways, so that it plucks the string. Beat 3 (counts 5 to 7), in eighths: play G (D string, fret 5); hammer on to A (fret 7); pull off to G again.",
                        "Take breaks, and stop if anything hurts.");
    }

    @Test
    void aTripletOverTwoBeatsIsToldWholeAndTheRepeatIsCounted() {
        assertThat(english(TRIPLET))
                .containsExactly(
                        "One bar. We’re in E minor, in 4/4, at 60 beats per minute. Count aloud: 1 2 3 4. Begin slowly: set the metronome to 48.",
                        "A repeat begins here.",
                        "Bar 1. Hand in position, index finger at fret 3, one finger per fret. Beats 1 and 2: a triplet (three quarters): pick the open E string; G (fret 3), sliding up into it from one fret below; A (fret 5). New in this line: the slide. Strike only the note it comes from; the finger stays firmly on the string until it arrives.",
                        "Bar 1, beats 3 and 4: rest for two beats.",
                        "Back to bar 1; from there to here three times in all.",
                        "Take breaks, and stop if anything hurts.");
        assertThat(german(TRIPLET))
                .endsWith(
                        "Takt 1, Schläge 3 und 4: zwei Schläge Pause.",
                        "Zurück zu Takt 1; von dort bis hier insgesamt dreimal spielen.",
                        "Mach Pausen, und hör auf, wenn etwas weh tut.");
    }

    @Test
    void changesStandBeforeTheirBarAndAHeldNoteIsNotStruckAgain() {
        assertThat(english(CHANGES))
                .containsExactly(
                        "2 bars. We’re in C major, in 4/4, at 100 beats per minute. The strings, from low to high, are E (sounds D), A, D and G. Count aloud: 1 2 3 4. Begin slowly: set the metronome to 80.",
                        "Bar 1, beats 1 to 3: rest for three beats.",
                        "Bar 1, with the plucking hand, alternate index and middle finger unless something else is said. Beat 4: play open D (E string), held over into the next bar.",
                        "New key: D major.",
                        "New meter: 3/4.",
                        "New tempo: 80 beats per minute.",
                        "Swing the eighths: of each pair the first is longer than the second, two to one. It has a half-time feel: keep counting as usual; the snare of the band comes half as often.",
                        "Slow down evenly through this bar, to 60 on the metronome.",
                        "Bar 2. Hand in position, index finger at fret 2, one finger per fret. Beat 1: keep holding.",
                        "Bar 2, beats 2 and 3: play E (E string, fret 2), for two beats.",
                        "Take breaks, and stop if anything hurts.");
    }

    /** One string plucked by itself says nothing of the fingers; two of bar 2 at once do (common practice, no source). */
    @Test
    void whichFingerPlucksWhichStringIsToldWhereSeveralAreStruckTogether() {
        var told = english("tempo 80\nstyle pluck\n\nbar 1\n1-4 E3\n\nbar 2\n1-4 E3+D5\n");
        assertThat(told).noneMatch(text -> text.startsWith("Bar 1") && text.contains("The thumb takes"));
        assertThat(told)
                .anyMatch(text -> text.startsWith("Bar 2")
                        && text.contains("The thumb takes the E string, the index finger the D string."));
    }

    @Test
    void twoPartsAreToldOneAfterTheOther() {
        assertThat(english(TWO_PARTS))
                .endsWith(
                        "Bar 1, over G. Hand in position, index finger at fret 3, one finger per fret. Only chord notes here: root and third. Beat 1: upper part: in eighths, pluck G (D string, fret 5); B (G string, fret 4). Lower part: a whole note: pluck G (E string, fret 3). New in this line: strings plucked by several fingers. The thumb takes the E string, the index finger the D string, the middle finger the G string.",
                        "Bar 1, beat 2: over the held note, in eighths, pluck G (D string, fret 5); B (G string, fret 4).",
                        "Bar 1, beats 3 and 4: keep holding.",
                        "Take breaks, and stop if anything hurts.");
    }

    /** Told at the beginning, a rhythm that most beats have is not told with each; another one is, so that nothing is left out. */
    @Test
    void aRhythmOfMostBeatsIsToldOnce() {
        String line = """
                meter 12/8
                strings E A D G
                style finger

                bar 1
                1   E5 for 2, A4
                4   A7 for 2, D5
                7   D4 for 2, A7
                10  E5, E3, E2

                bar 2
                1   A5 for 2, D4
                4   D5, D4 for 2
                7   D7 for 2, A5
                10  A4 for 2, E5
                """;
        var told = english(line);
        assertThat(told.get(0)).contains("Most beats are played as a quarter and an eighth.");
        assertThat(told)
                .anyMatch(text -> text.startsWith("Bar 1, beats 2 and 3 (counts 4 to 9): play E (A string, fret 7); G"))
                .anyMatch(text -> text.contains("Beat 4 (counts 10 to 12), in eighths: play A, G"))
                .anyMatch(text -> text.startsWith("Bar 2, counts 4 to 6, an eighth and a quarter: play G"));
        var alone = Walkthrough.alternatives(line(line), Messages.of(Locale.ENGLISH))
                .apply(new Passage(new Position(1, Fraction.ZERO), new Position(2, Fraction.ZERO)));
        assertThat(alone).as("a picture of one bar").contains("a quarter and an eighth: play E");
    }

    @Test
    void equalBeatsAreToldTogetherAndBarsByTheirShape() {
        assertThat(english("""
                key     C major
                meter   4/4
                tempo   60
                strings E A D G
                style   finger

                bar 1 over C
                1    A3, A3
                2    A3, A3
                3    A3, A5
                4    A7 short

                bar 2
                1    D3, D3
                2    D3, D3
                3    D3, D5
                4    D7 short

                bar 3
                1    G5, G5
                2    G5, G5
                3    G5, G7
                4    G9 short

                bar 4 = bar 1
                bar 5 = bar 2
                """))
                .containsSubsequence(
                        "Bar 1, over C. Hand in position, index finger at fret 3, one finger per fret. With the plucking hand, alternate index and middle finger unless something else is said. Beat 1: play C (A string, fret 3), twice.",
                        "Bar 1, beats 2 and 3: play C (A string, fret 3), three times; D (fret 5). Then shift: index finger at fret 7.",
                        "Bar 1, beat 4: play E (A string, fret 7), short.",
                        "Bar 2. Shift: index finger at fret 3. The same shape as bar 1, one string higher, starting on F.",
                        "Bar 3. Shift: index finger at fret 5. The same shape as bar 1, an octave up, two strings higher and two frets up the neck, starting on C.");
    }

    /** An A7 chord is A, C sharp, E and G (rule: chord-tones); here its root, third and fifth rise. */
    @Test
    void aChordIsToldWithHowItIsSpreadOnce() {
        var line = LineText.read("bar 1\n1-2  A3 + D2 roll\n3  A3 + D2 roll down\n4  A3 + D2 bracket\n")
                .line();
        String text = Walkthrough.of(line, Messages.of(Locale.ENGLISH)).stream()
                .map(Step::text)
                .collect(Collectors.joining(" "));
        assertThat(text).containsOnlyOnce("rolled from the lowest up").containsOnlyOnce("rolled from the highest down");
        assertThat(text).containsOnlyOnce("strictly at once");
    }

    @Test
    void aBrokenChordIsNamedWhereItBegins() {
        assertThat(english("""
                key     A mixolydian
                meter   4/4
                tempo   60
                strings E A D G
                style   finger

                bar 1 over A7
                1    E5
                2    A4
                3    A7
                4    rest
                """))
                .contains(
                        "Bar 1, over A7. Hand in position, index finger at fret 4, one finger per fret. With the plucking hand, alternate index and middle finger unless something else is said. Beats 1 to 3: play A (E string, fret 5); C sharp, then E (A string, frets 4 and 7). That is root, third and fifth.");
    }

    @Test
    void equalBeatsOfOneChordAreOneStep() {
        assertThat(english("""
                key     C major
                meter   4/4
                tempo   60
                strings E A D G
                style   finger

                bar 1
                1    A3, A3
                2    A3, A3
                3    A3, A3
                4    A7

                bar 2
                1    E3
                2-4  A3
                bar 3 = bar 1
                bar 4 = bar 2
                """))
                .endsWith(
                        "Bar 1. Hand in position, index finger at fret 3, one finger per fret. With the plucking hand, alternate index and middle finger unless something else is said. Beats 1 to 3: on each beat play C (A string, fret 3), twice. Then shift: index finger at fret 7.",
                        "Bar 1, beat 4: play E (A string, fret 7).",
                        "Bar 2. Shift: index finger at fret 3. Beats 1 and 2: play G (E string, fret 3); C (A string, fret 3), held into beat 3.",
                        "Bar 2, beats 3 and 4: keep holding.",
                        "Bars 3 and 4: the same as bars 1 and 2.",
                        "Take breaks, and stop if anything hurts.");
    }

    /** British and German names as musicians use them (common practice, no source). */
    @Test
    void musiciansWhoDisagreeReadTheirOwnNames() {
        assertThat(Walkthrough.of(line(SIXTEENTHS), Messages.of(Locale.ENGLISH), Naming.BRITISH))
                .extracting(Step::text)
                .anyMatch(text -> text.contains("Beat 1, a quaver and two semiquavers: play A"))
                .anyMatch(text -> text.contains("at 96 beats per minute"));
        assertThat(Walkthrough.of(line(SIXTEENTHS), Messages.of(Locale.GERMAN), Naming.INTERNATIONAL))
                .extracting(Step::text)
                .anyMatch(text -> text.contains("A, dann B (E-Saite, Bünde 5 und 7)"));
    }

    @Test
    void stepsAreTiedToTheirPassages() {
        var steps = Walkthrough.of(line(FORM), Messages.of(Locale.ENGLISH));
        assertThat(steps.get(0).passage()).isEqualTo(new Passage(at(0, 0), at(5, 0)));
        assertThat(steps.get(1).passage()).isEqualTo(new Passage(at(0, 3), at(1, 0)));
        assertThat(steps.get(5).passage()).isEqualTo(new Passage(at(1, 2), at(1, 3)));
    }

    @Test
    void aPictureIsReplacedByTheBarsThatItShows() {
        var alternative = Walkthrough.alternatives(line(FORM), Messages.of(Locale.ENGLISH));
        assertThat(alternative.apply(new Passage(at(2, 0), at(4, 0))))
                .isEqualTo(
                        "Bass line in notation and tablature, bars 2 to 3. Ending 1: only the first time. Bar 2, over Fm7, from 3& over Bb7: the same as bar 1. Back to bar 1. Ending 2: only the second time. Bar 3, over Db: rest for the whole bar.");
    }

    private static Position at(int bar, int beat) {
        return new Position(bar, Fraction.of(beat, 4));
    }

    private static List<String> english(String text) {
        return told(text, Locale.ENGLISH);
    }

    private static List<String> german(String text) {
        return told(text, Locale.GERMAN);
    }

    private static List<String> told(String text, Locale locale) {
        return Walkthrough.of(line(text), Messages.of(locale)).stream()
                .map(Step::text)
                .toList();
    }

    private static Line line(String text) {
        var reading = LineText.read(text);
        assertThat(reading.problems()).isEmpty();
        return reading.line();
    }
}
