package groundbass.web.student.feed;

import groundbass.text.XmlDocument;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Optional;
import javax.xml.stream.XMLStreamException;

/** Writes a feed as RSS 2.0. An item has one file at most, so that is one to listen to. */
final class RssFeed {
    static final String MEDIA_TYPE = "application/rss+xml; charset=utf-8";

    private RssFeed() {}

    /** @param self where this feed is fetched */
    static String of(Feed feed, String self) {
        return XmlDocument.of(xml -> xml.element("rss", rss -> {
            rss.attribute("version", "2.0");
            rss.namespace("atom", "http://www.w3.org/2005/Atom");
            rss.element("channel", channel -> {
                channel.text("title", feed.title());
                channel.text("link", feed.page());
                channel.text("description", feed.summary().isEmpty() ? feed.title() : feed.summary());
                channel.text("language", feed.language());
                channel.text("lastBuildDate", date(feed.updated()));
                channel.empty("atom:link", "rel", "self", "type", "application/rss+xml", "href", self);
                for (var entry : feed.entries()) {
                    channel.element("item", item -> write(item, entry));
                }
            });
        }));
    }

    private static void write(XmlDocument xml, Feed.Entry entry) throws XMLStreamException {
        xml.text("title", entry.title());
        xml.text("link", entry.link());
        if (!entry.summary().isEmpty()) {
            xml.text("description", entry.summary());
        }
        xml.text("pubDate", date(entry.published()));
        xml.element("guid", guid -> {
            guid.attribute("isPermaLink", "false");
            guid.characters(entry.id());
        });
        Optional<Feed.Enclosure> sound =
                entry.files().stream().filter(Feed.Enclosure::sound).findFirst();
        if (sound.isPresent()) {
            var file = sound.get();
            xml.empty(
                    "enclosure", "url", file.address(), "length", Long.toString(file.size()), "type", file.mediaType());
        }
    }

    /** As RFC 822 section 5 has it, with a year of four digits. */
    private static String date(Instant instant) {
        return DateTimeFormatter.RFC_1123_DATE_TIME.format(instant.atOffset(ZoneOffset.UTC));
    }
}
