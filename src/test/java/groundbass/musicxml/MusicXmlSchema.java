package groundbass.musicxml;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.util.Map;
import java.util.Optional;
import javax.xml.XMLConstants;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;
import org.w3c.dom.bootstrap.DOMImplementationRegistry;
import org.w3c.dom.ls.DOMImplementationLS;
import org.xml.sax.SAXException;

/**
 * The schema of MusicXML 4.0 as its authors wrote it, out of a library that binds it to classes; what it takes from
 * other standards stands beside the tests. Nothing is fetched: whatever else a document or schema names is refused.
 */
final class MusicXmlSchema {
    private static final String SCHEMA = "/META-INF/jaxb/xsd/musicxml.xsd";

    /** Its namespace and the file that stands for it. */
    private static final Map<String, String> BESIDE = Map.of(
            "http://www.w3.org/XML/1998/namespace", "/musicxml/xml.xsd",
            "http://www.w3.org/1999/xlink", "/musicxml/xlink.xsd");

    private static final Schema ALL = load();

    private MusicXmlSchema() {}

    private static Schema load() {
        try {
            var files = (DOMImplementationLS)
                    DOMImplementationRegistry.newInstance().getDOMImplementation("LS");
            var factory = SchemaFactory.newDefaultInstance();
            factory.setProperty(XMLConstants.ACCESS_EXTERNAL_DTD, "");
            factory.setResourceResolver((type, namespace, publicId, systemId, baseUri) -> {
                var input = files.createLSInput();
                input.setByteStream(resource(BESIDE.get(namespace)));
                input.setSystemId(systemId);
                return input;
            });
            return factory.newSchema(new StreamSource(resource(SCHEMA)));
        } catch (ReflectiveOperationException | SAXException e) {
            throw new IllegalStateException(e);
        }
    }

    private static InputStream resource(String name) {
        return MusicXmlSchema.class.getResourceAsStream(name);
    }

    /** What is wrong with a document; empty where it is valid. */
    static Optional<String> fault(byte[] document) {
        try {
            var validator = ALL.newValidator();
            validator.setProperty(XMLConstants.ACCESS_EXTERNAL_DTD, "");
            validator.setProperty(XMLConstants.ACCESS_EXTERNAL_SCHEMA, "");
            validator.validate(new StreamSource(new ByteArrayInputStream(document)));
            return Optional.empty();
        } catch (SAXException e) {
            return Optional.of(e.toString());
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }
}
