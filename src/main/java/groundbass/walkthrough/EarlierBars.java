package groundbass.walkthrough;

import groundbass.score.Bar;
import groundbass.score.Fraction;
import groundbass.score.InForce;
import groundbass.score.Line;
import groundbass.score.Meter;
import groundbass.score.Note;
import groundbass.theory.Key;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Which bars have been told before, under another number or elsewhere on the neck. */
final class EarlierBars {
    private final List<Optional<Earlier>> earlier = new ArrayList<>();
    private final Map<Content, Integer> contents = new HashMap<>();
    private final Map<MovableShape, Integer> shapes = new HashMap<>();
    private final Line line;

    /**
     * What a bar sounds like and how it is named; equal contents are told alike.
     *
     * @param heldIn how far into the bar each string still sounds from before, of strings that do
     */
    private record Content(
            Meter meter, Key key, Fraction from, Fraction to, List<Note> notes, Map<Integer, Fraction> heldIn) {}

    EarlierBars(Line line) {
        this.line = line;
        Map<Integer, Fraction> heldIn = Map.of();
        var inForce = line.inForce();
        for (int i = 0; i < line.bars().size(); i++) {
            var bar = line.bars().get(i);
            earlier.add(bar.notes().isEmpty() ? Optional.empty() : find(inForce.get(i), bar, heldIn));
            heldIn = heldOut(bar, heldIn);
        }
    }

    /** How a bar was told before; empty for a bar without notes, which is told fast enough. */
    Optional<Earlier> of(int index) {
        return earlier.get(index);
    }

    private Optional<Earlier> find(InForce inForce, Bar bar, Map<Integer, Fraction> heldIn) {
        int number = inForce.number();
        var content = new Content(inForce.meter(), inForce.key(), bar.from(), bar.to(), bar.notes(), heldIn);
        var same = Optional.ofNullable(contents.putIfAbsent(content, number));
        if (same.isPresent()) {
            return same.map(Earlier.Same::new);
        }
        return heldIn.isEmpty() ? moved(inForce, bar) : Optional.empty();
    }

    private Optional<Earlier> moved(InForce inForce, Bar bar) {
        return MovableShape.of(inForce.meter(), bar)
                .flatMap(shape -> Optional.ofNullable(shapes.putIfAbsent(shape, inForce.number())))
                .flatMap(number -> MovableShape.between(
                        number, line.bar(number), bar, line.header().tuning()));
    }

    private static Map<Integer, Fraction> heldOut(Bar bar, Map<Integer, Fraction> heldIn) {
        var out = new HashMap<Integer, Fraction>();
        heldIn.forEach((string, until) -> putPositive(out, string, until.minus(bar.length())));
        bar.notes().forEach(note -> putPositive(out, note.string(), note.end().minus(bar.to())));
        return Map.copyOf(out);
    }

    private static void putPositive(Map<Integer, Fraction> out, int string, Fraction left) {
        if (left.isPositive()) {
            out.put(string, left);
        }
    }
}
