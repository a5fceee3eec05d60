package groundbass.engraving.pdf;

import static groundbass.OutsideTools.said;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.engraving.mark.CanvasContractTest;
import groundbass.engraving.mark.Page;
import groundbass.engraving.options.Paper;
import groundbass.engraving.sheet.Layout;
import groundbass.engraving.sheet.Sheet;
import groundbass.engraving.sign.TestWords;
import groundbass.score.Bar;
import groundbass.score.Changes;
import groundbass.score.ChordAt;
import groundbass.score.Fraction;
import groundbass.score.Header;
import groundbass.score.Line;
import groundbass.score.Meter;
import groundbass.score.Note;
import groundbass.score.Place;
import groundbass.score.RandomLines;
import groundbass.score.Technique;
import groundbass.theory.ChordSymbol;
import groundbass.writing.Writing;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdfparser.PDFStreamParser;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SheetPdfTest {
    @TempDir
    private Path folder;

    private static List<Page> pages(Line line) {
        return Layout.of(Writing.of(line), TestWords.options(Paper.A4));
    }

    private static byte[] pdf(Line line) throws IOException {
        var out = new ByteArrayOutputStream();
        var sheet = new Sheet(pages(line), CanvasContractTest.WORDS).numbered("Lantern Street", new TestWords());
        SheetPdf.write(sheet, CanvasContractTest.meta(), out);
        return out.toByteArray();
    }

    /** A bar of our own: 3 5 17 and a dead note, slapped and popped. */
    private static Line line() {
        var quarter = Fraction.of(1, 4);
        var notes = List.of(
                Note.plucked(Fraction.ZERO, quarter, Place.of(4, 3), Technique.SLAP),
                Note.plucked(quarter, quarter, Place.of(3, 5), Technique.POP),
                Note.plucked(Fraction.of(1, 2), quarter, Place.of(1, 17), Technique.SLAP),
                Note.plucked(Fraction.of(3, 4), quarter, Place.dead(2), Technique.POP));
        var bar = Bar.of(Meter.COMMON, notes)
                .withChords(List.of(
                        new ChordAt(Fraction.ZERO, ChordSymbol.parse("Am7").orElseThrow())));
        return new Line(Header.PLAIN, List.of(bar));
    }

    @Test
    void theSameSheetGivesTheSameBytes() throws IOException {
        assertThat(pdf(RandomLines.line(5, 16))).isEqualTo(pdf(RandomLines.line(5, 16)));
    }

    @Test
    void manyAtOnceDoNotDisturbOneAnother() {
        var distinct = java.util.stream.IntStream.range(0, 12)
                .parallel()
                .mapToObj(i -> {
                    try {
                        return java.util.Arrays.hashCode(pdf(RandomLines.line(6, 8)));
                    } catch (IOException e) {
                        throw new java.io.UncheckedIOException(e);
                    }
                })
                .distinct()
                .toList();
        assertThat(distinct).hasSize(1);
    }

    @Test
    void sixteenBarsStayUnderAHundredAndFiftyKilobytes() throws IOException {
        assertThat(pdf(RandomLines.line(5, 16))).hasSizeLessThan(150_000);
    }

    @Test
    void theDocumentIsTaggedAndSaysItsTitleAndLanguage() throws IOException {
        try (var document = Loader.loadPDF(pdf(line()))) {
            var catalog = document.getDocumentCatalog();
            assertThat(document.getDocumentInformation().getTitle()).isEqualTo("Lantern Street");
            assertThat(catalog.getLanguage()).isEqualTo("en");
            assertThat(catalog.getMarkInfo().isMarked()).isTrue();
            assertThat(catalog.getStructureTreeRoot().getCOSObject().toString()).isNotEmpty();
        }
    }

    @Test
    void everySystemIsAFigureWithItsMusicInWords() throws IOException {
        var raw = new String(uncompressed(pdf(line())), StandardCharsets.ISO_8859_1);
        assertThat(raw).contains("/Figure").contains("(Music from bar 1)");
    }

    private static byte[] uncompressed(byte[] pdf) throws IOException {
        var out = new ByteArrayOutputStream();
        try (var document = Loader.loadPDF(pdf)) {
            document.save(out, org.apache.pdfbox.pdfwriter.compress.CompressParameters.NO_COMPRESSION);
        }
        return out.toByteArray();
    }

    @Test
    void aReaderOfItsOwnKindFindsTheWordsAndNumbers() throws Exception {
        var file = Files.write(folder.resolve("sheet.pdf"), pdf(line()));
        String text = said("pdftotext", "-layout", file.toString(), "-");
        assertThat(text).contains("Lantern Street", "Quay Series, no. 3", "Am7", "17", "X", "Page 1 of 1");
        assertThat(text).contains("https://example.org/e/k3v9");
    }

    /** Content order is reading order (ISO 14289-1, 7.1 and 7.2); judged by poppler, which knows nothing of our tags. */
    @Test
    void titleChordLettersAndFretsComeOutInReadingOrder() throws Exception {
        var file = Files.write(folder.resolve("sheet.pdf"), pdf(line()));
        assertThat(said("pdftotext", "-raw", file.toString(), "-").split("\\s+"))
                .containsSubsequence("Lantern", "Street", "♩", "=", "100", "Am7")
                .containsSubsequence("Am7", "3", "T", "5", "P", "17", "T", "X", "P", "Page", "1", "of", "1");
    }

    /** U+266D and U+266F, which the text face lacks and which are drawn from the music font. */
    @Test
    void drawnAccidentalsOfChordNamesCanBeCopied() throws Exception {
        var bar = line().bars()
                .get(0)
                .withChords(List.of(
                        new ChordAt(Fraction.ZERO, ChordSymbol.parse("Bbmaj7/D").orElseThrow()),
                        new ChordAt(
                                Fraction.of(1, 2), ChordSymbol.parse("F#m7b5").orElseThrow())));
        var file = Files.write(folder.resolve("sheet.pdf"), pdf(new Line(Header.PLAIN, List.of(bar))));
        assertThat(said("pdftotext", "-raw", file.toString(), "-")).contains("B♭maj7/D", "F♯m7♭5");
    }

    @Test
    void theOutlineHasTheTitleAndItsSections() throws IOException {
        var first = line().bars().get(0);
        var second = first.with(section("Turnaround"));
        try (var document = Loader.loadPDF(pdf(new Line(Header.PLAIN, List.of(first, second))))) {
            var outline = document.getDocumentCatalog().getDocumentOutline();
            assertThat(outline.getFirstChild().getTitle()).isEqualTo("Lantern Street");
            assertThat(outline.getFirstChild().getFirstChild().getTitle()).isEqualTo("Turnaround");
            assertThat(outline.getFirstChild().findDestinationPage(document)).isEqualTo(document.getPage(0));
        }
    }

    private static Changes section(String name) {
        var none = Changes.NONE;
        return new Changes(
                Optional.of(name),
                none.key(),
                none.meter(),
                none.tempo(),
                none.slowingTo(),
                none.feel(),
                none.style(),
                none.place());
    }

    @Test
    void eachGlyphIsOneFormHoweverOftenItIsDrawn() throws IOException {
        try (var document = Loader.loadPDF(pdf(line()))) {
            var heads = new ArrayList<org.apache.pdfbox.cos.COSName>();
            document.getPage(0).getResources().getXObjectNames().forEach(heads::add);
            var drawn = new PDFStreamParser(document.getPage(0))
                    .parse().stream().filter(heads::contains).toList();
            assertThat(drawn).hasSizeGreaterThan(heads.size());
            assertThat(Set.copyOf(drawn)).hasSameSizeAs(heads);
        }
    }

    @Test
    void anIndependentCheckerFindsNoFault() throws Exception {
        var file = Files.write(folder.resolve("sheet.pdf"), pdf(RandomLines.line(5, 16)));
        assertThat(said("qpdf", "--check", file.toString())).contains("No syntax or stream encoding errors found");
    }
}
