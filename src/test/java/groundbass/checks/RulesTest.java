package groundbass.checks;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.remark.Severity;
import groundbass.score.Line;
import groundbass.text.Messages;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * One line that a rule remarks on, and its neighbour that it does not. Limits are those of
 * src/main/docs/playing-limits.md.
 */
class RulesTest {
    private static final String HEAD = "key %s\nmeter 4/4\ntempo %s\nstrings %s\nstyle %s\n\n";
    private static final String FOUR = "E A D G";

    private static Line line(String key, int tempo, String style, String bars) {
        return line(key, FOUR, tempo, style, bars);
    }

    private static Line line(String key, String strings, int tempo, String style, String bars) {
        var reading = LineText.read(
                String.format(Locale.ROOT, HEAD, key, tempo, strings, style) + bars.replace(" / ", "\n") + "\n");
        assertThat(reading.problems()).isEmpty();
        return reading.line();
    }

    @ParameterizedTest
    @CsvFileSource(resources = "/spec/findings/findings.txt", delimiter = '|')
    void remarksOn(String code, Severity severity, String key, String strings, int tempo, String style, String bars) {
        var line = line(key, strings, tempo, style, bars);
        var finding = Checks.of(line).stream()
                .filter(each -> each.code().equals(code))
                .findFirst();
        assertThat(finding).as(code + " in " + Checks.of(line)).isPresent();
        assertThat(finding.get().severity()).isEqualTo(severity);
        assertThat(Messages.of(Locale.GERMAN).say(finding.get().reason())).isNotBlank();
    }

    /** Findings have a sentence in the bundle under their code; words that sentences are made of have longer keys. */
    @Test
    void everyFindingHasAnExample() throws IOException {
        var codes = ResourceBundle.getBundle("groundbass.messages", Locale.ROOT).keySet().stream()
                .filter(key -> key.matches("checks\\.[a-z-]+"))
                .map(key -> key.substring("checks.".length()));
        var examples = Files.readAllLines(Path.of("src/test/resources/spec/findings/findings.txt")).stream()
                .map(row -> row.split("\\|")[0].strip())
                .collect(Collectors.toSet());
        assertThat(codes).isNotEmpty().isSubsetOf(examples);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "80  | finger | 1 E5+A7 / 2-4 rest",
                "80  | finger | 1 E5 with 1 + A5 with 1 / 2-4 rest",
                "80  | finger | 1 E3, E5 hammer / 2-4 rest",
                "100 | finger | 1 2 3 4 A5, A5, A5, A5",
                "80  | slap   | 1 E5+A7 / 2-4 rest",
                "80  | pick   | 1 E5+A7 / 2-4 rest",
                "80  | finger | 1 E5 down, E5 up / 2-4 rest",
                "80  | finger | 1 A3, A5 hammer, A3 pull, A5 hammer / 2-4 rest",
                "80  | finger | 1 E5 ring, A7 / 2-4 rest",
                "80  | finger | 1 E5 vibrato / 2-4 rest",
                "80  | finger | 1 G5 bend 1/2 / 2-4 rest",
                "80  | finger | 1 D5 bend 1 / 2-4 rest",
                // sixteenths at 120 are eight a second
                "120 | finger | 1 E5, G5, E5, rest / 2-4 rest",
                // and 125 ms apart
                "120 | finger | 1 E5 with 1, A7 with 1, rest, rest / 2-4 rest",
                "80  | finger | 1 E5 ring, rest, E5, rest / 2-4 rest",
                "80  | finger | 1 A7 harmonic, A12 harmonic / 2-4 rest",
                "120 | finger | 1 E1, E12 / 2-4 rest",
                "200 | finger | 1 E1, E12 slide / 2-4 rest",
            })
    void doesNotRemarkOn(int tempo, String style, String bar) {
        assertThat(Said.codes(line("C major", tempo, style, "bar 1\n" + bar))).isEmpty();
    }

    /** rule: harmonic-nodes: fret 9 (fifth partial) is nearest to 10; 8 (eighth) and 12 (second) are as far, and the second sounds best. */
    @Test
    void aHarmonicOffItsNodeMovesToTheNearest() {
        var line = line("C major", 80, "finger", "bar 1\n1 A10 harmonic\n2-4 rest");
        var repairs = Said.only(line, "harmonic-off-node").repairs();
        assertThat(repairs)
                .extracting(repair -> LineText.print(repair.applyTo(line)))
                .satisfiesExactly(nearest -> assertThat(nearest).contains("A9 harmonic"), next -> assertThat(next)
                        .contains("A12 harmonic"));
    }

    /** A note that leads nowhere has its name from the harmonic chromatic scale: C D flat D (theory handbooks, from memory). */
    @Test
    void aSlipOutsideTheKeyIsFoundAndPutRight() {
        var line = line("C major", 90, "finger", "bar 1 over C\n1-4 A3, G0, G2, A3, A3, A4, G0, A3");
        var finding = Said.only(line, "note-outside-chord");
        assertThat(Said.text(finding)).startsWith("D flat is outside C major and no tone of C");
        assertThat(finding.repairs()).isNotEmpty();
        assertThat(Said.codes(finding.repairs().get(0).applyTo(line))).isEmpty();
    }

    /** Walking up by semitones, blue notes over a seventh chord, and what recurs are meant. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "C major      | bar 1 over C / 1-4 A3, A5, A6, A7 / bar 2 over F / 1-4 D3, D3, D3, D3",
                "A mixolydian | bar 1 over A7 / 1-4 A0, A3, A0, A3 / bar 2 over D7 / 1-4 A5, D3, A5, D3",
                "C major      | bar 1 over C / 1-4 A3, A4, A3, A4 / bar 2 / 1-4 A3, A4, A3, A3",
                "A minor      | bar 1 over E7 / 1-4 E0, E4, A2, E0 / bar 2 over Am / 1-4 A0, A0, E4, A0",
            })
    void whatIsMeantIsNoSlip(String key, String bars) {
        assertThat(Said.codes(line(key, 90, "finger", bars))).isEmpty();
    }

    @Test
    void theKeyIsQuestionedWhereAnotherHoldsNearlyAllNotes() {
        String scale = "1-4 A0, A2, A4, D0, D2, D4, G1, G2";
        var line = line("Eb major", 90, "finger", "bar 1\n" + scale + "\nbar 2\n1-4 A0, D2, G2, D2, A0, D2, A4, A0");
        var finding = Said.only(line, "key-in-question");
        assertThat(Said.text(finding)).contains("in A major");
        var right = line("A major", 90, "finger", "bar 1\n" + scale + "\nbar 2\n1-4 A0, D2, G2, D2, A0, D2, A4, A0");
        assertThat(Said.codes(right)).isEmpty();
    }

    @Test
    void oneNoteThatBreaksTheShapeOfThreeBarsIsWorthALook() {
        String figure = "1-4 E5, E8, A5, A7, D5, A7, A5, E8";
        String odd = "1-4 E7, E10, A7, A10, D7, A9, A7, E10";
        String bars = "bar 1\n" + figure + "\nbar 2\n" + figure + "\nbar 3\n" + odd + "\nbar 4\n" + figure;
        var finding = Said.only(line("A minor", 90, "finger", bars), "bar-nearly-repeats");
        assertThat(finding.position().bar()).isEqualTo(3);
        assertThat(Said.text(finding)).contains("A10").contains("A9");
    }

    @Test
    void threeRepeatedBarsAreWorthALook() {
        String bar = "1-4 A3, A3, A3, A3\n";
        var odd = line(
                "C major",
                90,
                "finger",
                "repeat start\nbar 1\n" + bar + "bar 2\n" + bar + "bar 3\n" + bar + "repeat end");
        var finding = Said.only(odd, "repeat-odd");
        assertThat(finding.position().bar()).isEqualTo(1);
        assertThat(Said.text(finding)).contains("3");
        var even = line("C major", 90, "finger", "repeat start\nbar 1\n" + bar + "bar 2\n" + bar + "repeat end");
        assertThat(Said.codes(even)).isEmpty();
    }

    @Test
    void notesStrewnOverTheNeckLieUnderOneHand() {
        var line = line("A minor", 100, "finger", "bar 1\n1 E5, A3\n2 A5, E12\n3 D5, A5\n4 A3, E5");
        var finding = Checks.of(line).stream()
                .filter(each -> each.code().startsWith("lies-"))
                .findFirst()
                .orElseThrow();
        var easier = finding.repairs().get(0).applyTo(line);
        assertThat(Said.codes(easier)).isEmpty();
        assertThat(LineText.print(easier)).isNotEqualTo(LineText.print(line));
    }
}
