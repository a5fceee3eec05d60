package groundbass.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.score.Line;
import groundbass.score.RandomLines;
import groundbass.text.Messages;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.jsoup.parser.Parser;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** What is read out of a drawn line: one short text a note, inside groups that have names, and nothing twice. */
class EventTextsTest {
    /** Ours: as much as one keeps in mind who hears it once. */
    private static final int LONGEST = 300;

    static List<Path> demo() throws IOException {
        try (Stream<Path> files = Files.walk(Path.of("seed-data"))) {
            return files.filter(file -> file.getFileName().toString().matches("(line|exercise-\\d)\\.txt"))
                    .sorted()
                    .toList();
        }
    }

    @ParameterizedTest
    @MethodSource("demo")
    void theDemoIsToldInShortTexts(Path file) throws IOException {
        check(LineText.read(file.toString(), Files.readString(file)).line(), Locale.ENGLISH, file.toString());
    }

    @ParameterizedTest
    @CsvSource({"en, 200", "de, 40"})
    void soIsEveryKindOfLine(String language, int lines) {
        for (long seed = 1; seed <= lines; seed++) {
            check(RandomLines.line(seed), Locale.forLanguageTag(language), language + ", seed " + seed);
        }
    }

    private static void check(Line line, Locale language, String which) {
        var drawing = drawing(line, language);
        var events = drawing.select("g.event");
        assertThat(events).as(which).isNotEmpty();
        assertThat(drawing.select("[aria-label]").eachAttr("aria-label"))
                .as(which)
                .isNotEmpty()
                .allMatch(text -> !text.isBlank() && text.length() <= LONGEST, "is short")
                .noneMatch(text -> text.contains("{"));
        assertThat(events.eachAttr("aria-label")).as(which).hasSize(events.size());
        assertThat(events.stream().map(EventTextsTest::key))
                .as("%s: one text an event", which)
                .doesNotHaveDuplicates();
        for (int i = 0; i < line.bars().size(); i++) {
            int number = i + line.firstNumber();
            for (var note : line.bars().get(i).notes()) {
                assertThat(events.stream()
                                .filter(event ->
                                        isAt(event, number, note.onset().toString())))
                        .as("%s: bar %d, %s", which, number, note.onset())
                        .hasSizeBetween(1, 2);
            }
        }
        assertThat(drawing.select("g.system[role=group][aria-label]"))
                .as(which)
                .hasSameSizeAs(drawing.select("g.system"))
                .isNotEmpty();
        assertThat(drawing.select("text:not([aria-hidden=true])")).as(which).isEmpty();
    }

    private static String key(Element event) {
        return event.attr("data-bar") + ":" + event.attr("data-at") + "-" + event.attr("data-to-bar") + ":"
                + event.attr("data-to");
    }

    private static boolean isAt(Element event, int bar, String at) {
        return event.attr("data-bar").equals(String.valueOf(bar))
                && event.attr("data-at").equals(at);
    }

    @Test
    void lengthsTupletsTiesAndWhatIsNewAreSaid() {
        var line = LineText.read("""
                meter 4/4
                strings E A D G

                section Verse
                bar 1 over Em7, A7 at 3
                1    E0 f, E3
                2    A5, A7, A5
                3-4  G5
                bar 2 over A7
                1    hold
                2    E3 p, rest
                3-4  rest
                """).line();
        assertThat(drawing(line, Locale.ENGLISH).select("g.event").eachAttr("aria-label"))
                .containsExactly(
                        "Bar 1, 1: Section “Verse” begins. Over Em7, loud (f): play the open E string, an eighth",
                        "Bar 1, 1 &: play G (E string, fret 3), an eighth",
                        "Bar 1, triplet on 2, 1 of 3: play D (A string, fret 5), an eighth",
                        "Bar 1, triplet on 2, 2 of 3: play E (A string, fret 7), an eighth",
                        "Bar 1, triplet on 2, 3 of 3: play D (A string, fret 5), an eighth",
                        "Bar 1, 3: over A7: play C (G string, fret 5), a half note, held on",
                        "Bar 2, 1: C, held, a quarter",
                        "Bar 2, 2: soft (p): play G (E string, fret 3), an eighth",
                        "Bar 2, 2 &: an eighth rest",
                        "Bar 2, 3: a half rest");
    }

    @Test
    void germanSaysTheSame() {
        var line = LineText.read("""
                meter 4/4
                strings E A D G

                bar 1 over Em7
                1    A5, A7, A5
                2-4  rest
                """).line();
        assertThat(drawing(line, Locale.GERMAN).select("g.event").eachAttr("aria-label"))
                .contains("Takt 1, Triole auf 1, 2 von 3: spiele E (A-Saite, 7. Bund), eine Achtel");
    }

    @Test
    void wholeChordsThatGoOnAreNamed() {
        var line = LineText.read("""
                meter 4/4
                strings E A D G

                bar 1
                1-4  A3+D2+G3
                bar 2
                1-4  hold
                """).line();
        assertThat(drawing(line, Locale.ENGLISH).select("g.event").eachAttr("aria-label"))
                .last()
                .isEqualTo("Bar 2, 1: C, E and B flat, held, a whole note");
    }

    private static Document drawing(Line line, Locale language) {
        return Jsoup.parse(new Sheets(Messages.of(language)).svg(line, 110, "x-"), Parser.xmlParser());
    }
}
