package groundbass.writing;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.writing.Element.Chord;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Accidentals before grace notes (rule: grace-note-accidental). */
class GraceSignsTest {
    /** The signs in the order of reading, a grace note's in brackets: {@code [N] S . .}. */
    private static String signs(String bars) {
        var reading = LineText.read("title T\n" + bars);
        assertThat(reading.problems()).isEmpty();
        return Writing.of(reading.line()).bars().stream()
                .map(bar -> bar.voices().get(0).elements().stream()
                        .filter(Chord.class::isInstance)
                        .flatMap(chord -> ((Chord) chord).heads().stream())
                        .flatMap(GraceSignsTest::signs)
                        .collect(Collectors.joining(" ")))
                .collect(Collectors.joining(" | "));
    }

    private static Stream<String> signs(Head head) {
        return Stream.concat(
                head.grace().map(grace -> "[" + sign(grace.accidental()) + "]").stream(),
                Stream.of(sign(head.accidental())));
    }

    private static String sign(Optional<Head.Accidental> accidental) {
        return accidental.map(each -> each.sign().name().substring(0, 1)).orElse(".");
    }

    @Test
    void aGraceNotesNaturalIsCancelledByTheNoteAfterIt() {
        assertThat(signs("key G major\nbar 1\n1-4 D5 hammer from 3, D4, D3, D5 hammer from 4\n"))
                .isEqualTo("[N] . S N [S] .");
    }

    @Test
    void aGraceNoteNeedsNoSignThatHoldsAlready() {
        assertThat(signs("key C major\nbar 1\n1-4 D4, D5 hammer from 4, D5, D5 hammer from 4\n"))
                .isEqualTo("S [.] . . [.] .");
    }
}
