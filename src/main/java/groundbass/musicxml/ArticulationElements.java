package groundbass.musicxml;

import groundbass.score.Ornaments.Mark;
import groundbass.score.Ornaments.SlideIn;
import groundbass.score.Ornaments.SlideOff;
import groundbass.writing.Head;
import java.util.ArrayList;
import java.util.List;

/** How a note is attacked and left: where it begins at its first head, what follows at its last. */
final class ArticulationElements {
    private ArticulationElements() {}

    static List<Node> of(Head head) {
        var signs = new ArrayList<Node>();
        if (!head.tiedFrom()) {
            signs.addAll(length(head));
            if (head.note().has(Mark.ACCENT)) {
                signs.add(Node.empty("accent"));
            }
            if (head.note().has(Mark.MARCATO)) {
                signs.add(Node.empty("strong-accent").with("type", "up"));
            }
            head.note().ornaments().slideIn().ifPresent(in -> signs.add(Node.empty(name(in))));
        }
        if (!head.tiedTo()) {
            head.note().ornaments().slideOff().ifPresent(off -> signs.add(Node.empty(name(off))));
        }
        return signs;
    }

    /** A line with a dot has an element of its own. */
    private static List<Node> length(Head head) {
        boolean dot = head.note().has(Mark.SHORT);
        boolean line = head.note().has(Mark.TENUTO);
        if (dot && line) {
            return List.of(Node.empty("detached-legato"));
        }
        return dot ? List.of(Node.empty("staccato")) : line ? List.of(Node.empty("tenuto")) : List.of();
    }

    private static String name(SlideIn in) {
        return switch (in) {
            case BELOW -> "scoop";
            case ABOVE -> "plop";
        };
    }

    private static String name(SlideOff off) {
        return switch (off) {
            case DOWN -> "falloff";
            case UP -> "doit";
        };
    }
}
