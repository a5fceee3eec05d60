package groundbass.intake.xml.document;

import groundbass.intake.notice.Unreadable;
import groundbass.text.Message;
import java.io.IOException;
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
public final class XmlSource implements AutoCloseable {
    private static final int DEEPEST = 60;
    private static final int LONGEST_TEXT = 4_000;

    private final Paced characters;
    private final XMLStreamReader reader;
    private final DocumentLimits limits = new DocumentLimits();

    private XmlSource(Paced characters, XMLStreamReader reader) {
        this.characters = characters;
        this.reader = reader;
    }

    public static XmlSource of(Document document) throws Unreadable {
        var factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, false);
        factory.setProperty(XMLInputFactory.IS_COALESCING, false);
        factory.setXMLResolver((publicId, systemId, base, namespace) -> {
            throw new XMLStreamException("nothing outside the document is read");
        });
        try {
            var characters = new Paced(document.reader());
            return new XmlSource(characters, factory.createXMLStreamReader(characters));
        } catch (IOException e) {
            throw Document.told(e);
        } catch (XMLStreamException e) {
            throw e.getNestedException() instanceof IOException fault
                    ? Document.told(fault)
                    : new Unreadable(Message.of("intake.refused.xml", 1, 1), e);
        }
    }

    /** Goes on to the next start or end of an element; false at the end of the document. */
    public boolean next() throws Unreadable {
        try {
            while (reader.hasNext()) {
                int event = step();
                if (event == XMLStreamConstants.START_ELEMENT || event == XMLStreamConstants.END_ELEMENT) {
                    return true;
                }
            }
            return false;
        } catch (XMLStreamException e) {
            throw malformed(e);
        }
    }

    private int step() throws XMLStreamException, Unreadable {
        characters.begin();
        int event = reader.next();
        switch (event) {
            case XMLStreamConstants.ENTITY_REFERENCE -> throw malformed(new XMLStreamException("an entity of its own"));
            case XMLStreamConstants.START_ELEMENT -> limits.begin(reader);
            case XMLStreamConstants.PROCESSING_INSTRUCTION -> limits.name(reader.getPITarget());
            default -> {
                // nothing that is kept
            }
        }
        return event;
    }

    private Unreadable malformed(XMLStreamException cause) {
        if (cause.getNestedException() instanceof IOException fault) {
            return Document.told(fault);
        }
        var place = reader.getLocation();
        var message = Message.of("intake.refused.xml", place.getLineNumber(), Math.max(1, place.getColumnNumber()));
        return new Unreadable(message, cause);
    }

    public boolean isStart() {
        return reader.isStartElement();
    }

    public String name() {
        return reader.getLocalName();
    }

    public Map<String, String> attributes() {
        var attributes = new HashMap<String, String>();
        for (int i = 0; i < reader.getAttributeCount(); i++) {
            attributes.put(reader.getAttributeLocalName(i), cut(reader.getAttributeValue(i)));
        }
        return attributes;
    }

    /** The element that has just begun, to its end. */
    public XmlElement element() throws Unreadable {
        limits.gather();
        return element(0);
    }

    private XmlElement element(int depth) throws Unreadable {
        if (depth > DEEPEST) {
            throw new Unreadable(Message.of("intake.refused.size"));
        }
        String name = name();
        var attributes = attributes();
        limits.hold(
                1 + attributes.size(),
                attributes.values().stream().mapToInt(String::length).sum());
        List<XmlElement> children = new ArrayList<>();
        var text = new StringBuilder();
        try {
            for (int event = step(); event != XMLStreamConstants.END_ELEMENT; event = step()) {
                if (event == XMLStreamConstants.START_ELEMENT) {
                    children.add(element(depth + 1));
                } else if (event == XMLStreamConstants.CHARACTERS || event == XMLStreamConstants.CDATA) {
                    append(text);
                }
            }
        } catch (XMLStreamException e) {
            throw malformed(e);
        }
        return new XmlElement(name, attributes, text.toString().strip(), children);
    }

    private void append(StringBuilder text) throws Unreadable {
        int more = Math.min(LONGEST_TEXT - text.length(), reader.getTextLength());
        if (more > 0) {
            limits.hold(0, more);
            text.append(reader.getTextCharacters(), reader.getTextStart(), more);
        }
    }

    private static String cut(String text) {
        return text.length() <= LONGEST_TEXT ? text : text.substring(0, LONGEST_TEXT);
    }

    /** Leaves out the element that has just begun. */
    public void skip() throws Unreadable {
        int depth = 1;
        while (depth > 0 && next()) {
            depth += isStart() ? 1 : -1;
        }
    }

    @Override
    public void close() throws Unreadable {
        try {
            reader.close();
            characters.close();
        } catch (IOException e) {
            throw Document.told(e);
        } catch (XMLStreamException e) {
            throw malformed(e);
        }
    }
}
