package groundbass.release;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.engraving.Kind;
import java.io.IOException;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class GalleryTest {
    private static final Gallery GALLERY = new Gallery();

    static Stream<Exhibit> exhibits() {
        return GALLERY.exhibits().stream();
    }

    @ParameterizedTest
    @MethodSource("exhibits")
    void eachExampleIsRightAndHasMarks(Exhibit exhibit) {
        assertThat(exhibit.reading().problems()).as(exhibit.title()).isEmpty();
        assertThat(GALLERY.screen(exhibit).marks().stream()
                        .filter(mark -> List.of(Kind.HEAD, Kind.FRET, Kind.REST).contains(mark.kind())))
                .as(exhibit.title())
                .isNotEmpty();
    }

    @ParameterizedTest
    @MethodSource("exhibits")
    void eachExampleNamesItsRuleAndWhoPublishedIt(Exhibit exhibit) {
        assertThat(List.of(exhibit.rule(), exhibit.source(), exhibit.look())).noneMatch(String::isBlank);
    }

    @Test
    void thePageNeedsNothingElseAndAllowsNothingElse() {
        var page = Jsoup.parse(GALLERY.html());
        assertThat(page.select("section")).hasSameSizeAs(GALLERY.exhibits());
        assertThat(page.select("section > svg")).hasSameSizeAs(GALLERY.exhibits());
        assertThat(page.select("script, link, img, [style]")).isEmpty();
        assertThat(page.select("[id]").eachAttr("id")).doesNotHaveDuplicates();
        assertThat(page.select("meta[http-equiv]").attr("content"))
                .startsWith("default-src 'none'; style-src 'sha256-");
    }

    @Test
    void thePaperHasEveryExample() throws IOException {
        try (var document = Loader.loadPDF(GALLERY.pdf())) {
            String text = new PDFTextStripper().getText(document);
            assertThat(GALLERY.exhibits())
                    .allSatisfy(exhibit -> assertThat(text).contains(exhibit.title()));
        }
    }
}
