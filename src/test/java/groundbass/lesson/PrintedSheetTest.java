package groundbass.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.engraving.options.QrCode;
import groundbass.engraving.options.SheetOptions.Footer;
import groundbass.linetext.LineText;
import groundbass.score.Line;
import groundbass.text.Messages;
import groundbass.walkthrough.Walkthrough;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureNode;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationLink;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/** The sheet of a whole lesson: what is on it, part by part. */
class PrintedSheetTest {
    private static final Path LESSON = Path.of("seed-data/harbour-rounds/01-rope-and-pulley");
    private static final Messages ENGLISH = Messages.of(Locale.ENGLISH);
    private static final String ADDRESS = "https://lessons.example/e/k3v9";

    private static Line line(String name) throws IOException {
        return LineText.read(Files.readString(LESSON.resolve(name))).line();
    }

    private static byte[] pdf() throws IOException {
        var main = line("line.txt");
        var footer = new Footer("", "Release 2, 2026-11-25", "Rest often.", Optional.of(QrCode.of(ADDRESS)));
        var imprint = Sheets.Imprint.of(main);
        var whole = new Sheets.Imprint(
                imprint.title(), "Harbour Rounds, lesson 1", imprint.rights(), footer, Instant.EPOCH, 1);
        return new Sheets(ENGLISH)
                .pdf(List.of(ToldLine.of(main, ENGLISH), ToldLine.of(line("exercise-1.txt"), ENGLISH)), whole);
    }

    private static List<PDStructureElement> elements(PDDocument document, String type) {
        var found = new ArrayList<PDStructureElement>();
        collect(document.getDocumentCatalog().getStructureTreeRoot(), type, found);
        return found;
    }

    private static void collect(PDStructureNode node, String type, List<PDStructureElement> found) {
        for (var kid : node.getKids()) {
            if (kid instanceof PDStructureElement element) {
                if (element.getStructureType().equals(type)) {
                    found.add(element);
                }
                collect(element, type, found);
            }
        }
    }

    @Test
    void headAndFootSayWhatTheSheetIs() throws IOException {
        try (var document = Loader.loadPDF(pdf())) {
            int pages = document.getNumberOfPages();
            var text = new PDFTextStripper();
            text.setEndPage(1);
            assertThat(text.getText(document))
                    .contains("Harbour Rounds, lesson 1", "Rope and Pulley", "Saltlantern Studio (demo)")
                    .contains("Original demo material", "♩ = 88", "Rest often.", ADDRESS, "Release 2, 2026-11-25")
                    .contains("1 of " + pages);
            text.setStartPage(pages);
            text.setEndPage(pages);
            assertThat(text.getText(document)).contains("Rope and Pulley · " + pages + " of " + pages);
        }
    }

    @Test
    void everyPageLeadsToTheEpisode() throws IOException {
        try (var document = Loader.loadPDF(pdf())) {
            for (var page : document.getPages()) {
                assertThat(page.getAnnotations()).singleElement().isInstanceOf(PDAnnotationLink.class);
            }
        }
    }

    @Test
    void bookmarksLeadToLinesSectionsAndWords() throws IOException {
        try (var document = Loader.loadPDF(pdf())) {
            var names = new ArrayList<String>();
            for (var line : document.getDocumentCatalog().getDocumentOutline().children()) {
                names.add(line.getTitle());
                for (PDOutlineItem part : line.children()) {
                    names.add("- " + part.getTitle());
                }
            }
            assertThat(names)
                    .startsWith(
                            "Rope and Pulley",
                            "- Haul",
                            "- Climb",
                            line("exercise-1.txt").header().title())
                    .contains("Rope and Pulley, step by step");
        }
    }

    /** ISO 14289-1, 7.3: every figure has an alternative; here which bars it shows and where the sheet tells them. */
    @Test
    void eachSystemIsAFigureThatLeadsToTheWordsOfItsBars() throws IOException {
        try (var document = Loader.loadPDF(pdf())) {
            var told = elements(document, "Figure").stream()
                    .map(PDStructureElement::getAlternateDescription)
                    .toList();
            assertThat(told)
                    .doesNotHaveDuplicates()
                    .isNotEmpty()
                    .allMatch(words -> words.length() > 40 && words.length() <= 300);
            assertThat(told.get(0)).startsWith("Bars 1 to 2 ").contains("Rope and Pulley, step by step");
            assertThat(told.subList(0, 4).stream().filter(words -> words.startsWith("Bars 7 to 8 ")))
                    .hasSize(1);
        }
    }

    @Test
    void everyStepOfTheWalkthroughIsPrintedAsAnItemOfAList() throws IOException {
        var steps = Walkthrough.of(line("line.txt"), ENGLISH);
        try (var document = Loader.loadPDF(pdf())) {
            var printed = new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
            assertThat(printed).contains("Beat 3: ");
            assertThat(elements(document, "LI")).hasSizeGreaterThanOrEqualTo(steps.size() - 1);
            assertThat(elements(document, "H1")).hasSize(1);
            assertThat(elements(document, "H2")).hasSizeGreaterThanOrEqualTo(2);
        }
    }

    /** A limit of ours for sixteen bars: here the demo's densest line and its exercise, with all words. */
    @Test
    void theSheetStaysUnderAHundredAndFiftyKilobytes() throws IOException {
        assertThat(pdf()).hasSizeLessThan(150_000);
    }
}
