package groundbass.intake.xml.document;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * An element of a document with all that is in it.
 *
 * @param text what stands directly in it, without outer spaces
 */
public record XmlElement(String name, Map<String, String> attributes, String text, List<XmlElement> children) {
    public XmlElement {
        attributes = Map.copyOf(attributes);
        children = List.copyOf(children);
    }

    public Optional<XmlElement> child(String childName) {
        return all(childName).findFirst();
    }

    public Stream<XmlElement> all(String childName) {
        return children.stream().filter(child -> child.name.equals(childName));
    }

    /** Elements two steps down: {@code all("notations", "technical")}. */
    public Stream<XmlElement> all(String childName, String grandchildName) {
        return all(childName).flatMap(child -> child.all(grandchildName));
    }

    public boolean has(String childName) {
        return child(childName).isPresent();
    }

    /** The text of a child; empty where there is no such child, or nothing in it. */
    public Optional<String> text(String childName) {
        return child(childName).map(XmlElement::text).filter(found -> !found.isEmpty());
    }

    public Optional<String> attribute(String attribute) {
        return Optional.ofNullable(attributes.get(attribute)).map(String::strip);
    }

    public boolean is(String attribute, String value) {
        return attribute(attribute).filter(value::equals).isPresent();
    }
}
