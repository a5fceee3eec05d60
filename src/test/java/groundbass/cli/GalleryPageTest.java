package groundbass.cli;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.lesson.Gallery;
import groundbass.web.view.StandalonePage;
import java.util.List;
import java.util.Locale;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.Test;

class GalleryPageTest {
    private static final List<Gallery.Shown> SHOWN = new Gallery().shown();
    private static final Document PAGE =
            Jsoup.parse(StandalonePage.of("gallery", Locale.ENGLISH, new GalleryPage(Gallery.TITLE, SHOWN)));

    @Test
    void everyExampleStandsThereWithItsRulesAndItsLine() {
        assertThat(PAGE.select("section")).hasSameSizeAs(SHOWN);
        for (var example : SHOWN) {
            var section = PAGE.select("section:has(h2:containsOwn(%s))".formatted(example.title()));
            assertThat(section.text()).contains(example.look());
            assertThat(section.select("pre").first().wholeText()).isEqualTo(example.text());
            assertThat(example.rules()).allSatisfy(rule -> assertThat(section.text())
                    .contains(rule.sentence() + " Source: " + rule.source()));
        }
    }

    @Test
    void thePageNeedsNothingElseAndAllowsNothingElse() {
        assertThat(PAGE.select("section > svg")).hasSameSizeAs(SHOWN);
        assertThat(PAGE.select("script, link, img, [style]")).isEmpty();
        assertThat(PAGE.select("[id]").eachAttr("id")).doesNotHaveDuplicates();
        assertThat(PAGE.select("meta[http-equiv]").attr("content"))
                .startsWith("default-src 'none'; ")
                .contains("style-src 'sha256-");
    }
}
