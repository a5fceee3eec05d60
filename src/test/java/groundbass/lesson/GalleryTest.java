package groundbass.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.engraving.mark.Kind;
import java.io.IOException;
import java.util.List;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class GalleryTest {
    private static final Gallery GALLERY = new Gallery();
    private static final Document PAGE = Jsoup.parse(GALLERY.html());

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
    void eachExampleSaysItsRulesAndWhoSaysSo(Exhibit exhibit) {
        var rules = GALLERY.rules(exhibit);
        assertThat(rules).isNotEmpty();
        String section = PAGE.select("section:has(h2:containsOwn(%s))".formatted(exhibit.title()))
                .text();
        assertThat(section).contains(exhibit.look());
        assertThat(rules)
                .allSatisfy(rule -> assertThat(section).contains(rule.sentence() + " Source: " + rule.source()));
    }

    @Test
    void thePageNeedsNothingElseAndAllowsNothingElse() {
        assertThat(PAGE.select("section")).hasSameSizeAs(GALLERY.exhibits());
        assertThat(PAGE.select("section > svg")).hasSameSizeAs(GALLERY.exhibits());
        assertThat(PAGE.select("script, link, img, [style]")).isEmpty();
        assertThat(PAGE.select("[id]").eachAttr("id")).doesNotHaveDuplicates();
        assertThat(PAGE.select("meta[http-equiv]").attr("content"))
                .startsWith("default-src 'none'; style-src 'sha256-");
    }

    @Test
    void thePaperHasEveryExample() throws IOException {
        try (var document = Loader.loadPDF(GALLERY.pdf())) {
            String text = new PDFTextStripper().getText(document);
            assertThat(GALLERY.exhibits()).isNotEmpty().allSatisfy(exhibit -> assertThat(text)
                    .contains(exhibit.title()));
        }
    }
}
