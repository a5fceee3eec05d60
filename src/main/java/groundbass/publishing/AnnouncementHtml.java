package groundbass.publishing;

import groundbass.text.XmlDocument;
import javax.xml.stream.XMLStreamException;

/**
 * Writes an announcement as HTML that is well-formed XML too, so that every mail program reads it. What it is encoded in
 * the letter says.
 */
final class AnnouncementHtml {
    private AnnouncementHtml() {}

    static String page(Announcement news) {
        return "<!DOCTYPE html>\n"
                + XmlDocument.fragment(page -> page.element("html", html -> {
                    html.attribute("lang", news.locale().toLanguageTag());
                    html.element("head", head -> head.text("title", news.subject()));
                    html.element("body", body -> {
                        body(body, news);
                        if (news.foot().isPresent()) {
                            foot(body, news.foot().get());
                        }
                    });
                }));
    }

    static String fragment(Announcement news) {
        return XmlDocument.fragment(part -> part.element("div", body -> body(body, news)));
    }

    private static void body(XmlDocument html, Announcement news) throws XMLStreamException {
        html.text("p", news.opening());
        html.element("h1", heading -> link(heading, news.link(), news.heading()));
        html.text("p", news.facts());
        if (!news.summary().isEmpty()) {
            html.text("p", news.summary());
        }
        html.element("p", way -> link(way, news.link(), news.link()));
    }

    private static void foot(XmlDocument html, Announcement.Foot foot) throws XMLStreamException {
        html.element("footer", footer -> {
            footer.element("p", paragraph -> {
                paragraph.characters(foot.reason() + " ");
                link(paragraph, foot.endLink(), foot.endWords());
            });
            for (String paragraph : foot.sender().split("\n+")) {
                footer.text("p", paragraph);
            }
        });
    }

    private static void link(XmlDocument html, String address, String words) throws XMLStreamException {
        html.element("a", link -> {
            link.attribute("href", address);
            link.characters(words);
        });
    }
}
