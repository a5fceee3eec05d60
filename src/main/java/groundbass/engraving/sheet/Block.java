package groundbass.engraving.sheet;

import groundbass.engraving.mark.Page;
import groundbass.engraving.options.Sign;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What stands together on a page: a heading, or one system.
 *
 * @param heading whether it must not be the last thing on a page
 * @param newPage whether the writer wants it at the head of a page
 * @param signs what a legend must explain of it
 */
record Block(List<Page.Part> parts, boolean heading, boolean newPage, Set<Sign> signs) {
    Block {
        parts = List.copyOf(parts);
        signs = Set.copyOf(signs);
    }

    /** @param number of the piece that it is over */
    static Optional<Block> heading(List<Page.Part> parts, int number) {
        var own = parts.stream().map(part -> part.of(number)).toList();
        return parts.isEmpty() ? Optional.empty() : Optional.of(new Block(own, true, false, Set.of()));
    }

    static Block system(Page.Part part, boolean newPage, Set<Sign> signs) {
        return new Block(List.of(part), false, newPage, signs);
    }

    int piece() {
        return parts.get(0).group().piece();
    }

    double top() {
        return parts.stream()
                .mapToDouble(part -> part.group().box().top())
                .min()
                .orElse(0);
    }

    double height() {
        double bottom = parts.stream()
                .mapToDouble(part -> part.group().box().bottom())
                .max()
                .orElse(0);
        return bottom - top();
    }

    /** The parts with the top at a height and everything else where it was. */
    List<Page.Part> at(double x, double y) {
        var moved = new ArrayList<Page.Part>();
        parts.forEach(part -> moved.add(part.moved(x, y - top())));
        return moved;
    }
}
