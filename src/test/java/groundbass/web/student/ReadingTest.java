package groundbass.web.student;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;

import groundbass.catalog.educator.Audit;
import groundbass.catalog.episode.EpisodeState;
import groundbass.catalog.series.Outlook;
import groundbass.catalog.series.Outlooks;
import groundbass.web.Html;
import groundbass.web.Site;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.stream.IntStream;
import javax.imageio.ImageIO;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.parser.Parser;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ReadingTest {
    static final Site site = Site.open();
    static final Shelf shelf = Shelf.fill(site);
    static final String SERIES = "/series/" + Shelf.SERIES;

    @AfterAll
    static void close() {
        site.close();
    }

    @ParameterizedTest
    @CsvSource({
        "/, en",
        "/, de",
        SERIES_PATH + ", en",
        SERIES_PATH + ", de",
        SERIES_PATH + "/1, en",
        SERIES_PATH + "/1, de"
    })
    void pagesConformToHtml(String path, String language) {
        var page = site.browser().header("Accept-Language", language).get(path);
        assertThat(page.statusCode()).isEqualTo(200);
        // SVG 2 section 6.6 takes all values of CSS's font-variant; the checker knows those of SVG 1.1
        assertThat(Html.mistakes(page.asString().replace(" font-variant=\"lining-nums\"", "")))
                .isEmpty();
    }

    static final String SERIES_PATH = "/series/quay-exercises";

    @Test
    void theFrontPageLeadsToTheSeriesAndItsNewestLessonFirst() {
        var cards = page("/").select(".card h3 a");
        assertThat(page("/").select(".shelf h2 a").attr("href")).isEqualTo(SERIES);
        assertThat(cards.eachText()).containsExactly("Second Plank", "First <Plank>");
        assertThat(cards.eachAttr("href")).containsExactly(SERIES + "/2", SERIES + "/1");
    }

    /** The day is that of the series, which is a day ahead of the site. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {"en | January 20, 2026", "de | 20. Januar 2026"})
    void aSeriesListsItsLessonsInOrderWithLevelTechniquesAndDate(String language, String date) {
        var page = Jsoup.parse(
                site.browser().header("Accept-Language", language).get(SERIES).asString());
        assertThat(page.select(".card h3 a").eachText()).containsExactly("First <Plank>", "Second Plank");
        assertThat(page.select(".card").first().select("time").text()).isEqualTo(date);
        assertThat(page.select(".card").first().select(".badge").eachText()).contains("Slap", "Pop");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/series/none",
                "/series/empty",
                "/series/NONE",
                SERIES_PATH + "/3",
                SERIES_PATH + "/4",
                SERIES_PATH + "/01",
                SERIES_PATH + "/0",
                SERIES_PATH + "/x",
                "/e/none",
                "/e/aaaaaaaaaaaaaaaa"
            })
    void whatIsNotOutIsNotThere(String path) {
        site.browser().get(path).then().statusCode(404);
    }

    /** RFC 4287 section 7, RFC 5545 section 8.1, RFC 9309 section 2.3: what programs read, and by which media type. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "/series/quay-exercises/feed.atom | application/atom+xml | /e/",
                "/series/quay-exercises/feed.rss | application/rss+xml | full-100.mp3",
                "/series/quay-exercises/calendar.ics | text/calendar | SUMMARY:Second Plank",
                "/sitemap.xml | application/xml | /series/quay-exercises/2",
                "/robots.txt | text/plain | Disallow: /desk"
            })
    void programsReadWhatIsOut(String path, String mediaType, String content) {
        var answer = site.program().get(path);
        assertThat(answer.statusCode()).isEqualTo(200);
        assertThat(answer.contentType()).startsWith(mediaType);
        assertThat(answer.asString()).contains(content).doesNotContain(Shelf.DRAFT_TITLE);
        site.program()
                .header("If-None-Match", answer.header("ETag"))
                .get(path)
                .then()
                .statusCode(304);
        site.program().get("/series/empty/feed.atom").then().statusCode(404);
    }

    @Test
    void aSeriesLeadsToItsFeeds() {
        for (String path : List.of(SERIES, SERIES + "/1")) {
            assertThat(page(path).select("head link[rel=alternate]").eachAttr("href"))
                    .containsExactly(SERIES + "/feed.atom", SERIES + "/feed.rss");
        }
        assertThat(page("/").select("head link[rel=alternate]")).isEmpty();
        assertThat(page(SERIES).select("#coming, a[href$=calendar.ics]"))
                .as("nothing is told of what comes until its educator says so")
                .isEmpty();
    }

    @Test
    void whatComesIsToldAsFarAsItsEducatorLetsIt() {
        var jdbi = site.groundbass().database().jdbi();
        var outlooks = new Outlooks(jdbi, new Audit(jdbi, site.clock()));
        var draft = shelf.episode(3);
        var hour = Instant.parse("2026-03-04T04:00:00Z");
        var promise = new EpisodeState.Scheduled(
                hour, ZoneId.of("Pacific/Auckland"), LocalDateTime.parse("2026-03-04T17:00"), Site.START, 1);
        jdbi.useTransaction(handle -> shelf.episodes.schedule(handle, draft.id(), promise));
        try {
            for (var outlook : Outlook.values()) {
                outlooks.save(site.educator(), draft.series(), outlook);
                site.clock().advance(Duration.ofSeconds(2)); // what was looked up holds for one
                String told = page(SERIES).select("#coming ~ ul").text()
                        + site.program()
                                .get(SERIES + "/calendar.ics")
                                .asString()
                                .replace("\r\n ", "");
                assertThat(told.contains("DTSTART:20260304T040000Z"))
                        .as(outlook.word())
                        .isEqualTo(outlook != Outlook.NOTHING);
                assertThat(told.contains(Shelf.DRAFT_TITLE)).isEqualTo(outlook == Outlook.TITLES);
                assertThat(page(SERIES)
                                .select("#coming ~ ul time[datetime=2026-03-04T04:00:00Z]")
                                .size())
                        .isEqualTo(outlook == Outlook.NOTHING ? 0 : 1);
            }
        } finally {
            outlooks.save(site.educator(), draft.series(), Outlook.NOTHING);
            jdbi.useTransaction(handle -> shelf.episodes.unschedule(handle, draft.id()));
            site.clock().advance(Duration.ofSeconds(2));
        }
    }

    @Test
    void aDraftLeaksNowhere() {
        String id = shelf.episode(3).id().value();
        site.browser().get("/e/" + id).then().statusCode(404);
        for (String path : new String[] {"/", SERIES, SERIES + "/1", SERIES + "/2"}) {
            site.browser().get(path).then().body(not(containsString(Shelf.DRAFT_TITLE)), not(containsString(id)));
        }
    }

    @Test
    void thePermanentAddressLeadsToTheReadableOne() {
        site.browser()
                .get("/e/" + shelf.episode(1).id())
                .then()
                .statusCode(302)
                .header("Location", containsString(SERIES + "/1"));
    }

    @Test
    void aLessonShowsSheetStepsTracksFilesAndNeighbours() {
        var page = page(SERIES + "/1");
        assertThat(page.select("h1").text()).contains("First <Plank>");
        assertThat(page.select("#sheet ~ figure svg[role=group] > title").eachText())
                .contains("Two Planks");
        assertThat(page.select("#line-bar-1 li").eachAttr("data-bar"))
                .isNotEmpty()
                .containsOnly("1");
        assertThat(page.select("#line-bar-1 li").eachText())
                .as("the heading has named the bar")
                .anySatisfy(step -> assertThat(step).startsWith("Over Am7. Hand in position, index finger at fret 2, "))
                .isNotEmpty()
                .allSatisfy(step -> assertThat(step).doesNotContain("Bar 1"));
        assertThat(page.select("audio[preload=none]").eachAttr("aria-label"))
                .contains("Whole band 75 % of the tempo (90 beats a minute)");
        assertThat(page.select("table.files a").eachAttr("href")).contains(shelf.file(1, "sheet.pdf"));
        assertThat(page.select("a.walk-later").attr("href")).isEqualTo(SERIES + "/2");
        assertThat(page.select("a.walk-earlier")).isEmpty();
        assertThat(page.select("figure svg").size())
                .as("three widths of a line and an exercise")
                .isEqualTo(6);
    }

    @Test
    void aSheetIsSetForAScreenOfAnyWidthWithTheStavesThatAreWanted() {
        String sheets = page(SERIES + "/1").select("figure[data-fitted]").attr("data-fitted");
        assertThat(sheets).endsWith("/line");
        double both = height(sheets + "/both/40");
        assertThat(height(sheets + "/tab/40")).isGreaterThan(0).isLessThan(both);
        assertThat(height(sheets + "/notation/40")).isGreaterThan(0).isLessThan(both);
        for (String odd : List.of("/both/41", "/both/16", "/both/164", "/treble/40", "/both/040")) {
            site.browser().get(sheets + odd).then().statusCode(404);
        }
        site.browser()
                .get(sheets.replace("/line", "/exercise-9") + "/both/40")
                .then()
                .statusCode(404);
    }

    /** In staff spaces. */
    private static double height(String path) {
        String svg = site.browser()
                .get(path)
                .then()
                .statusCode(200)
                .contentType(containsString("image/svg+xml"))
                .extract()
                .asString();
        String box = Jsoup.parse(svg, "", Parser.xmlParser()).select("svg").attr("viewBox");
        return Double.parseDouble(box.split(" ")[3]);
    }

    @Test
    void aRecordingOfTheEducatorsOwnIsNamedAndCanBePlayed() {
        var page = page(SERIES + "/1");
        String path = page.select("audio[src$=.wav]").attr("src");
        assertThat(page.select(".track:has(audio[src$=.wav]) strong").text())
                .isEqualTo("Band without the bass: Evening take");
        site.program().get(path).then().statusCode(200).contentType(containsString("wav"));
    }

    @Test
    void notesComeAsHtmlWithoutAnythingThatRuns() {
        var notes = page(SERIES + "/1").select("section[aria-labelledby=notes]");
        assertThat(notes.select("h3").eachText()).containsExactly("What it trains");
        assertThat(notes.select("h4").eachText()).containsExactly("How");
        assertThat(notes.select("script")).isEmpty();
        assertThat(notes.select("a").eachAttr("href")).containsExactly("https://bass.example/");
    }

    @Test
    void aLongLessonBeginsWithTheWayToEachOfItsParts() {
        var page = page(SERIES + "/1");
        var ways = page.select("nav.parts a");
        assertThat(ways.eachText())
                .containsExactly("The sheet", "Practice tracks", "Notes", "Step by step", "Exercise 1", "To take home");
        assertThat(ways.eachAttr("href"))
                .allSatisfy(way -> assertThat(page.select(way)).as(way).hasSize(1));
    }

    @Test
    void everyIdOfALessonIsUsedOnce() {
        var ids = page(SERIES + "/1").select("[id]").eachAttr("id");
        assertThat(ids).contains("sheet").doesNotHaveDuplicates();
    }

    @Test
    void aLessonIsSentAgainOnlyWhenSomethingOnItHasChanged() {
        String tag = site.browser().get(SERIES + "/2").header("ETag");
        site.browser().header("If-None-Match", tag).get(SERIES + "/2").then().statusCode(304);
        shelf.release(2, "Mended once.", false);
        site.clock().advance(Duration.ofSeconds(2));
        site.browser().header("If-None-Match", tag).get(SERIES + "/2").then().statusCode(304);
        shelf.release(2, "Mended twice.", true);
        site.clock().advance(Duration.ofSeconds(2));
        site.browser()
                .header("If-None-Match", tag)
                .get(SERIES + "/2")
                .then()
                .statusCode(200)
                .body(containsString("Mended twice."), containsString("Corrected: release 3"));
    }

    @Test
    void whatIsToBeSaidToOneReaderStandsOnAPageThatAllShare() {
        String tag = site.browser().get(SERIES + "/1").header("ETag");
        var told = site.browser()
                .header("If-None-Match", tag)
                .cookie("flash", "question.sent")
                .get(SERIES + "/1");
        assertThat(told.header("Cache-Control")).isEqualTo("no-store");
        assertThat(Jsoup.parse(told.asString()).select(".flash").text()).isEqualTo("Sent. The answer comes by e-mail.");
        assertThat(page(SERIES + "/1").select(".flash")).isEmpty();
    }

    /** The properties that a card of a link needs by the Open Graph protocol are title, type, image and url. */
    @Test
    void aLinkToALessonIsShownWithItsWordsAndItsFirstBars() throws IOException {
        var head = page(SERIES + "/1").head();
        assertThat(head.select("meta[name=description]").attr("content")).isEqualTo(Shelf.SUMMARY);
        String address = site.address() + SERIES + "/1";
        assertThat(head.select("link[rel=canonical]").attr("href")).isEqualTo(address);
        assertThat(head.select("meta[property=og:url]").attr("content")).isEqualTo(address);
        assertThat(head.select("meta[property=og:title]").attr("content")).isEqualTo("First <Plank>");
        assertThat(head.select("meta[property=og:type]").attr("content")).isEqualTo("article");
        String picture = head.select("meta[property=og:image]").attr("content");
        assertThat(picture).isEqualTo(site.address() + "/e/" + shelf.episode(1).id() + "/link.png");
        var answer = site.program().get(picture);
        assertThat(answer.header("Cross-Origin-Resource-Policy")).isEqualTo("cross-origin");
        var drawn = ImageIO.read(new ByteArrayInputStream(answer.asByteArray()));
        assertThat(drawn.getWidth() + "x" + drawn.getHeight())
                .isEqualTo(head.select("meta[property=og:image:width]").attr("content") + "x"
                        + head.select("meta[property=og:image:height]").attr("content"));
        assertThat(IntStream.range(0, drawn.getWidth()).filter(x -> drawn.getRGB(x, 315) != drawn.getRGB(0, 0)))
                .as("ink in the middle row")
                .isNotEmpty();
        site.program().get("/e/" + shelf.episode(3).id() + "/link.png").then().statusCode(404);
    }

    @Test
    void aLessonInAListHasItsFirstBarsInInkForTheDayAndForTheNight() throws IOException {
        var card = page(SERIES).select(".card").first();
        String night = card.select("picture source").attr("srcset");
        String day = card.select("picture img").attr("src");
        assertThat(card.select("picture source").attr("media")).isEqualTo("(prefers-color-scheme: dark)");
        assertThat(card.select("picture img").attr("alt")).isEmpty();
        assertThat(darkest(day)).isLessThan(64);
        assertThat(darkest(night)).isGreaterThan(192);
        site.program().get(day.replace("card.png", "sheet.pdf")).then().statusCode(404);
        String draft = shelf.release(3, "Not out yet.", false).value();
        site.program().get("/card/" + draft + "/card.png").then().statusCode(404);
    }

    /** How dark the ink of a picture is at its darkest, from 0, black, to 255; what is seen through is no ink. */
    private static int darkest(String path) throws IOException {
        var answer = site.program().get(path);
        assertThat(answer.header("Cache-Control")).contains("immutable");
        var picture = ImageIO.read(new ByteArrayInputStream(answer.asByteArray()));
        assertThat(picture.getColorModel().hasAlpha()).isTrue();
        return IntStream.range(0, picture.getWidth() * picture.getHeight())
                .map(i -> picture.getRGB(i % picture.getWidth(), i / picture.getWidth()))
                .filter(pixel -> pixel >>> 24 > 200)
                .map(pixel -> pixel & 0xFF)
                .min()
                .orElseThrow();
    }

    /** WCAG 2.2, success criterion 3.1.2: what is in another language than the page says so. */
    @ParameterizedTest
    @ValueSource(strings = {"/", SERIES_PATH})
    void titlesInListsSayTheirLanguage(String path) {
        var page = Jsoup.parse(
                site.browser().header("Accept-Language", "de").get(path).asString());
        assertThat(page.select("html").attr("lang")).isEqualTo("de");
        assertThat(page.select(".card h3 a").eachAttr("lang")).isNotEmpty().containsOnly("en");
        assertThat(page.select(".shelf h2 a, h1[lang], .shelf-summary, .opening .lead[lang]")
                        .eachAttr("lang"))
                .isSubsetOf("en");
    }

    /** The lesson is in English, and what the program tells of it in its reader's language. */
    @Test
    void theWalkthroughSpeaksTheReadersLanguage() {
        var page = Jsoup.parse(site.browser()
                .header("Accept-Language", "de")
                .get(SERIES + "/1")
                .asString());
        var steps = page.select("#line-bar-1 li");
        assertThat(steps.eachAttr("lang")).isNotEmpty().containsOnly("de");
        assertThat(steps.eachText())
                .anySatisfy(step -> assertThat(step).startsWith("Über Am7. Lage: Zeigefinger im 2. Bund, "));
        assertThat(page.select(".steps-opening").attr("lang")).isEqualTo("de");
        assertThat(page(SERIES + "/1").select("#line-bar-1 li").eachAttr("lang"))
                .hasSameSizeAs(steps)
                .containsOnly("en");
    }

    /** Names of properties: schema.org, LearningResource. */
    @Test
    void programsReadWhatALessonIs() {
        var lesson = page(SERIES + "/1").select("[itemtype=https://schema.org/LearningResource]");
        assertThat(lesson.select("[itemprop=name]").attr("content")).isEqualTo("First <Plank>");
        assertThat(lesson.select("[itemprop=teaches]").eachAttr("content")).contains("Slap", "Pop");
        assertThat(lesson.select("[itemprop=inLanguage]").attr("content")).isEqualTo("en");
    }

    @Test
    void nobodyNeedsAnAccountToChooseALanguage() {
        var page = Jsoup.parse(
                site.browser().header("Accept-Language", "en").get(SERIES).asString());
        var form = page.select("form.languages");
        assertThat(form.select("button").eachAttr("value")).containsExactly("de");
        assertThat(form.select("button").attr("lang")).isEqualTo("de");
        var answer = site.form()
                .formParam("language", "de")
                .formParam("next", form.select("[name=next]").attr("value"))
                .post("/language");
        answer.then().statusCode(303).header("Location", endsWith(SERIES));
        var chosen = site.browser()
                .header("Accept-Language", "en")
                .cookie("language", answer.cookie("language"))
                .get(SERIES);
        assertThat(Jsoup.parse(chosen.asString()).select("html").attr("lang")).isEqualTo("de");
        site.form()
                .header("Referer", "http://localhost/lessons?words=tide&level=beginner")
                .formParam("language", "de")
                .formParam("next", "/lessons")
                .post("/language")
                .then()
                .header("Location", endsWith("/lessons?words=tide&level=beginner"));
        site.form()
                .header("Referer", "http://localhost/lessons?words=tide")
                .formParam("language", "de")
                .formParam("next", SERIES)
                .post("/language")
                .then()
                .header("Location", endsWith(SERIES));
        site.form()
                .formParam("language", "xx")
                .formParam("next", "//elsewhere.example")
                .post("/language")
                .then()
                .statusCode(303)
                .header("Location", endsWith("/"))
                .header("Location", not(containsString("elsewhere")));
    }

    /** Dates by the Unicode CLDR: the United States begin with the month, Britain with the day. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "en-GB,en;q=0.8 | 20 January 2026",
                "en-US | January 20, 2026",
                "de-AT,en-GB;q=0.5 | 20. Jänner 2026"
            })
    void datesAreWrittenAsWhereTheReaderLives(String wish, String date) {
        var page = Jsoup.parse(
                site.browser().header("Accept-Language", wish).get(SERIES).asString());
        assertThat(page.select(".card").first().select("time").text()).isEqualTo(date);
    }

    /** RFC 9110 section 9.3.2. */
    @Test
    void headTellsTheLengthThatGetSends() {
        var get = site.browser().header("Accept-Encoding", "identity").get(SERIES + "/1");
        site.browser()
                .header("Accept-Encoding", "identity")
                .head(SERIES + "/1")
                .then()
                .header("Content-Length", equalTo(get.header("Content-Length")));
    }

    private static Document page(String path) {
        return Jsoup.parse(site.browser().get(path).asString());
    }
}
