package groundbass.musicxml;

import groundbass.musicxml.DirectionsByBar.Movable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A direction at the notation staff.
 *
 * @param types what is shown, one after the other
 * @param sound what it means to whoever plays the file
 */
record DirectionElement(String placement, List<Node> types, Optional<Node> sound) implements Movable {
    DirectionElement {
        types = List.copyOf(types);
    }

    static DirectionElement above(Node... types) {
        return new DirectionElement("above", List.of(types), Optional.empty());
    }

    static DirectionElement below(Node... types) {
        return new DirectionElement("below", List.of(types), Optional.empty());
    }

    DirectionElement sounding(Node newSound) {
        return new DirectionElement(placement, types, Optional.of(newSound));
    }

    @Override
    public Node at(List<Node> offset) {
        var children = new ArrayList<Node>();
        types.forEach(type -> children.add(Node.of("direction-type", type)));
        children.addAll(offset);
        children.add(Node.text("staff", Staff.NOTATION.number()));
        sound.ifPresent(children::add);
        return Node.of("direction", children).with("placement", placement);
    }
}
