package groundbass.engraving.sketch;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Shape;
import groundbass.score.Passage;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Things that stand side by side above or below a staff on one baseline, as near as what is there already allows. What
 * would touch its neighbour goes to a further row.
 */
public final class Row {
    private final List<Item> items = new ArrayList<>();
    private final double between;

    /** @param between the least distance between neighbours */
    public Row(double between) {
        this.between = between;
    }

    /**
     * Shapes around a baseline of height zero, at their place along the staff.
     *
     * @param box around them all
     */
    public record Item(Kind kind, Optional<Passage> owner, List<Shape> shapes, Box box) {
        public Item(Kind kind, Optional<Passage> owner, List<Shape> shapes) {
            this(
                    kind,
                    owner,
                    shapes,
                    shapes.stream().map(Shape::box).reduce(Box::union).orElseThrow());
        }
    }

    public void add(Kind kind, Optional<Passage> owner, List<Shape> shapes) {
        if (!shapes.isEmpty()) {
            items.add(new Item(kind, owner, shapes));
        }
    }

    public void add(Kind kind, Passage owner, Shape shape) {
        add(kind, Optional.of(owner), List.of(shape));
    }

    /**
     * @param gap between the row and what it clears
     * @return the baseline of the nearest row; 0 where there is nothing to place
     */
    public double placeAbove(Layer layer, double gap) {
        return place(layer, gap, true, Double.POSITIVE_INFINITY);
    }

    /** Rows as one, on one baseline; one that would touch those before it stands beyond them. */
    public static void placeTogetherAbove(Layer layer, double gap, List<Row> rows) {
        var left = rows;
        while (!left.isEmpty()) {
            var now =
                    new Row(left.stream().mapToDouble(row -> row.between).min().orElseThrow());
            var later = new ArrayList<Row>();
            for (var row : left) {
                if (now.touches(row)) {
                    later.add(row);
                } else {
                    now.items.addAll(row.items);
                }
            }
            now.placeAbove(layer, gap);
            left = later;
        }
    }

    private boolean touches(Row that) {
        double apart = Math.max(between, that.between);
        return items.stream().anyMatch(item -> that.items.stream().anyMatch(other -> touch(item, other, apart)));
    }

    private static boolean touch(Item one, Item other, double between) {
        return one.box().left() < other.box().right() + between
                && other.box().left() < one.box().right() + between;
    }

    /** As {@link #placeAbove(Layer, double)}, and no nearer to the staff than {@code limit}. */
    public double placeAbove(Layer layer, double gap, double limit) {
        return place(layer, gap, true, limit);
    }

    /** As near as each thing can stand, on no common baseline. */
    public void placeEachAbove(Layer layer, double gap) {
        for (var item : items) {
            double baseline = baselineAbove(layer, List.of(item), gap);
            item.shapes().forEach(shape -> layer.add(item.kind(), item.owner(), shape.moved(0, baseline)));
        }
    }

    /** As {@link #placeEachAbove}, on the other side. */
    public void placeEachBelow(Layer layer, double gap) {
        for (var item : items) {
            double baseline = baselineBelow(layer, List.of(item), gap);
            item.shapes().forEach(shape -> layer.add(item.kind(), item.owner(), shape.moved(0, baseline)));
        }
    }

    public void placeBelow(Layer layer, double gap) {
        place(layer, gap, false, Double.NEGATIVE_INFINITY);
    }

    private double place(Layer layer, double gap, boolean above, double limit) {
        double nearest = Double.NaN;
        var rest = items;
        while (!rest.isEmpty()) {
            var later = new ArrayList<Item>();
            var now = new ArrayList<Item>();
            for (var item : rest) {
                boolean free = now.stream().noneMatch(other -> touch(item, other, between));
                (free ? now : later).add(item);
            }
            double baseline = above
                    ? Math.min(limit, baselineAbove(layer, now, gap))
                    : Math.max(limit, baselineBelow(layer, now, gap));
            nearest = Double.isNaN(nearest) ? baseline : nearest;
            now.forEach(item ->
                    item.shapes().forEach(shape -> layer.add(item.kind(), item.owner(), shape.moved(0, baseline))));
            rest = later;
        }
        return Double.isNaN(nearest) ? 0 : nearest;
    }

    private double baselineAbove(Layer layer, List<Item> items, double gap) {
        double margin = Math.max(gap / 2, between);
        return items.stream()
                .map(Item::box)
                .mapToDouble(box -> layer.top(box.left() - margin, box.right() + margin) - gap - box.bottom())
                .min()
                .orElse(0);
    }

    private double baselineBelow(Layer layer, List<Item> items, double gap) {
        double margin = Math.max(gap / 2, between);
        return items.stream()
                .map(Item::box)
                .mapToDouble(box -> layer.bottom(box.left() - margin, box.right() + margin) + gap - box.top())
                .max()
                .orElse(0);
    }
}
