package groundbass.web.student.feed;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.episode.EpisodeId;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.xml.sax.InputSource;

/** Feeds, calendar and map against the rules of their formats, read with the JDK's own XML. */
class FeedTest {
    private static final String ATOM = "http://www.w3.org/2005/Atom";
    private static final Feed.Enclosure SHEET =
            new Feed.Enclosure("https://bass.example/files/r/sheet.pdf", "application/pdf", 1234, "sheet.pdf", false);
    private static final Feed.Enclosure BAND =
            new Feed.Enclosure("https://bass.example/files/r/full-100.mp3", "audio/mpeg", 99, "full-100.mp3", true);
    private static final Feed FEED = new Feed(
            "urn:uuid:0b5e2f1e-0000-3000-8000-000000000001",
            "Low Tide & <High>",
            "",
            "A. Teacher",
            "en",
            "https://bass.example/series/low-tide",
            Instant.parse("2026-03-11T17:00:00Z"),
            List.of(
                    entry(2, List.of(SHEET, BAND), Instant.parse("2026-03-11T17:00:00Z")),
                    entry(1, List.of(), Instant.parse("2026-03-04T17:00:00.5Z"))));

    private static Feed.Entry entry(int number, List<Feed.Enclosure> files, Instant published) {
        return new Feed.Entry(
                "urn:uuid:0b5e2f1e-0000-3000-8000-00000000010" + number,
                number + ". Rope\u0001 & Pulley",
                number == 1 ? "" : "Two bars <b>.",
                "https://bass.example/e/" + number,
                published,
                published,
                files);
    }

    private static Document read(String xml) throws Exception {
        var factory = DocumentBuilderFactory.newInstance();
        factory.setNamespaceAware(true);
        return factory.newDocumentBuilder().parse(new InputSource(new StringReader(xml)));
    }

    private static List<Element> children(Element of, String name) {
        var found = new ArrayList<Element>();
        for (var node = of.getFirstChild(); node != null; node = node.getNextSibling()) {
            if (node instanceof Element element && element.getLocalName().equals(name)) {
                found.add(element);
            }
        }
        return found;
    }

    private static String text(Element of, String name) {
        var found = children(of, name);
        assertThat(found).as(name).hasSize(1);
        return found.get(0).getTextContent();
    }

    /** RFC 4287 sections 4.1.1 (feed), 4.1.2 (entry), 4.2.6 (id), 4.2.7 (link), 3.3 (dates). */
    @Test
    void atomHasWhatItsRulesAsk() throws Exception {
        String self = "https://bass.example/series/low-tide/feed.atom";
        var feed = read(AtomFeed.of(FEED, self)).getDocumentElement();
        assertThat(feed.getNamespaceURI()).isEqualTo(ATOM);
        assertThat(feed.getLocalName()).isEqualTo("feed");
        assertThat(text(feed, "id")).isEqualTo(FEED.id());
        assertThat(text(feed, "title")).isEqualTo("Low Tide & <High>");
        assertThat(children(feed, "subtitle")).isEmpty();
        assertThat(text(children(feed, "author").get(0), "name")).isEqualTo("A. Teacher");
        OffsetDateTime.parse(text(feed, "updated"), DateTimeFormatter.ISO_OFFSET_DATE_TIME);
        assertThat(links(feed, "self")).containsExactly(self);
        assertThat(links(feed, "alternate")).containsExactly(FEED.page());

        var entries = children(feed, "entry");
        assertThat(entries).hasSize(2);
        var ids = new ArrayList<String>();
        for (var entry : entries) {
            ids.add(text(entry, "id"));
            assertThat(text(entry, "title")).contains("Rope & Pulley");
            OffsetDateTime.parse(text(entry, "updated"));
            OffsetDateTime.parse(text(entry, "published"));
            // an entry without content has to say where it is read
            assertThat(links(entry, "alternate")).hasSize(1);
        }
        assertThat(ids).doesNotHaveDuplicates();
        assertThat(text(entries.get(0), "summary")).isEqualTo("Two bars <b>.");
        assertThat(links(entries.get(0), "enclosure")).containsExactly(SHEET.address(), BAND.address());
        var enclosure = children(entries.get(0), "link").get(1);
        assertThat(enclosure.getAttribute("length")).isEqualTo("1234");
        assertThat(enclosure.getAttribute("type")).isEqualTo("application/pdf");
    }

    private static List<String> links(Element of, String rel) {
        return children(of, "link").stream()
                .filter(link -> link.getAttribute("rel").equals(rel))
                .map(link -> link.getAttribute("href"))
                .toList();
    }

    /** The specification of RSS 2.0: "Required channel elements", "Elements of item", "enclosure" and "guid". */
    @Test
    void rssHasWhatItsRulesAsk() throws Exception {
        String self = "https://bass.example/series/low-tide/feed.rss";
        var rss = read(RssFeed.of(FEED, self)).getDocumentElement();
        assertThat(rss.getTagName()).isEqualTo("rss");
        assertThat(rss.getAttribute("version")).isEqualTo("2.0");
        var channel = children(rss, "channel").get(0);
        assertThat(text(channel, "title")).isEqualTo("Low Tide & <High>");
        assertThat(text(channel, "description")).isNotBlank();
        var all = children(channel, "link");
        assertThat(all).hasSize(2);
        assertThat(all.get(0).getTextContent()).isEqualTo(FEED.page());
        assertThat(all.get(1).getNamespaceURI()).isEqualTo(ATOM);
        assertThat(all.get(1).getAttribute("href")).isEqualTo(self);

        var items = children(channel, "item");
        assertThat(items).hasSize(2);
        for (var item : items) {
            assertThat(text(item, "title")).isNotBlank();
            // an address is only a permanent link where the attribute does not say otherwise
            assertThat(children(item, "guid").get(0).getAttribute("isPermaLink"))
                    .isEqualTo("false");
            // RFC 822 section 5, with the year of four digits that the specification of RSS prefers
            ZonedDateTime.parse(text(item, "pubDate"), DateTimeFormatter.RFC_1123_DATE_TIME);
        }
        assertThat(text(items.get(0), "pubDate")).isEqualTo("Wed, 11 Mar 2026 17:00:00 GMT");
        var enclosures = children(items.get(0), "enclosure");
        assertThat(enclosures).hasSize(1);
        assertThat(enclosures.get(0).getAttribute("url")).isEqualTo(BAND.address());
        assertThat(enclosures.get(0).getAttribute("length")).isEqualTo("99");
        assertThat(enclosures.get(0).getAttribute("type")).isEqualTo("audio/mpeg");
        assertThat(children(items.get(1), "enclosure")).isEmpty();
    }

    private static final List<CalendarFile.Event> EVENTS = List.of(
            new CalendarFile.Event(
                    "urn:uuid:0b5e2f1e-0000-3000-8000-000000000101",
                    Instant.parse("2026-03-04T16:00:00Z"),
                    Instant.parse("2026-02-01T09:30:00Z"),
                    "Rope, pulley; a \\ and\ntwo lines \uD834\uDD22 "
                            + "Übungsübungsübungsübungsübungsübungsübungsübungsübung",
                    Optional.of("https://bass.example/e/1")),
            new CalendarFile.Event(
                    "urn:uuid:0b5e2f1e-0000-3000-8000-000000000102",
                    Instant.parse("2026-04-01T15:00:00Z"),
                    Instant.parse("2026-02-01T09:31:00Z"),
                    "A new lesson",
                    Optional.empty()));

    /** RFC 5545 sections 3.4 and 3.6 (objects), 3.6.1 (VEVENT), 3.8.4.7 (UID), 3.8.7.2 (DTSTAMP), 3.3.5 (UTC). */
    @Test
    void theCalendarHasWhatItsRulesAsk() {
        var lines = unfolded(CalendarFile.of("Low Tide", EVENTS));
        assertThat(lines.get(0)).isEqualTo("BEGIN:VCALENDAR");
        assertThat(lines.get(lines.size() - 1)).isEqualTo("END:VCALENDAR");
        assertThat(lines)
                .containsOnlyOnce("VERSION:2.0")
                .filteredOn(line -> line.startsWith("PRODID:"))
                .hasSize(1);
        assertThat(lines).filteredOn(line -> line.equals("BEGIN:VEVENT")).hasSize(2);
        for (String property : List.of("UID:", "DTSTAMP:", "DTSTART:", "SUMMARY:")) {
            assertThat(lines)
                    .filteredOn(line -> line.startsWith(property))
                    .hasSize(2)
                    .doesNotHaveDuplicates();
        }
        assertThat(lines)
                .contains("DTSTART:20260304T160000Z", "DTSTAMP:20260201T093000Z", "URL:https://bass.example/e/1");
        // section 3.3.11: backslash, semicolon, comma and line break
        assertThat(lines)
                .anyMatch(line -> line.startsWith("SUMMARY:Rope\\, pulley\\; a \\\\ and\\ntwo lines \uD834\uDD22 Ü"));
    }

    /** RFC 5545 section 3.1: lines of at most 75 octets, ended by CR and LF, folded by a space that is taken out again. */
    @Test
    void theCalendarsLinesAreFoldedByOctets() {
        String file = CalendarFile.of("Low Tide", EVENTS);
        assertThat(file).endsWith("\r\n").doesNotContain("\r\r");
        var physical = List.of(file.split("\r\n"));
        assertThat(physical).anyMatch(line -> line.startsWith(" ")).allSatisfy(line -> {
            assertThat(line).doesNotContain("\n").doesNotContain("\uFFFD");
            assertThat(line.getBytes(StandardCharsets.UTF_8).length).isLessThanOrEqualTo(75);
        });
    }

    private static List<String> unfolded(String file) {
        return List.of(file.replace("\r\n ", "").split("\r\n"));
    }

    /** The sitemaps protocol 0.9: urlset, url and loc are required, lastmod is a W3C date. */
    @Test
    void theMapHasWhatItsRulesAsk() throws Exception {
        var page =
                new Sitemap.Page("https://bass.example/series/a&b", Optional.of(Instant.parse("2026-03-04T17:00:00Z")));
        var set = read(Sitemap.of(List.of(page, new Sitemap.Page("https://bass.example/", Optional.empty()))))
                .getDocumentElement();
        assertThat(set.getNamespaceURI()).isEqualTo("http://www.sitemaps.org/schemas/sitemap/0.9");
        var urls = children(set, "url");
        assertThat(urls).hasSize(2);
        assertThat(text(urls.get(0), "loc")).isEqualTo("https://bass.example/series/a&b");
        assertThat(text(urls.get(0), "lastmod")).isEqualTo("2026-03-04T17:00:00Z");
        assertThat(children(urls.get(1), "lastmod")).isEmpty();
    }

    /** RFC 9562 section 5.3: version 3 and the variant of that document; of the same name always the same. */
    @Test
    void aNameStaysTheSameWhereverTheSiteMoves() {
        var id = new EpisodeId("episode000000001");
        assertThat(PermanentId.of(id))
                .isEqualTo(PermanentId.of(id))
                .isNotEqualTo(PermanentId.of(new EpisodeId("episode000000002")));
        assertThat(PermanentId.of(id))
                .matches("urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-3[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}");
    }
}
