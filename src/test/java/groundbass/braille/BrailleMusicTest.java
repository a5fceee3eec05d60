package groundbass.braille;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.text.Messages;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Bars with all that belongs to a bass line, put together by hand from the tables and rules of {@code braille.md}. */
class BrailleMusicTest {
    private static List<String> rows(String text, Locale locale) {
        var reading = LineText.read("a.line", text);
        assertThat(reading.problems()).isEmpty();
        return BrailleSheet.of(reading.line(), Messages.of(locale)).rows().stream()
                .map(Cells::ascii)
                .toList();
    }

    private static List<String> music(String text) {
        var rows = rows(text, Locale.ENGLISH);
        int head = rows.indexOf("");
        var behind = rows.subList(head + 2, rows.size());
        int chords = behind.indexOf("");
        return behind.subList(0, chords < 0 ? behind.size() : chords);
    }

    private static final String SMALL = """
            title Slack Water
            composer Quay Studio
            key Bb major
            meter 6/8
            tempo 60
            strings B E A D G

            bar 1 over Bbmaj7/D, F#7 at 4
            1-6  A1
            """;

    /** rule: braille-heading, braille-literary-code */
    @Test
    void theHeading() {
        assertThat(rows(SMALL, Locale.ENGLISH))
                .startsWith(
                        "             ,SLACK ,WATER",
                        ",QUAY ,STUDIO",
                        ",STRINGS1 THE HIGHEST IS #A3 #A ,G1 #B",
                        "  ,D1 #C ,A1 #D ,E1 #E ,B",
                        ",B FLAT MAJOR")
                .contains("              ?'7#FJ <<#F8");
        assertThat(rows(SMALL, Locale.GERMAN))
                .startsWith("              SLACK WATER", "QUAY STUDIO", "SAITEN1 DIE H[CHSTE IST #A3 #A G1 #B");
    }

    /** rule: braille-chords-apart */
    @Test
    void theChordsBehindTheMusic() {
        var rows = rows(SMALL, Locale.ENGLISH);
        assertThat(rows.subList(rows.size() - 4, rows.size()))
                .containsExactly("#A >>%L^T'<K", "", "             ,CHORDS BY BAR", "#A ,B<MAJ#G_/,D \"<#D\"> ,F%#G");
    }

    /** NIM 1996, 12-4: the signs of music for accidentals, before degrees as well. rule: braille-chords-apart */
    @Test
    void alteredDegreesOfChords() {
        var rows = rows("bar 1 over F#7b9, Bbm7b5 at 2, E7#11 at 3\n1-4  rest\n", Locale.ENGLISH);
        assertThat(rows.get(rows.size() - 2) + rows.get(rows.size() - 1))
                .endsWith("#A ,F%#G<#I \"<#B\"> ,B<M#G<#E \"<#C\">  ,E#G%#AA");
    }

    /** rule: braille-repeats, braille-dot-three, braille-fret-signs */
    @Test
    void repeatsAndEndings() {
        assertThat(music("""
                repeat start
                bar 1
                1-4  A0, A3
                ending 1-2
                bar 2
                1-4  A5, A3
                ending end
                repeat end x3
                ending 3
                bar 3
                1-4  A7
                ending end
                """)).containsExactly("#A <7%L^S>+N #1-2'>9%L_ON<2>'#C>TIMES", "#C #3,>3%L_&<K");
    }

    /** rule: braille-repeats, braille-word-sign */
    @Test
    void jumps() {
        assertThat(music("""
                bar 1
                1-4  A0, A3
                segno
                bar 2
                1-4  D0, D3
                to coda
                bar 3 over E7
                1-4  E0, E4
                dal segno al coda
                coda
                bar 4
                1-4  A0
                """))
                .containsExactly("#A %L^S>+N + %B_O>+Q<K'>TO>CODA", "#C %1^P%R<K' >D'S' AL CODA> +L %L^!<K");
    }

    /** rule: braille-words-of-ours, braille-string-signs, braille-divided-bar */
    @Test
    void deadAndGhostNotesInABarThatIsDivided() {
        assertThat(music("""
                bar 1
                1    Ex, E3, Ex, E3
                2    E5, A5 ghost
                3    Ax, Dx
                4    A3 ghost, A3
                """)).containsExactly("#A >X'%1^&>+(>X^&(I%L,'_E,'>X^I>X'%B_E\"", "  >+%L,'_D,'D<K");
    }

    /** rule: braille-order-of-signs: a harmonic is written where it sounds, and its fret is told. */
    @Test
    void harmonics() {
        assertThat(music("""
                bar 1
                1-2  rest
                3    G12 harmonic
                4    D5 harmonic at 17
                """)).containsExactly("#A U>-9%A\"\\K>AT#AG'>9%B*L\"\\<K");
    }

    /** rule: braille-word-sign: a hairpin that leads to a loudness has no sign for its end. */
    @Test
    void loudness() {
        assertThat(music("""
                bar 1
                1    A0 p cresc, A3
                2-3  A5
                4    A7 f dim
                bar 2
                1-2  A5, A3
                3-4  A0 mp
                """)).containsExactly("#A >P>C'%L^I>+DO>F>D,>3_$ :>+?>MP^S<K");
        assertThat(music("""
                bar 1
                1-2  A0 p
                3-4  A3 cresc
                """)).containsExactly("#A >P'%L^S>C'>+_N>3<K");
    }

    /** NIM 1996, 10-3: what is said with a word sign asks for the octave, the end of a hairpin as well. */
    @Test
    void theOctaveAfterTheEndOfAHairpin() {
        assertThat(music("""
                bar 1
                1-2  A0 p
                3-4  A3 cresc
                bar 2
                1-4  A3
                """)).containsExactly("#A >P'%L^S>C'>+_N>3 _Y<K");
    }

    /** rule: braille-word-sign */
    @Test
    void manyWordsInsideABar() {
        assertThat(music("""
                bar 1
                1-2  A0
                3-4  A3 "let it ring now"
                """)).containsExactly("#A %L^S\" >LET IT RING NOW> >+_N<K");
    }

    /** rule: braille-signatures, braille-heading */
    @Test
    void aSectionInAnotherKey() {
        assertThat(music("""
                bar 1
                1-4  A0
                section Verse
                key F major
                bar 2
                1-4  E1
                """)).containsExactly("#A %L^!<K'", "    ,VERSE", "#B < >>%1^=<K");
    }

    /** rule: braille-tuplets */
    @Test
    void aTriplet() {
        assertThat(music("""
                bar 1
                1    A0, A0, A0
                2    A0
                3-4  A0
                """)).containsExactly("#A %L2^III[S<K");
    }

    /** rule: braille-slur-and-slide */
    @Test
    void slursSlidesAndAGraceNote() {
        assertThat(music("""
                bar 1
                1    A3, A5 hammer
                2    A5 slide from 3
                3    A3, A5 slide
                4    A0
                """)).containsExactly("#A >+%L_DCE5DC@A:DC@AE^[<K");
    }

    /** MBC 1997, 15.1 and 18.1: ornament and attack stand before the note that they belong to. rule: braille-order-of-signs */
    @Test
    void anAccentBehindAGraceNote() {
        assertThat(music("""
                bar 1
                1-4  A5 hammer from 3 accent
                """)).containsExactly("#A >9%L5_DC.8Z<K");
    }

    /** MBC 1997, 15.2.2: where both notes are trilled, the sign stands before each. rule: braille-order-of-signs */
    @Test
    void aTrillOfNoteAndInterval() {
        assertThat(music("""
                bar 1
                1-4  A3 + D2 trill
                """)).containsExactly("#A >+%L6_Y%B6+<K");
    }

    /** The arpeggio signs (dots 3 4 5, 1 3, and 1 3 again downward) from memory. rule: braille-order-of-signs */
    @Test
    void aRolledChordHasItsSignBeforeTheNote() {
        assertThat(music("bar 1\n1-4  A3 + D2 roll\n")).containsExactly("#A >+%L>K_Y%B+<K");
        assertThat(music("bar 1\n1-4  A3 + D2 roll up\n")).containsExactly("#A >+%L>K_Y%B+<K");
        assertThat(music("bar 1\n1-4  A3 + D2 roll down\n")).containsExactly("#A >+%L>KK_Y%B+<K");
    }

    /** rule: braille-words-of-ours, braille-dot-three */
    @Test
    void aChordThatIsStruckAtOnceHasAWord() {
        assertThat(music("bar 1\n1-4  A3 + D2 bracket\n")).containsExactly("#A >TOG'>+%L_Y%B+<K");
    }

    /** MBC 1997, 10.6.1: an accidental that only the other voice has said has dot 5. rule: braille-in-accord */
    @Test
    void anAccidentalThatOnlyTheOtherVoiceHasSaid() {
        assertThat(music("""
                bar 1 over Bb7
                1    E6 until 5 + D2
                2    D2
                3-4  A1
                """)).containsExactly("#A >0%1<^)<>>/%B_$$%L\"<^T<K");
    }

    /** rule: braille-in-accord: the held lower voice first, then the upper one with a rest that only fills it. */
    @Test
    void aHeldNoteUnderOthers() {
        assertThat(music("""
                bar 1
                1    E0 until 5 + D2
                2    D2
                3-4  D5
                """)).containsExactly("#A %1^&<>>/%B_$$R<K");
    }
}
