package groundbass.text;

import java.io.StringWriter;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/** Writes one XML document, or a part of one. What XML 1.0 has no character for (section 2.2) is left out of texts. */
public final class XmlDocument {
    private final XMLStreamWriter out;

    private XmlDocument(XMLStreamWriter out) {
        this.out = out;
    }

    /** What is written into a document, or into an element of it. */
    @FunctionalInterface
    public interface Content {
        void write(XmlDocument xml) throws XMLStreamException;
    }

    /** A whole document, with the line that says so. */
    public static String of(Content content) {
        return written(xml -> {
            xml.out.writeStartDocument("UTF-8", "1.0");
            content.write(xml);
            xml.out.writeEndDocument();
        });
    }

    /** Elements alone, to be set into something else. */
    public static String fragment(Content content) {
        return written(content);
    }

    private static String written(Content content) {
        var text = new StringWriter();
        try {
            var out = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(text);
            content.write(new XmlDocument(out));
            out.close();
        } catch (XMLStreamException e) {
            throw new IllegalStateException("a text in memory cannot be written", e);
        }
        return text.toString();
    }

    public void element(String name, Content content) throws XMLStreamException {
        out.writeStartElement(name);
        content.write(this);
        out.writeEndElement();
    }

    /** An element that holds a text. */
    public void text(String name, String text) throws XMLStreamException {
        element(name, xml -> characters(text));
    }

    public void characters(String text) throws XMLStreamException {
        out.writeCharacters(clean(text));
    }

    /** An element of attributes alone, given as name and value in turn. */
    public void empty(String name, String... attributes) throws XMLStreamException {
        out.writeEmptyElement(name);
        for (int i = 0; i < attributes.length; i += 2) {
            attribute(attributes[i], attributes[i + 1]);
        }
    }

    public void attribute(String name, String value) throws XMLStreamException {
        out.writeAttribute(name, clean(value));
    }

    public void namespace(String uri) throws XMLStreamException {
        out.writeDefaultNamespace(uri);
    }

    public void namespace(String prefix, String uri) throws XMLStreamException {
        out.writeNamespace(prefix, uri);
    }

    private static String clean(String text) {
        return text.codePoints()
                .filter(c -> c == '\t'
                        || c == '\n'
                        || c >= ' ' && c != 0xFFFE && c != 0xFFFF && !(c >= 0xD800 && c <= 0xDFFF))
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
    }
}
