package groundbass.checks;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Lines as they are meant, and the same with one slip of the hand. What was meant is known, since the slip was planted. */
class SlipsTest {
    private static final String HEAD = "key A minor\nmeter 4/4\ntempo 96\nstrings E A D G\nstyle finger\n\n";
    private static final String RIFF = """
            bar 1 over Am
            1 A0, A0
            2 Ax, G2
            3 A3, A0
            4 D2 for 2
            bar 2 over Dm
            1 D0, D0
            2 Dx, G7
            3 D3, D0
            4 G2 for 2
            bar 3 over Am
            1 A0, A0
            2 Ax, G2
            3 A3, A0
            4 D2, A2
            bar 4 over Em
            1 E0, E0
            2 Ex, D2
            3 E3, E0
            4 E3, E2
            """;

    @Test
    void theLineAsItIsMeantIsLeftAlone() {
        assertThat(Said.codes(Said.line(HEAD + RIFF))).isEmpty();
    }

    /** The string beside it, a fret beside it, an octave, a digit struck twice, a fret for a dead note. */
    @ParameterizedTest
    @CsvSource({
        "3, '3 A3, A0', '3 D3, A0', 3.3",
        "1, '3 A3, A0', '3 A4, A0', 1.3",
        "3, '2 Ax, G2', '2 Ax, G14', 3.2&",
        "1, '2 Ax, G2', '2 Ax, G22', 1.2&",
        "3, '2 Ax, G2', '2 A0, G2', 3.2",
    })
    void aPlaceThatWasNotMeantIsPutRight(int bar, String meant, String typed, String where) {
        var line = Said.line(HEAD + slipped(bar, meant, typed));
        var finding = Said.only(line, "bar-nearly-repeats");
        assertThat(Said.count(line, finding)).isEqualTo(where);
        var repaired = finding.repairs().get(0).applyTo(line);
        assertThat(LineText.print(repaired)).isEqualTo(LineText.print(Said.line(HEAD + RIFF)));
    }

    /** A note that comes late, two that have changed places, a dead note left out, another stroke. */
    @ParameterizedTest
    @CsvSource({
        "3, '1 A0, A0', '1 A0 for 3, A0', figure-at-another-time, 3.1a",
        "3, '2 Ax, G2', '2 G2, Ax', figure-other-way-round, 3.2",
        "3, '1 A0, A0 / 2 Ax, G2', '1 A0, A0 / 2 rest, G2', figure-without-dead-note, 3.1&",
        "3, '3 A3, A0', '3 A3 pop, A0', figure-struck-otherwise, 3.3",
    })
    void aFigureThatLostItsShapeIsWorthALook(int bar, String meant, String typed, String code, String where) {
        var line = Said.line(HEAD + slipped(bar, meant, typed));
        assertThat(Said.count(line, Said.only(line, code))).isEqualTo(where);
    }

    /** None of the notes over it is the root of the chord that was typed, all are of the other. */
    @ParameterizedTest
    @CsvSource({"over Dm, over Em, Dm", "over Em, over Ebm, Em"})
    void aChordThatItsNotesDoNotKnowIsInQuestion(String meant, String typed, String better) {
        var line = Said.line(HEAD + RIFF.replace(meant, typed));
        assertThat(Said.text(Said.only(line, "chord-in-question"))).contains(better);
    }

    /** @param meant what stands in the bar; counts are parted by " / " */
    private static String slipped(int bar, String meant, String typed) {
        String right = meant.replace(" / ", "\n");
        int at = RIFF.indexOf(right, RIFF.indexOf("bar " + bar));
        assertThat(at).isPositive();
        return RIFF.substring(0, at) + typed.replace(" / ", "\n") + RIFF.substring(at + right.length());
    }
}
