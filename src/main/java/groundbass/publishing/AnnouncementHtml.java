package groundbass.publishing;

import java.io.StringWriter;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/**
 * Writes an announcement as HTML that is well-formed XML too, so that every mail program reads it. What it is encoded in
 * the letter says.
 */
final class AnnouncementHtml {
    private final XMLStreamWriter out;

    private AnnouncementHtml(XMLStreamWriter out) {
        this.out = out;
    }

    private interface Writing {
        void by(AnnouncementHtml html) throws XMLStreamException;
    }

    static String page(Announcement news) {
        return "<!DOCTYPE html>\n" + written(html -> html.whole(news));
    }

    static String fragment(Announcement news) {
        return written(html -> {
            html.out.writeStartElement("div");
            html.body(news);
            html.out.writeEndElement();
        });
    }

    private static String written(Writing writing) {
        var text = new StringWriter();
        try {
            var out = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(text);
            writing.by(new AnnouncementHtml(out));
            out.close();
        } catch (XMLStreamException e) {
            throw new IllegalStateException(e);
        }
        return text.toString();
    }

    private void whole(Announcement news) throws XMLStreamException {
        out.writeStartElement("html");
        out.writeAttribute("lang", news.locale().toLanguageTag());
        out.writeStartElement("head");
        element("title", news.subject());
        out.writeEndElement();
        out.writeStartElement("body");
        body(news);
        if (news.foot().isPresent()) {
            foot(news.foot().get());
        }
        out.writeEndElement();
        out.writeEndElement();
    }

    private void body(Announcement news) throws XMLStreamException {
        element("p", news.opening());
        out.writeStartElement("h1");
        link(news.link(), news.heading());
        out.writeEndElement();
        element("p", news.facts());
        if (!news.summary().isEmpty()) {
            element("p", news.summary());
        }
        out.writeStartElement("p");
        link(news.link(), news.link());
        out.writeEndElement();
    }

    private void foot(Announcement.Foot foot) throws XMLStreamException {
        out.writeStartElement("footer");
        out.writeStartElement("p");
        out.writeCharacters(foot.reason() + " ");
        link(foot.endLink(), foot.endWords());
        out.writeEndElement();
        for (String paragraph : foot.sender().split("\n+")) {
            element("p", paragraph);
        }
        out.writeEndElement();
    }

    private void link(String address, String words) throws XMLStreamException {
        out.writeStartElement("a");
        out.writeAttribute("href", address);
        out.writeCharacters(words);
        out.writeEndElement();
    }

    private void element(String name, String text) throws XMLStreamException {
        out.writeStartElement(name);
        out.writeCharacters(text);
        out.writeEndElement();
    }
}
