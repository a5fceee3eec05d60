package groundbass.web.desk.site;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.web.desk.Studio;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jsoup.Jsoup;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What is lost in each direction is told at the desk, and in full in the documents. */
class ExchangePageTest {
    @ParameterizedTest
    @ValueSource(strings = {"en", "de"})
    void eachDirectionHasItsTableAndThePageIsFound(String language) throws IOException {
        try (var studio = new Studio()) {
            var answer = studio.browser().header("Accept-Language", language).get("/desk/exchange");
            answer.then().statusCode(200);
            assertThat(Studio.mistakes(answer.asString())).isEmpty();
            var page = Jsoup.parse(answer.asString());
            assertThat(page.select("h2").eachAttr("id")).containsExactly("xml-out", "midi-out", "xml-in", "midi-in");
            assertThat(page.select("table")).hasSize(4).allSatisfy(table -> assertThat(table.select("tbody tr"))
                    .hasSizeGreaterThan(5));
            String lesson = "/desk/episodes/" + studio.episode("Exchange").id();
            for (String room : new String[] {"/line/bring", "/preflight"}) {
                var there = studio.browser().get(lesson + room).asString();
                assertThat(Jsoup.parse(there).select("a[href=/desk/exchange]"))
                        .as(room)
                        .hasSize(1);
            }
        }
        assertThat(Files.readString(Path.of("src/main/docs/musicxml.md")))
                .contains(
                        "# MusicXML files", "# Reading MusicXML files", "# Writing MIDI files", "# Reading MIDI files");
    }
}
