package groundbass.checks;

import groundbass.checks.finding.Finding;
import groundbass.linetext.LineText;
import groundbass.linetext.Reading;
import groundbass.score.Count;
import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Position;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** Lines with slips that were planted in them; the form stands in README.md beside the sets. */
record SlipSet(Path folder) {
    static final Path SETS = Path.of("src/test/resources/spec/slips");
    private static final Fraction NEAR = Fraction.of(1, 4);

    /**
     * @param lines first and last line of the file that were typed otherwise
     * @param count where in the bar, such as {@code 2&} or {@code 3-4}; {@code -} for the whole bar
     */
    record Slip(String clean, String lines, String typed, int bar, String count, String kind, String right) {}

    /** What became of a slip. */
    record Outcome(Slip slip, boolean found, boolean putRight) {}

    static List<SlipSet> all() {
        try (var folders = Files.list(SETS)) {
            return folders.filter(Files::isDirectory).sorted().map(SlipSet::new).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    Map<String, String> clean() {
        try (Stream<Path> files = Files.list(folder)) {
            var texts = new TreeMap<String, String>();
            for (var file : files.filter(each -> each.getFileName().toString().startsWith("clean-"))
                    .toList()) {
                texts.put(file.getFileName().toString().substring("clean-".length(), "clean-NN".length()), text(file));
            }
            return texts;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    List<Slip> slips() {
        return text(folder.resolve("slips.tsv"))
                .lines()
                .skip(1)
                .map(row -> row.split("\t"))
                .map(row -> new Slip(row[0], row[1], row[2], Integer.parseInt(row[3]), row[4], row[5], row[6]))
                .toList();
    }

    List<Outcome> outcomes() {
        var clean = clean();
        return slips().stream()
                .map(slip -> outcome(slip, clean.get(slip.clean())))
                .toList();
    }

    private static Outcome outcome(Slip slip, String text) {
        var reading = LineText.read(typed(slip, text));
        if (!reading.problems().isEmpty()) {
            return new Outcome(slip, true, false);
        }
        var meant = read(text).line();
        var said = Checks.of(meant);
        var found = Checks.of(reading.line()).stream()
                .filter(finding -> said.stream().noneMatch(other -> isTheSame(finding, other)))
                .filter(finding -> isAt(finding, slip, reading.line()))
                .toList();
        boolean putRight = found.stream()
                .flatMap(finding -> finding.repairs().stream().limit(1))
                .anyMatch(
                        repair -> LineText.print(repair.applyTo(reading.line())).equals(LineText.print(meant)));
        return new Outcome(slip, !found.isEmpty(), putRight);
    }

    private static boolean isTheSame(Finding one, Finding other) {
        return one.code().equals(other.code()) && one.passage().equals(other.passage());
    }

    private static boolean isAt(Finding finding, Slip slip, Line line) {
        var meter = line.inForce().get(line.indexOf(slip.bar())).meter();
        if (finding.position().bar() != slip.bar()) {
            return finding.passage().contains(new Position(slip.bar(), Fraction.ZERO));
        }
        if (slip.count().equals("-")) {
            return true;
        }
        var counts = slip.count().split("-");
        var from = Count.parse(counts[0]).orElseThrow().offset(meter);
        var to = Count.parse(counts[counts.length - 1]).orElseThrow().offset(meter);
        var at = finding.position().at();
        boolean around = finding.passage().contains(new Position(slip.bar(), from));
        return around || (!at.plus(NEAR).isBefore(from) && !at.isAfter(to.plus(NEAR)));
    }

    private static String typed(Slip slip, String text) {
        var lines = new ArrayList<>(List.of(text.split("\n", -1)));
        var range = slip.lines().split("-");
        var replaced = lines.subList(Integer.parseInt(range[0]) - 1, Integer.parseInt(range[1]));
        replaced.clear();
        replaced.addAll(List.of(slip.typed().split(" // ")));
        return String.join("\n", lines);
    }

    static Reading read(String text) {
        return LineText.read(text);
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
