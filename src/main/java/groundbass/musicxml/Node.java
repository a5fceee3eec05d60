package groundbass.musicxml;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/** One element of an XML document as a value; it has a text or children, never both. */
record Node(String name, List<Attribute> attributes, String text, List<Node> children) {
    /** A name and what it says. */
    record Attribute(String name, String value) {
        Attribute {
            Objects.requireNonNull(name);
            Objects.requireNonNull(value);
        }
    }

    Node {
        Objects.requireNonNull(name);
        attributes = List.copyOf(attributes);
        children = List.copyOf(children);
        if (!text.isEmpty() && !children.isEmpty()) {
            throw new IllegalArgumentException("an element has a text or children: " + name);
        }
    }

    static Node empty(String name) {
        return new Node(name, List.of(), "", List.of());
    }

    static Node text(String name, Object text) {
        return new Node(name, List.of(), String.valueOf(text), List.of());
    }

    static Node of(String name, List<Node> children) {
        return new Node(name, List.of(), "", children);
    }

    static Node of(String name, Node... children) {
        return of(name, Arrays.asList(children));
    }

    /** The same element with one attribute more. */
    Node with(String attribute, Object value) {
        var more = new ArrayList<>(attributes);
        more.add(new Attribute(attribute, String.valueOf(value)));
        return new Node(name, more, text, children);
    }
}
