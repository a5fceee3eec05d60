package groundbass.web.student.feed;

import groundbass.text.XmlDocument;
import javax.xml.stream.XMLStreamException;

/** Writes a feed in the Atom Syndication Format (RFC 4287). */
final class AtomFeed {
    static final String MEDIA_TYPE = "application/atom+xml; charset=utf-8";
    private static final String NAMESPACE = "http://www.w3.org/2005/Atom";

    private AtomFeed() {}

    /** @param self where this feed is fetched */
    static String of(Feed feed, String self) {
        return XmlDocument.of(xml -> xml.element("feed", inside -> {
            inside.namespace(NAMESPACE);
            inside.attribute("xml:lang", feed.language());
            inside.text("id", feed.id());
            inside.text("title", feed.title());
            if (!feed.summary().isEmpty()) {
                inside.text("subtitle", feed.summary());
            }
            inside.text("updated", feed.updated().toString());
            inside.element("author", author -> author.text("name", feed.author()));
            inside.empty("link", "rel", "self", "type", "application/atom+xml", "href", self);
            inside.empty("link", "rel", "alternate", "type", "text/html", "href", feed.page());
            for (var entry : feed.entries()) {
                inside.element("entry", part -> write(part, entry));
            }
        }));
    }

    private static void write(XmlDocument xml, Feed.Entry entry) throws XMLStreamException {
        xml.text("id", entry.id());
        xml.text("title", entry.title());
        xml.text("published", entry.published().toString());
        xml.text("updated", entry.updated().toString());
        xml.empty("link", "rel", "alternate", "type", "text/html", "href", entry.link());
        for (var file : entry.files()) {
            xml.empty(
                    "link",
                    "rel",
                    "enclosure",
                    "type",
                    file.mediaType(),
                    "length",
                    Long.toString(file.size()),
                    "title",
                    file.name(),
                    "href",
                    file.address());
        }
        if (!entry.summary().isEmpty()) {
            xml.text("summary", entry.summary());
        }
    }
}
