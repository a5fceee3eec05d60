package groundbass.performance;

import groundbass.performance.TimedNotes.Onset;
import groundbass.score.Fraction;
import groundbass.score.Technique;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Chords whose strings speak one after the other: a rake drags a finger from the highest string to the lowest (rule:
 * rake-order), and a
 * hand that plucks three strings or more opens from the lowest. The first is on the beat. Times are common practice
 * without a source.
 */
final class Rolls {
    private static final int RAKE_MILLISECONDS = 22;
    private static final int ROLL_MILLISECONDS = 7;
    private static final int ROLLED_FROM = 3;

    /** Of the shortest note: no roll takes more of it. */
    private static final Fraction LONGEST = Fraction.of(1, 4);

    private static final Comparator<Onset> HIGHEST_FIRST =
            Comparator.comparingInt(onset -> onset.note().string());

    private Rolls() {}

    static List<Onset> played(List<Onset> onsets, TempoMap tempos) {
        Map<Fraction, List<Onset>> together =
                onsets.stream().collect(Collectors.groupingBy(Onset::at, LinkedHashMap::new, Collectors.toList()));
        return together.values().stream()
                .flatMap(chord -> rolled(chord, tempos).stream())
                .toList();
    }

    private static List<Onset> rolled(List<Onset> chord, TempoMap tempos) {
        if (chord.size() > 1 && isAll(chord, Technique.RAKE)) {
            return spread(
                    chord,
                    HIGHEST_FIRST,
                    tempos.span(RAKE_MILLISECONDS, chord.get(0).at()));
        }
        if (chord.size() >= ROLLED_FROM && isAll(chord, Technique.PLUCK)) {
            return spread(
                    chord,
                    HIGHEST_FIRST.reversed(),
                    tempos.span(ROLL_MILLISECONDS, chord.get(0).at()));
        }
        return chord;
    }

    private static boolean isAll(List<Onset> chord, Technique hand) {
        return chord.stream()
                .allMatch(onset -> onset.note().pluck().filter(hand::equals).isPresent());
    }

    private static List<Onset> spread(List<Onset> chord, Comparator<Onset> order, Fraction step) {
        var shortest = chord.stream().map(Onset::length).reduce(Fraction::min).orElseThrow();
        var most = shortest.times(LONGEST).dividedBy(chord.size() - 1);
        var inOrder = chord.stream().sorted(order).toList();
        var spread = new ArrayList<Onset>();
        for (int i = 0; i < inOrder.size(); i++) {
            spread.add(inOrder.get(i).later(step.min(most).times(i)));
        }
        return spread;
    }
}
