package groundbass.web.desk;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.options.ColorScheme;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.series.Colleagues;
import groundbass.catalog.series.SeriesPart;
import groundbass.web.Browser;
import groundbass.web.Looks;
import java.net.URI;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Who else is at the desk, as its keeper and as somebody who is invited see it; pictures by {@link Looks}. */
@Tag("browser")
class PeopleLooksTest {
    @RegisterExtension
    static final DeskVisit desk = new DeskVisit();

    private static String invitation;

    /** The other educator works on the series, and somebody else is invited to. */
    @BeforeAll
    static void share() {
        var studio = desk.studio();
        var jdbi = studio.site.groundbass().database().jdbi();
        var colleagues = new Colleagues(jdbi, new Audit(jdbi, studio.site.clock()), studio.site.clock());
        var stranger = studio.catalog
                .find(studio.strangersEpisode.series())
                .orElseThrow()
                .owner();
        jdbi.useTransaction(
                handle -> colleagues.enter(handle, stranger, studio.series.id(), SeriesPart.READER_OF_FIGURES));
        String shown = studio.form()
                .formParam("email", "a.long.address.of.somebody.who.teaches@music-school.trial.example")
                .formParam("part", "editor")
                .post("/desk/series/" + studio.series.id() + "/colleagues")
                .asString();
        invitation = URI.create(Jsoup.parse(shown).select("#address").val()).getPath();
    }

    @ParameterizedTest
    @CsvSource({"people, DARK, LIGHT", "colleagues, LIGHT, DARK", "invitation, DARK, LIGHT"})
    void pagesFitAndHaveNoBarriers(String name, ColorScheme narrow, ColorScheme wide) {
        boolean invited = name.equals("invitation");
        var page = invited ? desk.reader(390, narrow) : desk.signedIn(390, narrow);
        page.navigate(desk.address() + path(name));
        page.waitForLoadState();
        Looks.keep(page, name, 390, narrow);
        assertThat(Browser.overflow(page)).as("pixels wider than the screen").isZero();
        assertThat(Browser.barriers(page)).isEmpty();
        Browser.turn(page, 1280, wide);
        Looks.keep(page, name, 1280, wide);
        assertThat(Browser.overflow(page)).as("pixels wider than the screen").isZero();
        assertThat(Browser.barriers(page)).isEmpty();
        assertThat(desk.complaints()).as("the browser's own complaints").isEmpty();
    }

    private static String path(String name) {
        return switch (name) {
            case "people" -> "/desk/people";
            case "colleagues" -> "/desk/series/" + desk.studio().series.id() + "/colleagues";
            default -> invitation;
        };
    }
}
