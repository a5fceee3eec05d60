package groundbass.web.student;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.document.DocumentSettings;
import groundbass.document.EpisodeDocument;
import groundbass.document.Level;
import groundbass.document.LineSource;
import groundbass.document.Rights;
import groundbass.release.Built;
import groundbass.walkthrough.words.Naming;
import groundbass.web.Html;
import groundbass.web.Site;
import java.time.Duration;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.select.Elements;
import org.junit.jupiter.api.Test;

/** A lesson that is out before its sound is made. */
class SoundToFollowTest {
    private static final String PAGE = "/series/" + Shelf.SERIES + "/1";

    @Test
    void aLessonIsReadFirstAndPlayedAsSoonAsItsSoundIsThere() {
        try (var site = Site.open()) {
            var shelf = Shelf.with(site, lesson());
            var whole = page(site);
            assertThat(whole.select("#sound-follows")).isEmpty();
            assertThat(whole.select(".practice, .tracks")).isNotEmpty();
            assertThat(cards(site)).hasSize(1);
            takeAwayTheSound(site, shelf);
            assertThat(cards(site))
                    .as("pictures of the first bars, which may not be there yet")
                    .isEmpty();
            var before = page(site);
            assertThat(before.select(".sheet svg")).isNotEmpty();
            assertThat(before.select("#sound-follows").text()).contains("sound");
            assertThat(before.select(".practice, .tracks")).isEmpty();
            assertThat(site.browser().get(shelf.file(1, "sheet.pdf")).statusCode())
                    .isEqualTo(200);
        }
    }

    /** As it was before it was made; that it failed keeps the site from making it at once. */
    private static void takeAwayTheSound(Site site, Shelf shelf) {
        var jdbi = site.groundbass().database().jdbi();
        jdbi.useTransaction(handle -> {
            handle.execute("delete from release_file where role in ('play', 'stem', 'practice', 'lossless', 'bundle')");
            handle.execute("update release set state = 'building'");
            Built.failed(shelf.releases, shelf.current(1).id(), site.clock().instant());
        });
        site.clock().advance(Duration.ofSeconds(2)); // what was found holds for a second
    }

    private static Elements cards(Site site) {
        return Jsoup.parse(site.browser().get("/series/" + Shelf.SERIES).asString())
                .select(".card img");
    }

    private static Document page(Site site) {
        String page = site.browser().get(PAGE).asString();
        assertThat(Html.mistakes(page.replace(" font-variant=\"lining-nums\"", "")))
                .isEmpty();
        return Jsoup.parse(page);
    }

    private static EpisodeDocument lesson() {
        return EpisodeDocument.titled("Four Ropes", Level.BEGINNER)
                .edit()
                .mainLine(new LineSource("", "key A minor\n\nbar 1 over Am7\n1-4 A0\n"))
                .rights(new Rights("Quay Studio", "", "Own work of the trial studio."))
                .settings(new DocumentSettings("en", "100", "1", Naming.USUAL.word()))
                .done();
    }
}
