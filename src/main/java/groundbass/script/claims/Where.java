package groundbass.script.claims;

import java.util.List;
import java.util.Optional;

/**
 * Where in the line something is said to be.
 *
 * @param bars numbers; empty for the whole line
 * @param carried whether the bars were said in an earlier sentence
 * @param beats empty for the whole bar
 * @param exactly whether the beat itself is meant, not what lies in it
 * @param part 1 (e) to 3 (a) of the beat
 * @param nth which note in the order's sense, or how many of the last
 * @param ofAll whether the order is that of all notes, not only of those described
 */
public record Where(
        List<Integer> bars,
        boolean carried,
        List<Integer> beats,
        int lastBeats,
        boolean exactly,
        Optional<Integer> part,
        Optional<Chunk.Which> order,
        int nth,
        boolean ofAll) {
    public static final Where UNSAID =
            new Where(List.of(), false, List.of(), 0, false, Optional.empty(), Optional.empty(), 1, false);

    public boolean hasBars() {
        return !bars.isEmpty();
    }

    public boolean hasTime() {
        return !beats.isEmpty() || lastBeats > 0;
    }

    /** Whether a single moment is meant. */
    public boolean isMoment() {
        return part.isPresent() || (exactly && beats.size() == 1);
    }

    public Where withBars(List<Integer> newBars, boolean fromBefore) {
        return new Where(newBars, fromBefore, beats, lastBeats, exactly, part, order, nth, ofAll);
    }

    public Where withBeats(List<Integer> newBeats, boolean newExactly) {
        return new Where(bars, carried, newBeats, 0, newExactly, part, order, nth, ofAll);
    }

    public Where withLastBeats(int many) {
        return new Where(bars, carried, List.of(), many, false, Optional.empty(), order, nth, ofAll);
    }

    public Where withPart(int newPart) {
        return new Where(bars, carried, beats, 0, exactly, Optional.of(newPart), order, nth, ofAll);
    }

    public Where with(Chunk.Which which, int newNth, boolean all) {
        return new Where(bars, carried, beats, lastBeats, exactly, part, Optional.of(which), newNth, all);
    }

    public Where withoutOrder() {
        return new Where(bars, carried, beats, lastBeats, exactly, part, Optional.empty(), 1, false);
    }

    public Where withoutTime() {
        return new Where(bars, carried, List.of(), 0, false, Optional.empty(), order, nth, ofAll);
    }
}
