package groundbass.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.document.HouseStyle;
import groundbass.document.SheetAbbreviations;
import groundbass.document.SheetAids;
import groundbass.document.SheetLetters;
import groundbass.document.SheetPaper;
import groundbass.linetext.LineText;
import groundbass.text.Messages;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class PrintedLettersTest {
    private static final Sheets SHEETS = new Sheets(Messages.of(Locale.ENGLISH));

    private static String svg(String letters) {
        var line = LineText.read("bar 1\n1-2  E0 slap, G2 pop, E3 down, E5 hammer\n3-4  rest\n")
                .line();
        var style =
                new HouseStyle(SheetLetters.parse(letters), SheetAbbreviations.NONE, SheetPaper.A4, SheetAids.USUAL);
        return SHEETS.with(style).svg(line, 110, "x-");
    }

    @Test // rule: technique-letters: thumb is T, or S; pop is P, or Po
    void aSeriesPrintsItsOwnLetters() {
        assertThat(svg("")).contains(">T<", ">P<", ">H<");
        assertThat(svg("slap=S pop=Po")).contains(">S<", ">Po<").doesNotContain(">T<", ">P<");
    }

    @Test // rule: technique-letters: thumb strokes are T with a sign, or D and U
    void lettersMayStandForTheSignsOfTheStrokes() {
        assertThat(svg("down=D")).contains(">D<");
    }

    @Test
    void aHyphenPrintsNothingAndTheLegendSaysNothingOfIt() {
        assertThat(svg("slap=- hammer=-")).doesNotContain(">T<", ">H<", "slap with the thumb", "hammer: no new pluck");
    }

    @Test
    void theUsualLettersAreThoseOfTheSheet() {
        assertThat(UsualLetters.of("slap")).isEqualTo("T");
        assertThat(UsualLetters.of("pull")).isEqualTo("P");
        assertThat(UsualLetters.of("finger")).isEmpty();
    }
}
