package groundbass.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.engraving.mark.Kind;
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
    void eachExampleSaysItsRulesAndWhoSaysSo(Exhibit exhibit) {
        var rules = GALLERY.rules(exhibit);
        assertThat(rules).isNotEmpty();
        var shown = GALLERY.shown().stream()
                .filter(one -> one.title().equals(exhibit.title()))
                .findFirst()
                .orElseThrow();
        assertThat(shown.rules()).isEqualTo(rules);
        assertThat(shown.look()).isEqualTo(exhibit.look());
        assertThat(Jsoup.parse(shown.svg()).select("svg")).hasSize(1);
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
