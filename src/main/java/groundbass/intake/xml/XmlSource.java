package groundbass.intake.xml;

import groundbass.intake.notice.Unreadable;
import groundbass.text.Message;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * A document read from its beginning to its end. No document type is read, nothing that it names is fetched, and no
 * entity of its own is resolved: a reference to one is an error of form. Depth, length and number of elements are bounded.
 */
final class XmlSource implements AutoCloseable {
    private static final int DEEPEST = 60;
    private static final int MOST_ELEMENTS = 4_000_000;
    private static final int LONGEST_TEXT = 4_000;

    private final XMLStreamReader reader;
    private int elements;

    private XmlSource(XMLStreamReader reader) {
        this.reader = reader;
    }

    static XmlSource of(byte[] document) throws Unreadable {
        var factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, false);
        factory.setProperty(XMLInputFactory.IS_COALESCING, false);
        factory.setXMLResolver((publicId, systemId, base, namespace) -> {
            throw new XMLStreamException("nothing outside the document is read");
        });
        try {
            return new XmlSource(factory.createXMLStreamReader(new StringReader(Decoding.text(document))));
        } catch (XMLStreamException e) {
            throw new Unreadable(Message.of("intake.refused.xml", 1, 1), e);
        }
    }

    /** Goes on to the next start or end of an element; false at the end of the document. */
    boolean next() throws Unreadable {
        try {
            while (reader.hasNext()) {
                int event = reader.next();
                if (event == XMLStreamConstants.ENTITY_REFERENCE) {
                    throw malformed(null);
                }
                if (event == XMLStreamConstants.START_ELEMENT && ++elements > MOST_ELEMENTS) {
                    throw new Unreadable(Message.of("intake.refused.size"));
                }
                if (event == XMLStreamConstants.START_ELEMENT || event == XMLStreamConstants.END_ELEMENT) {
                    return true;
                }
            }
            return false;
        } catch (XMLStreamException e) {
            throw malformed(e);
        }
    }

    private Unreadable malformed(XMLStreamException cause) {
        var place = reader.getLocation();
        var message = Message.of("intake.refused.xml", place.getLineNumber(), Math.max(1, place.getColumnNumber()));
        return new Unreadable(message, cause);
    }

    boolean isStart() {
        return reader.isStartElement();
    }

    String name() {
        return reader.getLocalName();
    }

    Map<String, String> attributes() {
        var attributes = new HashMap<String, String>();
        for (int i = 0; i < reader.getAttributeCount(); i++) {
            attributes.put(reader.getAttributeLocalName(i), cut(reader.getAttributeValue(i)));
        }
        return attributes;
    }

    /** The element that has just begun, to its end. */
    Element element() throws Unreadable {
        return element(0);
    }

    private Element element(int depth) throws Unreadable {
        if (depth > DEEPEST) {
            throw new Unreadable(Message.of("intake.refused.size"));
        }
        String name = name();
        var attributes = attributes();
        List<Element> children = new ArrayList<>();
        var text = new StringBuilder();
        try {
            for (int event = reader.next(); event != XMLStreamConstants.END_ELEMENT; event = reader.next()) {
                if (event == XMLStreamConstants.START_ELEMENT) {
                    if (++elements > MOST_ELEMENTS) {
                        throw new Unreadable(Message.of("intake.refused.size"));
                    }
                    children.add(element(depth + 1));
                } else if (event == XMLStreamConstants.CHARACTERS || event == XMLStreamConstants.CDATA) {
                    append(text);
                } else if (event == XMLStreamConstants.ENTITY_REFERENCE) {
                    throw malformed(null);
                }
            }
        } catch (XMLStreamException e) {
            throw malformed(e);
        }
        return new Element(name, attributes, text.toString().strip(), children);
    }

    private void append(StringBuilder text) {
        int room = LONGEST_TEXT - text.length();
        if (room > 0) {
            text.append(reader.getTextCharacters(), reader.getTextStart(), Math.min(room, reader.getTextLength()));
        }
    }

    private static String cut(String text) {
        return text.length() <= LONGEST_TEXT ? text : text.substring(0, LONGEST_TEXT);
    }

    /** Leaves out the element that has just begun. */
    void skip() throws Unreadable {
        int depth = 1;
        while (depth > 0 && next()) {
            depth += isStart() ? 1 : -1;
        }
    }

    @Override
    public void close() throws Unreadable {
        try {
            reader.close();
        } catch (XMLStreamException e) {
            throw malformed(e);
        }
    }
}
