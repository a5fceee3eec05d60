package groundbass.bench;

import static groundbass.bench.Timing.print;

import groundbass.bench.Timing.Work;
import groundbass.engraving.mark.Page;
import groundbass.engraving.options.Paper;
import groundbass.engraving.pdf.SheetMeta;
import groundbass.engraving.pdf.SheetPdf;
import groundbass.engraving.png.SheetPng;
import groundbass.engraving.sheet.Layout;
import groundbass.engraving.sheet.Sheet;
import groundbass.engraving.sign.TestWords;
import groundbass.engraving.svg.SheetSvg;
import groundbass.score.RandomLines;
import groundbass.writing.Writing;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Instant;
import java.util.List;

/**
 * Laying out and drawing 16 bars with every feature, beside what the PDF library alone needs for a page of 400 fills
 * and 200 runs of text. Time is the processor's, of the one thread that works, so that what else runs
 * counts for little; give it a machine with a core to spare all the same, or the compiler of the virtual machine starves.
 */
public final class EngravingBench {
    private static final int TIMES = 5;

    private EngravingBench() {}

    public static void main(String[] args) throws Exception {
        var line = Writing.of(RandomLines.line(5, 16));
        var options = TestWords.options(Paper.A4);
        var pages = Layout.of(line, options);
        var screen = Layout.of(line, TestWords.options(Paper.screen(110))).get(0);
        Work[] works = {
            Floors::pdf,
            () -> Layout.of(line, options),
            () -> svg(screen),
            () -> pdf(pages),
            () -> SheetPng.of(screen, 12, SheetPng.Ink.DARK)
        };
        var ms = ProcessorTime.medians(TIMES, works);
        String form = "%-32s %7.2f ms, %6d KB of heap used up%s";
        print(form, "floor: 400 fills, 200 texts", ms[0], heap(works[0]), "");
        print(form, "layout", ms[1], heap(works[1]), ", " + marks(pages) + " marks; aim under 4 ms");
        print(form, "SVG", ms[2], heap(works[2]), ", " + svg(screen).length() + " bytes; aim under 2 ms");
        String size = ", " + pages.size() + " pages, " + pdf(pages).length + " bytes; aim under 10 ms";
        print(form, "PDF", ms[3], heap(works[3]), size);
        print("PDF to the floor                 %7.2f; aim under 2", ms[3] / ms[0]);
        print(form, "PNG", ms[4], heap(works[4]), "");
        longer();
    }

    private static void longer() throws Exception {
        var quarter = Writing.of(RandomLines.line(5, 250));
        var whole = Writing.of(RandomLines.line(5, 1000));
        var options = TestWords.options(Paper.A4);
        var ms = ProcessorTime.medians(1, () -> Layout.of(quarter, options), () -> Layout.of(whole, options));
        print(
                "layout of 250 bars %.1f ms, of 1,000 bars %.1f ms; ratio %.1f, linear is 4",
                ms[0], ms[1], ms[1] / ms[0]);
    }

    private static long heap(Work work) throws Exception {
        return ProcessorTime.allocated(work) / 1024;
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
}
