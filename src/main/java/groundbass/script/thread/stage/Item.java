package groundbass.script.thread.stage;

import groundbass.score.Fraction;
import groundbass.script.checking.Timeline.At;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What is said of one note, or of one rest.
 *
 * @param rest whether it is silence
 * @param length of the rest, where that was said
 */
public record Item(List<Part> parts, boolean rest, Optional<Fraction> length) {
    public static final Item NOTHING = new Item(List.of(), false, Optional.empty());

    public Item {
        parts = List.copyOf(parts);
    }

    public static Item rest(Optional<Fraction> length) {
        return new Item(List.of(), true, length);
    }

    public Item with(Part part) {
        var more = new ArrayList<>(parts);
        more.add(part);
        return new Item(more, rest, length);
    }

    public Item with(Item other) {
        var more = new ArrayList<>(parts);
        more.addAll(other.parts);
        return new Item(more, rest || other.rest, length.or(other::length));
    }

    public boolean has(Part.Kind kind) {
        return parts.stream().anyMatch(part -> part.kind() == kind);
    }

    public List<Part.Kind> kinds() {
        return parts.stream().map(Part::kind).toList();
    }

    /** Whether it says what sounds, not only how. */
    boolean isHead() {
        return rest || has(Part.Kind.NAME) || has(Part.Kind.DEAD);
    }

    boolean isEmpty() {
        return parts.isEmpty() && !rest;
    }

    public boolean fits(At at) {
        return !rest && parts.stream().allMatch(part -> part.fits(at));
    }
}
