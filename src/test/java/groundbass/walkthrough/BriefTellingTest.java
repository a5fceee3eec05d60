package groundbass.walkthrough;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.score.Line;
import groundbass.score.RandomLines;
import groundbass.text.Messages;
import groundbass.walkthrough.words.Naming;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** A walkthrough in brief: a bar in one breath, and still every note of it. */
class BriefTellingTest {
    private static final int LINES = 60;
    private static final int WORDS_A_BAR = 45;

    /** {@code (E 5)}, {@code open E}, {@code dead (E)}, or a harmonic with its string. */
    private static final Pattern NOTE = Pattern.compile(
            "\\((?:[A-G](?: sharp| flat)?|string \\d+) (?<fret>\\d+)\\)|(?<open>open [A-Gs])|(?<dead>dead \\([^)]*\\))|(?<named>\\([^)]*string[^)]*\\))");

    /** What a stroke begins with, after what stands before the colon. */
    private static final Pattern COUNTS = Pattern.compile("(?<=^|: )\\d+[e&a]?(?:(?:, | and )\\d+[e&a]?)+(?= )");

    @Test
    void aBarIsCountedAloud() {
        var line = LineText.read("title Cleat\n\nbar 1 over Am7\n1 E5 slap, Ex slap\n2 rest, G7 pop\n3-4 A0 pop\n")
                .line();
        assertThat(texts(line, Locale.ENGLISH).get(1))
                .isEqualTo("Bar 1, over Am7: 1 slap A (E 5); 1& dead (E); 2 rest; " + "2& pop D (G 7); 3 open A.");
    }

    @Test
    void everyNoteOfABarIsToldOnce() {
        int told = 0;
        for (long seed = 0; seed < LINES; seed++) {
            var line = RandomLines.line(seed);
            for (var step : steps(line, Locale.ENGLISH)) {
                boolean like = step.text().contains("as bar");
                var bar = step.text().startsWith("Bar ") || step.text().startsWith("Pickup")
                        ? line.bar(step.passage().from().bar())
                        : null;
                if (bar != null && !like) {
                    assertThat(told(step.text()))
                            .as("seed %d: %s", seed, step.text())
                            .isEqualTo(bar.notes().size());
                    told += bar.notes().size();
                }
            }
        }
        assertThat(told).isPositive();
    }

    /** {@code 1, 2 and 3 play A (E 5)} is one note three times. */
    private static int told(String text) {
        int told = 0;
        for (String stroke : text.split("; ")) {
            var counts = COUNTS.matcher(stroke);
            int times = counts.find() ? counts.group().split(", | and ").length : 1;
            told += times * (int) NOTE.matcher(stroke).results().count();
        }
        return told;
    }

    @Test
    void beatsThatWerePlayedBeforeAreToldByTheirBar() {
        var line = LineText.read("""
                        title Cleat

                        bar 1 over Am7
                        1 E5, E5
                        2 E5, E8
                        3 A7
                        4 A5, E8

                        bar 2 over Bm7
                        1 E7, E7
                        2 E7, E10
                        3 rest
                        4 E7, E5
                        """).line();
        assertThat(texts(line, Locale.ENGLISH).get(2))
                .isEqualTo("Bar 2, over Bm7: beats 1 and 2 the same shape as bar 1, two frets up the neck;"
                        + " 3 rest; 4 play B (E 7); 4& A (E 5).");
    }

    /** The low note sounds through the whole second bar, beat 4 too, where its upper voice is silent. */
    @Test
    void whatIsHeldUnderBeatsThatWerePlayedBeforeIsNoRest() {
        var line = LineText.read("""
                        title Cleat

                        bar 1
                        1  E3 until end + D5, G4
                        2  D5, G4
                        3  D5, G4
                        4  D5, G4

                        bar 2
                        1  E3 until end + D7, G5
                        2  D5, G4
                        3  D5, G4
                        4  rest
                        """).line();
        assertThat(texts(line, Locale.ENGLISH).get(2)).contains("as bar 1").doesNotContain("rest");
    }

    @Test
    void theDemonstrationTakesFewWordsABar() {
        int words = 0;
        int bars = 0;
        for (var line : Demonstration.lines()) {
            for (var text : texts(line, Locale.ENGLISH)) {
                words += text.split("\\s+").length;
            }
            bars += line.bars().size();
        }
        System.out.println("brief: " + words + " words for " + bars + " bars");
        assertThat(bars).isPositive();
        assertThat(words).isLessThanOrEqualTo(WORDS_A_BAR * bars);
    }

    @Test
    void bothLanguagesTellTheSameSteps() {
        for (long seed = 0; seed < LINES; seed++) {
            var line = RandomLines.line(seed);
            assertThat(steps(line, Locale.GERMAN).stream().map(Step::passage))
                    .as("seed %d", seed)
                    .isEqualTo(steps(line, Locale.ENGLISH).stream()
                            .map(Step::passage)
                            .toList());
        }
    }

    private static List<Step> steps(Line line, Locale language) {
        return Walkthrough.of(line, Messages.of(language), Naming.USUAL, Depth.BRIEF);
    }

    private static List<String> texts(Line line, Locale language) {
        return steps(line, language).stream().map(Step::text).toList();
    }
}
