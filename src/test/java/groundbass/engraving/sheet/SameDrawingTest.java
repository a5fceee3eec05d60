package groundbass.engraving.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.engraving.mark.CanvasContractTest;
import groundbass.engraving.mark.Page;
import groundbass.engraving.mark.RecordingCanvas;
import groundbass.engraving.options.Paper;
import groundbass.engraving.pdf.SheetPdf;
import groundbass.engraving.sign.TestWords;
import groundbass.engraving.svg.SheetSvg;
import groundbass.score.RandomLines;
import groundbass.writing.Writing;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.junit.jupiter.api.Test;

/** What a page asks to be drawn is in the drawing for the screen and in the one for paper, read back from both. */
class SameDrawingTest {
    private static final int LINES = 25;

    @Test
    void screenAndPaperShowTheSameSignsAndWords() throws IOException {
        for (long seed = 0; seed < LINES; seed++) {
            var pages = Layout.of(Writing.of(RandomLines.line(seed)), TestWords.options(Paper.A4));
            var asked = new RecordingCanvas();
            pages.forEach(page -> page.drawOn(asked));
            long signs = asked.lines().stream()
                    .filter(line -> line.strip().startsWith("glyph "))
                    .count();
            long words = asked.lines().stream()
                    .filter(line -> line.strip().startsWith("text "))
                    .count();

            String svg = String.join(
                    "",
                    pages.stream()
                            .map(page -> SheetSvg.of(page, "p", "en", "t", "d"))
                            .toList());
            assertThat(count(svg, "<use "))
                    .as("signs on the screen, seed %d", seed)
                    .isEqualTo(signs);
            assertThat(count(svg, "<text "))
                    .as("words on the screen, seed %d", seed)
                    .isEqualTo(words);

            var operators = operators(pages);
            assertThat(operators.stream().filter("Do"::equals).count())
                    .as("signs on paper, seed %d", seed)
                    .isEqualTo(signs);
            assertThat(operators.stream().filter("Tj"::equals).count())
                    .as("words on paper, seed %d", seed)
                    .isEqualTo(words);
        }
    }

    private static long count(String text, String part) {
        return Pattern.compile(Pattern.quote(part)).matcher(text).results().count();
    }

    /** The names of the operators of all pages (ISO 32000-1, annex A). */
    private static List<String> operators(List<Page> pages) throws IOException {
        var out = new ByteArrayOutputStream();
        SheetPdf.write(new Sheet(pages, CanvasContractTest.WORDS), CanvasContractTest.meta(), out);
        try (var document = Loader.loadPDF(out.toByteArray())) {
            var names = new ArrayList<String>();
            for (var page : document.getPages()) {
                new PDFStreamParser(page)
                        .parse().stream()
                                .filter(Operator.class::isInstance)
                                .map(token -> ((Operator) token).getName())
                                .forEach(names::add);
            }
            return names;
        }
    }
}
