package groundbass.braille;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Words in cells. Expected values were made with the tables {@code en-ueb-g1} and {@code de-g0} of liblouis 3.24.
 * rule: braille-literary-code
 */
class LiteraryTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "3.5 1,000 4/4 x=3 (a) Hello|⠼⠉⠲⠑⠀⠼⠁⠂⠚⠚⠚⠀⠼⠙⠸⠌⠼⠙⠀⠭⠐⠶⠼⠉⠀⠐⠣⠁⠐⠜⠀⠠⠓⠑⠇⠇⠕",
                "12 z 4e|⠼⠁⠃⠀⠵⠀⠼⠙⠰⠑",
                "xäx xÖx xüx xßx xéx xñx xåx|⠭⠘⠒⠁⠭⠀⠭⠠⠘⠒⠕⠭⠀⠭⠘⠒⠥⠭⠀⠭⠨⠮⠭⠀⠭⠘⠌⠑⠭⠀⠭⠘⠻⠝⠭⠀⠭⠘⠫⠁⠭",
                "x-x x'x x’x x&x x+x x%x x*x x#x x@x|⠭⠤⠭⠀⠭⠄⠭⠀⠭⠄⠭⠀⠭⠈⠯⠭⠀⠭⠐⠖⠭⠀⠭⠨⠴⠭⠀⠭⠐⠔⠭⠀⠭⠸⠹⠭⠀⠭⠈⠁⠭",
                "x[x x]x x…x|⠭⠨⠣⠭⠀⠭⠨⠜⠭⠀⠭⠲⠲⠲⠭"
            },
            quoteCharacter = '`')
    void english(String text, String cells) {
        assertThat(Literary.ENGLISH.cells(text).patterns()).isEqualTo(cells);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '~',
            value = {
                "3.5 1,000 4/4 x=3 (a) Hello~⠼⠉⠄⠑⠀⠼⠁⠂⠚⠚⠚⠀⠼⠙⠐⠂⠼⠙⠀⠭⠈⠶⠼⠉⠀⠶⠁⠶⠀⠓⠑⠇⠇⠕",
                "12 z 4e~⠼⠁⠃⠀⠵⠀⠼⠙⠠⠑",
                "xäx xÖx xüx xßx xéx~⠭⠜⠭⠀⠭⠪⠭⠀⠭⠳⠭⠀⠭⠮⠭⠀⠭⠈⠑⠭",
                "x.x x,x x;x x-x x'x x&x x+x~⠭⠄⠭⠀⠭⠂⠭⠀⠭⠆⠭⠀⠭⠤⠭⠀⠭⠠⠭⠀⠭⠐⠥⠭⠀⠭⠈⠖⠭"
            },
            quoteCharacter = '`')
    void german(String text, String cells) {
        assertThat(Literary.GERMAN.cells(text).patterns()).isEqualTo(cells);
    }

    /** RUEB 2013, 8.3, 8.4 and 8.6, their examples from memory. */
    @Test
    void capitals() {
        assertThat(Literary.ENGLISH.cells("Low TIDE, A CD's ABCs").ascii())
                .isEqualTo(",LOW ,,TIDE1 ,A ,,CD'S ,,ABC,'S");
        assertThat(Literary.GERMAN.cells("Der ABC").ascii()).isEqualTo("DER ABC");
    }

    /** Unicode, canonical equivalence: a letter and its accent as two characters are the letter with it. */
    @Test
    void anAccentThatIsACharacterOfItsOwn() {
        assertThat(Literary.ENGLISH.cells("e\u0301")).isEqualTo(Literary.ENGLISH.cells("\u00e9"));
    }

    @Test
    void aCharacterWithoutCellsIsAFullCell() {
        assertThat(Literary.ENGLISH.cells("λ").patterns()).isEqualTo("⠿");
    }

    @Test
    void rowsBreakBetweenWordsAndInsideOnesThatAreTooWide() {
        assertThat(Literary.ENGLISH.rows("a bcd efghijklm", 5).stream().map(Cells::ascii))
                .containsExactly("A BCD", "EFGHI", "JKLM");
    }

    /** rule: braille-dot-three, braille-word-sign */
    @Test
    void wordsAmongNotes() {
        assertThat(Expression.of("v. even", Literary.ENGLISH).atOnce().ascii()).isEqualTo(">V'>EVEN");
        assertThat(Expression.of("3 times", Literary.ENGLISH).atOnce().ascii()).isEqualTo(">'#C>TIMES");
        assertThat(Cells.of(">P").apart(Cells.of("%A")).ascii()).isEqualTo(">P'%A");
        assertThat(Cells.of(">P").apart(Cells.of("\"?")).ascii()).isEqualTo(">P\"?");
        var apart = Expression.of("let it breathe", Literary.ENGLISH).apart();
        assertThat(apart.stream().map(unit -> unit.plain().ascii())).isEqualTo(List.of(">LET", "IT", "BREATHE>"));
    }
}
