package groundbass.script;

import static org.junit.jupiter.api.Assertions.assertTrue;

import groundbass.linetext.LineText;
import groundbass.score.Line;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * Measures the proofreader by sentences that somebody else wrote before there was any code (see the README beside
 * them). What is right on the neck follows from rule: twelve-frets-an-octave; what is right in a line, from its text.
 */
class FrozenSentencesTest {
    private static final Map<String, Line> LINES = Map.of(
            "01", line("01-rope-and-pulley"), "02", line("02-night-ferry"), "04", line("04-below-the-waterline"));

    private record Row(String id, String line, String verdict, String sentence, String why) {
        boolean isWrong() {
            return verdict.equals("contradicts");
        }
    }

    @Test
    void findsNineInTenContradictionsWithHardlyAFalseAlarm() {
        var disputed = disputed();
        var rows = rows().stream().filter(row -> !disputed.contains(row.id())).toList();
        var missed = new ArrayList<Row>();
        var alarms = new ArrayList<Row>();
        int agreeing = 0;
        for (var row : rows) {
            var read = Proofreading.of(row.sentence(), LINES.get(row.line()), Locale.ENGLISH);
            boolean flagged = !read.contradictions().isEmpty();
            if (row.isWrong() && !flagged) {
                missed.add(row);
            }
            if (!row.isWrong() && flagged) {
                alarms.add(row);
            }
            agreeing += row.verdict().equals("agrees") && read.agreeing() > 0 && !flagged ? 1 : 0;
        }
        long wrong = rows.stream().filter(Row::isWrong).count();
        long right = rows.size() - wrong;
        report("missed", missed);
        report("false alarm", alarms);
        System.out.println("found " + (wrong - missed.size()) + " of " + wrong + " contradictions, false alarms "
                + alarms.size() + " of " + right + ", agreement recognised in " + agreeing + " sentences; disputed "
                + disputed);
        assertTrue(missed.size() * 10 <= wrong, "missed " + missed.size() + " of " + wrong);
        assertTrue(alarms.size() * 100 < 3 * right, "false alarms " + alarms.size() + " of " + right);
    }

    private static void report(String what, List<Row> rows) {
        rows.forEach(row -> System.out.println(what + " " + row.id() + " (line " + row.line() + "): " + row.sentence()
                + (row.why().isEmpty() ? "" : "  [" + row.why() + "]") + "\n        "
                + Proofreading.of(row.sentence(), LINES.get(row.line()), Locale.ENGLISH)
                        .statements()));
    }

    private static Set<String> disputed() {
        return text("disputed.txt")
                .lines()
                .filter(row -> !row.isBlank() && !row.startsWith("#"))
                .map(row -> row.split("\\s", 2)[0])
                .collect(Collectors.toSet());
    }

    private static List<Row> rows() {
        return text("sentences.tsv")
                .lines()
                .skip(1)
                .map(row -> row.split("\t", -1))
                .map(cells -> new Row(cells[0], cells[1], cells[2], cells[3], cells.length > 4 ? cells[4] : ""))
                .toList();
    }

    static Line line(String folder) {
        try {
            return LineText.read(Files.readString(Path.of("seed-data/harbour-rounds", folder, "line.txt")))
                    .line();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    static String text(String name) {
        try (var in = FrozenSentencesTest.class.getResourceAsStream("/spec/script/" + name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
