package groundbass.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.remark.Remark;
import groundbass.remark.Severity;
import groundbass.remark.Span;
import groundbass.text.Languages;
import groundbass.text.Messages;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LineRemarksTest {
    /** rule: legato-direction. */
    private static final String FALLING = "1-4  A5, A3 hammer\n";

    @Test
    void mistakesComeFirstAndThenWhatCouldBeRead() {
        var remarks = of("bar 1\n" + FALLING + "bar 2\n1-4  E58\n");
        assertThat(remarks)
                .extracting(Remark::severity)
                .startsWith(Severity.ERROR)
                .contains(Severity.IMPOSSIBLE)
                .isSorted();
    }

    @Test
    void whatIsUnderlinedReachesOverAllNotesOfItsLine() {
        var grip = of("bar 1\n1  E5+A9\n2-4 rest\n").stream()
                .filter(remark -> remark.code().startsWith("stretch"))
                .toList();
        assertThat(grip).extracting(Remark::span).containsExactly(new Span(2, 4, 5));
        var hammer = of("bar 1\n" + FALLING).get(0);
        assertThat(hammer.span()).isEqualTo(new Span(2, 10, 2));
    }

    @Test
    void ofTooManyNoneThatBlocksIsLeftOut() {
        var text = new StringBuilder();
        for (int bar = 1; bar <= 60; bar++) {
            text.append("bar\n1-4  A5 ring, A").append(bar % 5).append("\n");
        }
        text.append("bar\n").append(FALLING);
        var remarks = of(text.toString());
        assertThat(remarks).hasSize(51);
        assertThat(remarks).anyMatch(remark -> remark.code().equals("hammer-not-up"));
        var last = remarks.get(50);
        assertThat(last.code()).isEqualTo("more-remarks");
        assertThat((int) last.message().args().get(0)).isGreaterThan(10);
    }

    /** What a note was probably meant to be is asked once, in either language. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "note-outside-chord | bar 1 over C / 1-4 A3, G0, G2, A3, A3, A4, G0, A3",
                "note-outside-key | bar 1 / 1-4 A3, G0, G2, A3, A3, A4, G0, A3"
            })
    void aRemarkAsksOneQuestion(String code, String bars) {
        var asking = of("key C major\ntempo 90\n\n" + bars.replace(" / ", "\n") + "\n").stream()
                .filter(remark -> remark.code().equals(code) && remark.meant().isPresent())
                .toList();
        assertThat(asking).hasSize(1);
        for (var language : Languages.SPOKEN) {
            assertThat(Messages.of(language).say(asking.get(0).sentence())).containsOnlyOnce("?");
        }
    }

    private static List<Remark> of(String text) {
        return LineRemarks.of(LineText.read(text));
    }
}
