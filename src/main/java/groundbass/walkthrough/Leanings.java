package groundbass.walkthrough;

import groundbass.score.Line;
import groundbass.walkthrough.Earlier.Same;
import groundbass.writing.WrittenBar;
import groundbass.writing.WrittenLine;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;

/**
 * Which bars lean on an earlier one where they are told, where at least four notes, and a third of all, are played as
 * there. What is moved on the neck is half the bar, or five notes and two of five, in one piece, and leans only on a bar that was told whole, so
 * that nobody has to move a shape twice; and no beat leans on one that leans itself.
 */
final class Leanings {
    /** Nobody remembers further back how a bar was played (common practice, no source). */
    private static final int REMEMBERED = 16;

    private static final int FEWEST_NOTES = 4;
    private static final int OF_FIVE = 2;

    private final Line line;
    private final List<Optional<Leaning>> leanings = new ArrayList<>();

    /** A bar that was told, and what it leans on itself. */
    private record Told(WrittenBar bar, Optional<Leaning> leaning) {
        boolean isWhole() {
            return leaning.isEmpty();
        }

        /** What leans on this bar without what leans on another from here. */
        Optional<Leaning> told(Leaning later) {
            var beats = later.beats().stream()
                    .filter(row -> leaning.filter(own -> own.touches(row)).isEmpty())
                    .toList();
            return beats.isEmpty() ? Optional.empty() : Optional.of(new Leaning(later.on(), beats));
        }
    }

    Leanings(Line line, WrittenLine written, EarlierBars earlier) {
        this.line = line;
        var told = new ArrayDeque<Told>();
        for (int i = 0; i < written.bars().size(); i++) {
            var bar = written.bars().get(i);
            boolean byItself = earlier.of(i).isEmpty() && !bar.bar().isPickup();
            var leaning = byItself ? best(told, bar) : Optional.<Leaning>empty();
            leanings.add(leaning);
            if (byItself) {
                told.addFirst(new Told(bar, leaning));
            }
            if (told.size() > REMEMBERED) {
                told.removeLast();
            }
        }
    }

    /** What the bar of an index leans on. */
    Optional<Leaning> of(int index) {
        return leanings.get(index);
    }

    /** On the bar of which most is played again; of several, one at the same place, then the nearest. */
    private Optional<Leaning> best(Deque<Told> told, WrittenBar bar) {
        Optional<Leaning> best = Optional.empty();
        int all = bar.bar().notes().size();
        int most = Math.max(FEWEST_NOTES, (all + 2) / 3) - 1;
        for (var earlier : told) {
            if (!earlier.bar().inForce().meter().equals(bar.inForce().meter())) {
                continue;
            }
            var beside = new BarsBeside(earlier.bar(), bar, line.header().tuning());
            for (var move : earlier.isWhole() ? beside.moves() : List.of(HandMove.NONE)) {
                var next = beside.alike(move).flatMap(earlier::told).filter(Leanings::isOneShape);
                int notes = next.map(beside::notes).orElse(0);
                if (!move.equals(HandMove.NONE) && !isWorthMoving(notes, all)) {
                    continue;
                }
                boolean asGood = notes == most && isSame(next) && best.isPresent() && !isSame(best);
                if (notes > most || asGood) {
                    most = notes;
                    best = next;
                }
            }
        }
        return best;
    }

    private static boolean isWorthMoving(int notes, int all) {
        return all <= 2 * notes || notes > FEWEST_NOTES && OF_FIVE * all <= 5 * notes;
    }

    /** Whether what is moved is moved in one piece. */
    private static boolean isOneShape(Leaning leaning) {
        return leaning.on() instanceof Same || leaning.beats().size() == 1;
    }

    private static boolean isSame(Optional<Leaning> leaning) {
        return leaning.filter(each -> each.on() instanceof Same).isPresent();
    }
}
