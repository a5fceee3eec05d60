package groundbass.archive;

import java.io.StringReader;
import java.util.Set;
import java.util.regex.Pattern;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * Whether drawings from outside may stand in a page of ours: they have the elements and attributes that our own have and
 * nothing else, so neither script nor style nor form, and nothing that HTML reads otherwise than XML does.
 */
final class SafeDrawing {
    private static final Set<String> ELEMENTS =
            Set.of("svg", "title", "desc", "defs", "symbol", "path", "use", "g", "text", "a");
    private static final Set<String> ATTRIBUTES = Set.of(
            "role",
            "fill",
            "lang",
            "viewBox",
            "font-family",
            "font-variant",
            "id",
            "class",
            "d",
            "href",
            "x",
            "y",
            "transform",
            "font-size",
            "font-weight",
            "font-style",
            "text-anchor",
            "fill-opacity",
            "textLength",
            "lengthAdjust",
            "overflow");
    private static final Pattern TOLD = Pattern.compile("(data|aria)-[a-z-]+");
    private static final Pattern INSIDE = Pattern.compile("#[A-Za-z0-9_.-]*");
    private static final Pattern LINK = Pattern.compile("https?://[^\\s]*");

    private SafeDrawing() {}

    /** One drawing or several, one after another. */
    static boolean isSafe(String drawings) {
        if (drawings.contains("<!") || drawings.contains("<?")) {
            return false;
        }
        var factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        try {
            var reader = factory.createXMLStreamReader(new StringReader("<all>" + drawings + "</all>"));
            reader.nextTag();
            return isSafe(reader);
        } catch (XMLStreamException e) {
            return false;
        }
    }

    private static boolean isSafe(XMLStreamReader reader) throws XMLStreamException {
        while (reader.hasNext()) {
            switch (reader.next()) {
                case XMLStreamConstants.START_ELEMENT -> {
                    if (!isSafeElement(reader)) {
                        return false;
                    }
                }
                case XMLStreamConstants.CHARACTERS,
                        XMLStreamConstants.SPACE,
                        XMLStreamConstants.END_ELEMENT,
                        XMLStreamConstants.END_DOCUMENT -> {
                    // words, and ends of what was looked at
                }
                default -> {
                    return false;
                }
            }
        }
        return true;
    }

    private static boolean isSafeElement(XMLStreamReader reader) {
        String name = reader.getLocalName();
        if (!ELEMENTS.contains(name) || !reader.getPrefix().isEmpty()) {
            return false;
        }
        for (int i = 0; i < reader.getAttributeCount(); i++) {
            String attribute = reader.getAttributeLocalName(i);
            boolean known =
                    ATTRIBUTES.contains(attribute) || TOLD.matcher(attribute).matches();
            if (!known || !reader.getAttributePrefix(i).isEmpty()) {
                return false;
            }
            if (attribute.equals("href") && !isSafeAddress(name, reader.getAttributeValue(i))) {
                return false;
            }
        }
        return true;
    }

    private static boolean isSafeAddress(String element, String address) {
        return INSIDE.matcher(address).matches()
                || element.equals("a") && LINK.matcher(address).matches();
    }
}
