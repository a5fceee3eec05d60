package groundbass.web.student;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.web.Site;
import java.io.IOException;
import java.util.Locale;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Cautions stand where somebody could be hurt: for hands, for hearing, for rights. */
class CautionsTest {
    static final Site site = Site.open();
    static final Shelf shelf = Shelf.fill(site);

    @AfterAll
    static void close() {
        site.close();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "en | hands, volume, hurts, ears, doctor, physiotherapist, permission, local law, qualified adviser",
                "de | Händen, leise, weh tut, Ohren, Arzt, Physiotherapie, Erlaubnis, örtliche Recht, fachkundige Beratung"
            })
    void aLessonsPageWarnsBesideThePlayers(String language, String words) {
        var page = Jsoup.parse(site.browser()
                .header("Accept-Language", language)
                .get("/series/" + Shelf.SERIES + "/1")
                .asString());
        assertThat(page.select("main").text()).contains(words.split(", "));
        assertThat(page.select("section[aria-labelledby=play] .caution a").attr("href"))
                .isEqualTo("/cautions");
    }

    @Test
    void theSheetWarnsOnEveryPage() throws IOException {
        var bytes = site.program().get(shelf.file(1, "sheet.pdf")).asByteArray();
        try (var pdf = Loader.loadPDF(bytes)) {
            var text = new PDFTextStripper();
            for (int page = 1; page <= pdf.getNumberOfPages(); page++) {
                text.setStartPage(page);
                text.setEndPage(page);
                assertThat(flat(text.getText(pdf)))
                        .contains("slowly", "quietly", "rest", "hurts", "doctor", "physiotherapist");
            }
            text.setStartPage(1);
            assertThat(flat(text.getText(pdf))).contains("own work of the trial studio");
        }
    }

    @Test
    void theReadMeSaysItInFull() {
        String text = flat(site.program().get(shelf.file(1, "README.txt")).asString());
        assertThat(text)
                .contains("hands", "pain", "doctor", "physiotherapist")
                .contains("hearing", "volume", "ringing")
                .contains("own work of the trial studio", "permission", "local law", "qualified adviser");
    }

    /** What a person says by signing in stands beside both buttons, with the way to the notice. */
    @Test
    void signingInSaysWhatIsKept() {
        assertThat(Stream.of("/sign-in").map(path -> site.browser().get(path).asString()))
                .isNotEmpty()
                .allSatisfy(page -> assertThat(page).contains("e-mail address", "delete it at any time", "/privacy"));
    }

    private static String flat(String text) {
        return text.replaceAll("\\s+", " ").toLowerCase(Locale.ROOT);
    }
}
