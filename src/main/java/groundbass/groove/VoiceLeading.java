package groundbass.groove;

import groundbass.theory.ChordSymbol;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;

/**
 * Voices a progression so that all its voices together move as little as they can, by dynamic programming over the
 * positions of each chord; where several ways are as short, the one nearest to the middle of the keyboard. After silence
 * the hand is free.
 */
final class VoiceLeading {
    /** One semitone of movement weighs more than any distance from the middle. */
    private static final long SEMITONE = 1L << 20;

    private VoiceLeading() {}

    /** One way to a position: what it cost, and which position of the chord before it came from. */
    private record Step(long cost, int from) {}

    /** @return one voicing for each chord, empty where nothing sounds */
    static List<Voicing> of(List<ChordSymbol> chords) {
        var positions = chords.stream().map(Voicing::positions).toList();
        var steps = new ArrayList<Step[]>();
        for (int i = 0; i < positions.size(); i++) {
            steps.add(
                    i == 0 ? first(positions.get(0)) : next(positions.get(i - 1), steps.get(i - 1), positions.get(i)));
        }
        return way(positions, steps);
    }

    private static Step[] first(List<Voicing> positions) {
        return positions.stream()
                .map(position -> new Step(position.distance(), -1))
                .toArray(Step[]::new);
    }

    private static Step[] next(List<Voicing> before, Step[] reached, List<Voicing> positions) {
        return positions.stream()
                .map(position -> cheapest(before, reached, position))
                .toArray(Step[]::new);
    }

    private static Step cheapest(List<Voicing> before, Step[] reached, Voicing position) {
        var best = new Step(Long.MAX_VALUE, -1);
        for (int i = 0; i < before.size(); i++) {
            long cost = reached[i].cost() + SEMITONE * position.movement(before.get(i)) + position.distance();
            best = cost < best.cost() ? new Step(cost, i) : best;
        }
        return best;
    }

    private static List<Voicing> way(List<List<Voicing>> positions, List<Step[]> steps) {
        var way = new ArrayList<Voicing>();
        int at = -1;
        for (int i = steps.size() - 1; i >= 0; i--) {
            at = at < 0 ? cheapest(steps.get(i)) : at;
            way.add(positions.get(i).get(at));
            at = steps.get(i)[at].from();
        }
        Collections.reverse(way);
        return List.copyOf(way);
    }

    private static int cheapest(Step[] steps) {
        long least = Arrays.stream(steps).mapToLong(Step::cost).min().orElseThrow();
        int at = 0;
        while (steps[at].cost() != least) {
            at++;
        }
        return at;
    }
}
