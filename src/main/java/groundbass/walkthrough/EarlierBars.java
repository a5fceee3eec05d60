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

/** Which bars have been told before under another number. */
final class EarlierBars {
    private final List<Optional<Integer>> same = new ArrayList<>();

    /**
     * What a bar sounds like and how it is named; equal contents are told alike.
     *
     * @param heldIn how far into the bar each string still sounds from before, of strings that do
     */
    private record Content(
            Meter meter, Key key, Fraction from, Fraction to, List<Note> notes, Map<Integer, Fraction> heldIn) {}

    EarlierBars(Line line) {
        Map<Content, Integer> first = new HashMap<>();
        Map<Integer, Fraction> heldIn = Map.of();
        var inForce = line.inForce();
        for (int i = 0; i < line.bars().size(); i++) {
            var bar = line.bars().get(i);
            var content = content(inForce.get(i), bar, heldIn);
            int number = inForce.get(i).number();
            var before = Optional.ofNullable(first.putIfAbsent(content, number));
            same.add(bar.notes().isEmpty() ? Optional.empty() : before);
            heldIn = heldOut(bar, heldIn);
        }
    }

    /** The number of the earlier bar with the same notes; empty for a bar without notes, which is told fast enough. */
    Optional<Integer> sameAs(int index) {
        return same.get(index);
    }

    private static Content content(InForce inForce, Bar bar, Map<Integer, Fraction> heldIn) {
        return new Content(inForce.meter(), inForce.key(), bar.from(), bar.to(), bar.notes(), heldIn);
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
