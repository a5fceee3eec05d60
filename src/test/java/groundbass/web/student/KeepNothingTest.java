package groundbass.web.student;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.site.Config;
import groundbass.web.Site;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.Test;

/** A site whose operator lets nobody keep lessons on a device. */
class KeepNothingTest {
    @Test
    void nothingIsOfferedAndDevicesLetGo() {
        try (var site = Site.open(KeepNothingTest::keepingNothing)) {
            Shelf.with(site, Rehearsal.saying(""));
            var page = Jsoup.parse(site.browser().get(PlayVisit.LESSON).asString());
            assertThat(page.select(".practised-star")).isNotEmpty();
            assertThat(page.select("[data-keep], script[src*='/keep.js']")).isEmpty();
            var practised = Jsoup.parse(site.browser().get("/practised").asString());
            assertThat(practised.select("[data-practised]")).isNotEmpty();
            assertThat(practised.select("a[href='/kept']")).isEmpty();
            assertThat(site.program().get("/worker.js").asString()).contains("unregister");
        }
    }

    private static Config keepingNothing(Config usual) {
        return usual.keepingNothing();
    }
}
