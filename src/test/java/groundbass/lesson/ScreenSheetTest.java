package groundbass.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.score.Line;
import groundbass.score.RandomLines;
import groundbass.text.Messages;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.zip.GZIPOutputStream;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.parser.Parser;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The picture of a line on a page, as a screen reader and a script find it. */
class ScreenSheetTest {
    private static final Sheets ENGLISH = new Sheets(Messages.of(Locale.ENGLISH));
    private static final Sheets GERMAN = new Sheets(Messages.of(Locale.GERMAN));

    private static final String TEXT = """
            meter 4/4
            strings E A D G
            style finger

            bar 1
            1    E3 slap, hold, E5 hammer, rest
            2    A5, A7, A5
            3-4  D4+G5 pluck

            bar 2
            1-4  E3 until end + G5
            """;

    private static Line line() {
        return LineText.read(TEXT).line();
    }

    private static Document drawing(Sheets sheets) {
        return Jsoup.parse(sheets.svg(line(), 110, "x-"), Parser.xmlParser());
    }

    @Test
    void everyEventSaysItsBarCountAndTime() {
        var event = drawing(ENGLISH).select("g.event").get(1);
        assertThat(event.attr("data-bar")).isEqualTo("1");
        assertThat(event.attr("data-at")).isEqualTo("1/8");
        assertThat(event.attr("data-count")).isEqualTo("1 &");
    }

    @Test
    void everyEventIsToldByItself() {
        var told = drawing(ENGLISH).select("g.event").eachAttr("aria-label");
        assertThat(told)
                .startsWith(
                        "Bar 1, 1: slap G (E string, fret 3), an eighth",
                        "Bar 1, 1 &: hammer on to A (E string, fret 5), a sixteenth")
                .contains(
                        "Bar 1, 1 a: a sixteenth rest",
                        "Bar 1, triplet on 2, 2 of 3: play E (A string, fret 7), an eighth");
    }

    @Test
    void inGermanAsGermansSayIt() {
        assertThat(drawing(GERMAN).select("g.event").eachAttr("aria-label"))
                .first()
                .asString()
                .startsWith("Takt 1, 1: ")
                .contains("E-Saite");
    }

    @Test
    void nothingButNotesRestsAndBarSignsIsAnEvent() {
        assertThat(drawing(ENGLISH).select("g.event:not(:has(use, text))")).isEmpty();
        assertThat(drawing(ENGLISH).select("g.annotation[aria-label]")).isEmpty();
    }

    /** A limit of ours, for sixteen bars with every feature, in each width and with all words. */
    @ParameterizedTest
    @ValueSource(doubles = {48, 72, 110})
    void sixteenBarsStayUnderFortyKilobytesCompressed(double width) throws IOException {
        assertThat(compressed(ENGLISH.svg(RandomLines.line(5, 16), width, "line-wide-")))
                .isLessThan(40_000);
    }

    private static int compressed(String text) throws IOException {
        var out = new ByteArrayOutputStream();
        try (var zip = new GZIPOutputStream(out)) {
            zip.write(text.getBytes(StandardCharsets.UTF_8));
        }
        return out.size();
    }
}
