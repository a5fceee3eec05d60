package groundbass.analysis;

import groundbass.score.Fraction;
import groundbass.score.Line;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Which pitches come before and after a note. */
final class NeighbourNotes {
    /** Past such a silence, a note leads nowhere. */
    private static final Fraction LONGEST_SILENCE = Fraction.of(1, 2);

    /** After so many repetitions nobody hears where a note leads. */
    private static final int FARTHEST = 32;

    private final List<Onset> onsets;

    /** Where playing goes on after a bar beside the next bar: back, for a repeat, and at the end, as lines go round. */
    private final Map<Integer, Integer> back;

    /** A pitch before or after, and when. */
    record Neighbour(int midi, Onset onset) {}

    NeighbourNotes(Line line, List<Onset> onsets) {
        this.onsets = onsets;
        this.back = back(line);
    }

    Optional<Neighbour> after(int index, int midi) {
        return of(index, 1, midi);
    }

    Optional<Neighbour> before(int index, int midi) {
        return of(index, -1, midi);
    }

    /** The first pitch after the last of a bar from which playing goes back. */
    Optional<Neighbour> afterGoingBack(int index, int midi) {
        int bar = onsets.get(index).position().bar();
        boolean last =
                index + 1 == onsets.size() || onsets.get(index + 1).position().bar() > bar;
        if (!last || !back.containsKey(bar)) {
            return Optional.empty();
        }
        return onsets.stream()
                .filter(onset -> onset.position().bar() >= back.get(bar))
                .findFirst()
                .map(onset -> new Neighbour(nearest(onset, midi), onset));
    }

    private static Map<Integer, Integer> back(Line line) {
        var back = new HashMap<Integer, Integer>();
        int first = line.firstNumber();
        var played = line.played();
        for (int i = 1; i < played.size(); i++) {
            int from = played.get(i - 1).bar();
            int to = played.get(i).bar();
            if (to <= from) {
                back.put(first + from, first + to);
            }
        }
        back.putIfAbsent(first + line.bars().size() - 1, first);
        return back;
    }

    /** The nearest pitch of the next onset, or of the one before, that differs; none past a long silence. */
    private Optional<Neighbour> of(int index, int way, int midi) {
        for (int i = index + way; i >= 0 && i < onsets.size() && Math.abs(i - index) <= FARTHEST; i += way) {
            var earlier = onsets.get(Math.min(i, i - way));
            var later = onsets.get(Math.max(i, i - way));
            if (later.at().minus(earlier.end()).isAfter(LONGEST_SILENCE)) {
                return Optional.empty();
            }
            int nearest = nearest(onsets.get(i), midi);
            if (nearest != midi) {
                return Optional.of(new Neighbour(nearest, onsets.get(i)));
            }
        }
        return Optional.empty();
    }

    private static int nearest(Onset onset, int midi) {
        int nearest = onset.notes().get(0).midi();
        for (var note : onset.notes()) {
            nearest = Math.abs(note.midi() - midi) < Math.abs(nearest - midi) ? note.midi() : nearest;
        }
        return nearest;
    }
}
