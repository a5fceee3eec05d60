package groundbass.intake.xml.document;

import groundbass.intake.notice.Unreadable;
import groundbass.text.Message;
import java.util.HashSet;
import java.util.Set;
import javax.xml.stream.XMLStreamReader;

/**
 * How much there may be of what is held while a document is read: its parser keeps every name that it has met, and one
 * element is gathered with all that is in it. A score of many parts needs a small share of this (ours). Mutable; one for a walk.
 */
final class DocumentLimits {
    private static final int MOST_ELEMENTS = 4_000_000;
    private static final int MOST_NAMES = 5_000;
    private static final int LONGEST_NAME = 200;
    private static final int MOST_PIECES = 50_000;
    private static final int MOST_CHARACTERS = 1 << 20;

    private final Set<String> names = new HashSet<>();
    private int elements;
    private int namespaces;
    private int pieces;
    private int characters;

    /** An element begins. */
    void begin(XMLStreamReader reader) throws Unreadable {
        demand(++elements <= MOST_ELEMENTS);
        name(whole(reader.getPrefix(), reader.getLocalName()));
        for (int i = 0; i < reader.getAttributeCount(); i++) {
            name(whole(reader.getAttributePrefix(i), reader.getAttributeLocalName(i)));
        }
        namespaces += reader.getNamespaceCount();
        demand(namespaces <= MOST_NAMES);
    }

    private static String whole(String prefix, String name) {
        return prefix == null || prefix.isEmpty() ? name : prefix + ":" + name;
    }

    void name(String name) throws Unreadable {
        demand(name.length() <= LONGEST_NAME);
        names.add(name);
        demand(names.size() <= MOST_NAMES);
    }

    /** From here on an element is gathered. */
    void gather() {
        pieces = 0;
        characters = 0;
    }

    /** It has this as well. */
    void hold(int morePieces, int moreCharacters) throws Unreadable {
        pieces += morePieces;
        characters += moreCharacters;
        demand(pieces <= MOST_PIECES && characters <= MOST_CHARACTERS);
    }

    private static void demand(boolean fits) throws Unreadable {
        if (!fits) {
            throw new Unreadable(Message.of("intake.refused.size"));
        }
    }
}
