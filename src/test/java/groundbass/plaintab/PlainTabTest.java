package groundbass.plaintab;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.score.Count;
import groundbass.score.Credits;
import groundbass.score.Line;
import groundbass.score.Place;
import groundbass.score.RandomLines;
import groundbass.text.Messages;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Tablature in plain text, read as a player reads it; that it is written so is common practice, no source. */
class PlainTabTest {
    private static final Messages ENGLISH = Messages.of(Locale.ENGLISH);
    private static final Pattern STRING = Pattern.compile("([A-G][#b]?) +([-:|].*)");
    private static final Pattern FIGURE = Pattern.compile("[^-|: ]+");
    private static final Pattern WORD = Pattern.compile("\\S+");
    private static final Pattern FRET = Pattern.compile("(?:\\d*[hp/\\\\])?[/\\\\]?[(<]?(\\d+|x).*");

    private static List<String> rows(Line line) {
        return PlainTab.of(line, ENGLISH);
    }

    private static Line line(String text) {
        var reading = LineText.read("a.line", text);
        assertThat(reading.problems()).isEmpty();
        return reading.line();
    }

    @Test
    void aRolledChordHasABraceUnderIt() {
        assertThat(rows(line("bar 1\n1-2 A3 + D5 roll\n3 A3 + D5 roll down\n4 A3 + D5 bracket\n")))
                .anyMatch(row -> row.strip().matches("}\\s+\\{\\s+]"))
                .contains(
                        "}  rolled: one string after the other from the lowest up",
                        "{  rolled from the highest down",
                        "]  strictly at once");
    }

    private static List<Line> lines() throws IOException {
        var lines = new ArrayList<Line>();
        try (Stream<Path> files = Files.walk(Path.of("seed-data"))) {
            for (var file :
                    files.filter(each -> each.endsWith("line.txt")).sorted().toList()) {
                lines.add(LineText.read("line.txt", Files.readString(file)).line());
            }
        }
        for (long seed = 1; seed <= 200; seed++) {
            lines.add(RandomLines.line(seed));
        }
        return lines;
    }

    /** What a player reads: which bar, how it is counted, which string, which fret. */
    record Played(int bar, String count, int string, String fret) {}

    /** Reads the rows of strings, and the row of counts over the first of them. */
    private static final class Player {
        private final List<Played> played = new ArrayList<>();
        private int bar = -1;
        private int number;

        static List<Played> of(List<String> rows, int strings) {
            var player = new Player();
            for (int i = 1; i + strings <= rows.size(); i++) {
                boolean begins = !STRING.matcher(rows.get(i - 1)).matches();
                if (begins
                        && rows.subList(i, i + strings).stream()
                                .allMatch(row -> STRING.matcher(row).matches())) {
                    player.read(rows.get(i - 1), rows.subList(i, i + strings));
                }
            }
            return player.played;
        }

        private void read(String counts, List<String> strings) {
            var words = new HashMap<Integer, String>();
            WORD.matcher(counts).results().forEach(word -> words.put(word.start(), word.group()));
            var figures = figures(strings);
            String first = strings.get(0);
            for (int x = 0; x < first.length(); x++) {
                boolean last = x + 1 == first.length();
                bar += first.charAt(x) == '|' && !last ? 1 : 0;
                String count = words.containsKey(x) ? counted(words.get(x)) : "nowhere";
                for (int string = strings.size(); string >= 1; string--) {
                    String figure = figures.get(string - 1).get(x);
                    if (figure != null) {
                        var fret = FRET.matcher(figure);
                        assertThat(fret.matches()).as(figure).isTrue();
                        played.add(new Played(bar, count, string, fret.group(1)));
                    }
                }
            }
        }

        private static List<Map<Integer, String>> figures(List<String> strings) {
            return strings.stream()
                    .map(row -> {
                        var figures = new HashMap<Integer, String>();
                        var string = STRING.matcher(row);
                        assertThat(string.matches()).isTrue();
                        FIGURE.matcher(string.group(2))
                                .results()
                                .forEach(figure -> figures.put(string.start(2) + figure.start(), figure.group()));
                        return (Map<Integer, String>) figures;
                    })
                    .toList();
        }

        private String counted(String word) {
            if (Character.isDigit(word.charAt(0))) {
                number = Integer.parseInt(word.replaceAll("\\D", ""));
                return word;
            }
            return word.equals(TabBar.UNCOUNTED) ? word : number + word;
        }
    }

    private static List<Played> played(Line line) {
        var played = new ArrayList<Played>();
        var inForce = line.inForce();
        for (int i = 0; i < line.bars().size(); i++) {
            for (var note : line.bars().get(i).notes()) {
                String count = Count.at(note.onset(), inForce.get(i).meter())
                        .map(Count::toString)
                        .orElse(TabBar.UNCOUNTED);
                String fret = note.place() instanceof Place.Fretted fretted ? String.valueOf(fretted.fret()) : "x";
                played.add(new Played(i, count, note.string(), fret));
            }
        }
        return played;
    }

    @Test
    void everyNoteStandsOnItsStringUnderItsCount() throws IOException {
        int notes = 0;
        int n = 0;
        for (var line : lines()) {
            var read = Player.of(rows(line), line.header().tuning().size());
            assertThat(read).as("line " + n++).isEqualTo(played(line));
            notes += read.size();
        }
        assertThat(notes).isGreaterThan(1_000);
    }

    /** RFC 5322, 2.1.1: a line of a mail should have 78 characters at most; a quote takes two. */
    @Test
    void noRowIsTooWideForAMail() throws IOException {
        for (var line : lines()) {
            assertThat(rows(line)).allSatisfy(row -> assertThat(row.length()).isLessThanOrEqualTo(76));
        }
    }

    @Test
    void theStringsOfARowAreOfOneLength() throws IOException {
        for (var line : lines()) {
            var lengths = rows(line).stream()
                    .filter(row -> STRING.matcher(row).matches())
                    .map(String::length)
                    .toList();
            int strings = line.header().tuning().size();
            assertThat(lengths).hasSizeGreaterThanOrEqualTo(strings);
            for (int i = 0; i < lengths.size(); i++) {
                assertThat(lengths.get(i)).isEqualTo(lengths.get(i - i % strings));
            }
        }
    }

    @Test
    void distancesAreInProportionToTime() {
        // a quarter is eight characters, an eighth four, a sixteenth two
        assertThat(rows(line("bar 1\n1 E0\n2 E1, E2\n3 E3, E3, E3, E3\n4 E3, E3, E3, E3\n")))
                .contains("    1       2   &   3 e & a 4 e & a", "E |-0-------1---2---3-3-3-3-3-3-3-3-|");
    }

    @Test
    void theHandsAreShown() {
        var rows = rows(line("""
                bar 1
                1  E3 slap, E5 hammer
                2  E3 pull, E7 slide
                3  D7 ghost pop, Dx
                4  G12 harmonic, G5 hammer from 4
                """));
        assertThat(rows)
                .contains(
                        "G |-------------------------<12>-4h5-|",
                        "D |-----------------(7)-x------------|",
                        "E |-3---h5--p3--/7-------------------|",
                        "    T               P");
        assertThat(rows).contains("T    slap with the thumb", "P    pop: a finger snaps the string", "( )  soft");
    }

    @Test
    void aSlideDownLeansTheOtherWay() {
        assertThat(rows(line("bar 1\n1-4 E7, E5 slide\n"))).anyMatch(row -> row.contains("7") && row.contains("\\5"));
    }

    @Test
    void repeatsAreDottedAndJumpsAreWords() {
        var rows = rows(line("""
                repeat start
                bar 1
                1-4 E0
                repeat end x3
                bar 2
                1-4 E3
                da capo
                """));
        assertThat(rows).anyMatch(row -> row.startsWith("E |:-0--") && row.contains(":|-3--"));
        assertThat(rows).anyMatch(row -> row.contains("1 3 times") && row.contains("2 D.C."));
    }

    @Test
    void theHeadSaysWhoseItIsAndWhereItCameFrom() {
        var line = line("tempo 92\nbar 1\n1-4 E0\n");
        var credits = new Credits(
                "Slack Water", "Ann Quay", "Quay Studio", "Original material.", "https://example.org/e/slack-water");
        assertThat(PlainTab.of(line, credits, ENGLISH))
                .startsWith(
                        "Slack Water",
                        "Ann Quay",
                        "Quay Studio",
                        "Original material.",
                        "https://example.org/e/slack-water")
                .contains("C major, 4/4, 1/4 = 92", "Tuning E A D G");
        assertThat(rows(line).get(0)).startsWith("C major");
    }

    @Test
    void whatIsNotUsedIsNotExplained() {
        var rows = rows(line("bar 1\n1-4 E0\n"));
        assertThat(rows.get(rows.size() - 1)).startsWith("E |-0");
    }
}
