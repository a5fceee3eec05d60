package groundbass.walkthrough;

import groundbass.score.Line;
import groundbass.writing.WrittenBar;
import groundbass.writing.WrittenLine;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/**
 * Which bars lean on an earlier one where they are told. A bar leans only on one that was told whole, so that nobody is
 * led from bar to bar, and only where at least a third of its notes are played as there.
 */
final class Leanings {
    /** Nobody remembers further back how a bar was played (common practice, no source). */
    private static final int REMEMBERED = 16;

    private static final int FEWEST_NOTES = 4;

    private final List<Optional<Leaning>> leanings = new ArrayList<>();

    Leanings(Line line, WrittenLine written, EarlierBars earlier) {
        var whole = new ArrayDeque<WrittenBar>();
        for (int i = 0; i < written.bars().size(); i++) {
            var bar = written.bars().get(i);
            boolean byItself = earlier.of(i).isEmpty() && !bar.bar().isPickup();
            var leaning = byItself ? best(whole, bar, line) : Optional.<Leaning>empty();
            leanings.add(leaning);
            if (byItself && leaning.isEmpty()) {
                whole.addFirst(bar);
            }
            if (whole.size() > REMEMBERED) {
                whole.removeLast();
            }
        }
    }

    /** What the bar of an index leans on. */
    Optional<Leaning> of(int index) {
        return leanings.get(index);
    }

    /** On the bar of which most is played again; of several alike, the nearest, and there the shortest way of the hand. */
    private static Optional<Leaning> best(Deque<WrittenBar> whole, WrittenBar bar, Line line) {
        Optional<Leaning> best = Optional.empty();
        int most = Math.max(FEWEST_NOTES, (bar.bar().notes().size() + 2) / 3) - 1;
        for (var earlier : whole) {
            if (!earlier.inForce().meter().equals(bar.inForce().meter())) {
                continue;
            }
            var beside = new BarsBeside(earlier, bar, line.header().tuning());
            for (var move : beside.moves()) {
                var next = beside.alike(move);
                int notes = next.map(beside::notes).orElse(0);
                if (notes > most) {
                    most = notes;
                    best = next;
                }
            }
        }
        return best;
    }
}
