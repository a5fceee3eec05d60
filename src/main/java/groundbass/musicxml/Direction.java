package groundbass.musicxml;

import groundbass.musicxml.Moments.Movable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A direction at the notation staff.
 *
 * @param types what is shown, one after the other
 * @param sound what it means to whoever plays the file
 */
record Direction(String placement, List<Node> types, Optional<Node> sound) implements Movable {
    Direction {
        types = List.copyOf(types);
    }

    static Direction above(Node... types) {
        return new Direction("above", List.of(types), Optional.empty());
    }

    static Direction below(Node... types) {
        return new Direction("below", List.of(types), Optional.empty());
    }

    Direction sounding(Node newSound) {
        return new Direction(placement, types, Optional.of(newSound));
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
