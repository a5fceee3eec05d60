package groundbass.musicxml;

import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamWriter;

/**
 * Writes a document, one element a line, in UTF-8. The library escapes what could be taken for markup; characters that
 * no XML document may hold (XML 1.0, production 2) are replaced, since what people type may hold them.
 */
final class XmlText {
    private static final int REPLACEMENT = 0xFFFD;
    private static final String STEP = "  ";

    private final XMLStreamWriter out;

    private XmlText(XMLStreamWriter out) {
        this.out = out;
    }

    static byte[] bytes(Node root) {
        var text = new StringWriter();
        try {
            var out = XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(text);
            out.writeStartDocument("UTF-8", "1.0");
            new XmlText(out).write(root, "\n");
            out.writeCharacters("\n");
            out.writeEndDocument();
            out.close();
        } catch (XMLStreamException e) {
            throw new IllegalStateException("a document in memory cannot be written", e);
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    private void write(Node node, String indent) throws XMLStreamException {
        out.writeCharacters(indent);
        if (node.text().isEmpty() && node.children().isEmpty()) {
            out.writeEmptyElement(node.name());
            attributes(node);
            return;
        }
        out.writeStartElement(node.name());
        attributes(node);
        out.writeCharacters(legal(node.text()));
        for (var child : node.children()) {
            write(child, indent + STEP);
        }
        if (!node.children().isEmpty()) {
            out.writeCharacters(indent);
        }
        out.writeEndElement();
    }

    private void attributes(Node node) throws XMLStreamException {
        for (var attribute : node.attributes()) {
            out.writeAttribute(attribute.name(), legal(attribute.value()));
        }
    }

    private static String legal(String text) {
        return text.codePoints()
                .map(point -> isLegal(point) ? point : REPLACEMENT)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
    }

    private static boolean isLegal(int point) {
        return point == '\t'
                || point == '\n'
                || point == '\r'
                || (point >= 0x20 && point <= 0xD7FF)
                || (point >= 0xE000 && point <= 0xFFFD)
                || point >= 0x10000;
    }
}
