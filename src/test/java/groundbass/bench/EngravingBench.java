package groundbass.bench;

import groundbass.engraving.Layout;
import groundbass.engraving.Page;
import groundbass.engraving.Paper;
import groundbass.engraving.Sheet;
import groundbass.engraving.SheetMeta;
import groundbass.engraving.SheetPdf;
import groundbass.engraving.SheetSvg;
import groundbass.engraving.TestWords;
import groundbass.score.RandomLines;
import groundbass.writing.Writing;
import groundbass.writing.WrittenLine;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/**
 * Medians, warm, of laying out and drawing 16 bars, beside what the PDF library itself needs for one page with 400
 * fills and 200 runs of text. Run its main method with the test class path.
 */
public final class EngravingBench {
    private static final int WARM = 60;
    private static final int RUNS = 41;

    private EngravingBench() {}

    public static void main(String[] args) throws Exception {
        var line = Writing.of(RandomLines.line(5, 16));
        var options = TestWords.options(Paper.A4);
        var pages = Layout.of(line, options);
        var screen = Layout.of(line, TestWords.options(Paper.screen(110))).get(0);
        double floor = median(EngravingBench::floor);
        double layout = median(() -> Layout.of(line, options));
        double svg = median(() -> SheetSvg.of(screen, "s", "en", "Title", "Words"));
        double pdf = median(() -> pdf(pages));
        System.out.printf("floor: 400 fills and 200 runs  %6.2f ms%n", floor);
        System.out.printf("layout of 16 bars              %6.2f ms, %d marks%n", layout, marks(pages));
        System.out.printf(
                "SVG                            %6.2f ms, %d bytes%n",
                svg, svg(screen).length());
        System.out.printf("PDF, %d pages                   %6.2f ms, %d bytes%n", pages.size(), pdf, pdf(pages).length);
        System.out.printf("ratio of PDF to floor          %6.2f%n", pdf / floor);
        for (int bars : new int[] {250, 1000}) {
            WrittenLine longer = Writing.of(RandomLines.line(5, bars));
            System.out.printf(
                    "layout of %4d bars            %6.2f ms%n", bars, median(() -> Layout.of(longer, options)));
        }
    }

    private static String svg(Page page) {
        return SheetSvg.of(page, "s", "en", "Title", "Words");
    }

    private static int marks(List<Page> pages) {
        return pages.stream().mapToInt(page -> page.marks().size()).sum();
    }

    private static byte[] pdf(List<Page> pages) throws IOException {
        var out = new ByteArrayOutputStream();
        var meta = new SheetMeta("Title", "", "en", Instant.EPOCH, 1);
        SheetPdf.write(new Sheet(pages, passage -> "words"), meta, out);
        return out.toByteArray();
    }

    private static double median(Callable<?> task) throws Exception {
        for (int i = 0; i < WARM; i++) {
            task.call();
        }
        double[] times = new double[RUNS];
        for (int i = 0; i < RUNS; i++) {
            long start = System.nanoTime();
            task.call();
            times[i] = (System.nanoTime() - start) / 1e6;
        }
        Arrays.sort(times);
        return times[RUNS / 2];
    }

    private static final class Parsed {
        private static final TrueTypeFont FONT = parse();

        private static TrueTypeFont parse() {
            try (var in = Objects.requireNonNull(
                    EngravingBench.class.getResourceAsStream("/fonts/ttf/AlegreyaSans/AlegreyaSans-Regular.ttf"))) {
                return new TTFParser().parse(new RandomAccessReadBuffer(in));
            } catch (IOException e) {
                throw new IllegalStateException(e);
            }
        }
    }

    private static Object floor() throws IOException {
        try (var document = new PDDocument()) {
            var page = new PDPage(PDRectangle.A4);
            document.addPage(page);
            var font = PDType0Font.load(document, Parsed.FONT, true);
            try (var out = new PDPageContentStream(document, page)) {
                for (int i = 0; i < 400; i++) {
                    out.addRect(i % 500, i * 2f, 10, 1);
                    out.fill();
                }
                for (int i = 0; i < 200; i++) {
                    out.beginText();
                    out.setFont(font, 9);
                    out.newLineAtOffset(i % 500, i * 4f);
                    out.showText("fret " + i);
                    out.endText();
                }
            }
            document.save(OutputStream.nullOutputStream());
            return document;
        }
    }
}
