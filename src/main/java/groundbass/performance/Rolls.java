package groundbass.performance;

import groundbass.performance.TimedNotes.Onset;
import groundbass.score.Fraction;
import groundbass.score.Note;
import groundbass.score.Ornaments.Spread;
import groundbass.score.Technique;
import groundbass.score.Tuning;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * Chords whose strings speak one after the other: those that are rolled, by their pitch; and where nothing is said of
 * that, a rake drags a finger from the highest string to the lowest (rule: rake-order), and a hand that plucks three
 * strings or more opens from the lowest. The first is on the beat (rule: rolled-chord-time).
 */
final class Rolls {
    private static final int SAID_MILLISECONDS = 45;
    private static final int RAKE_MILLISECONDS = 22;
    private static final int ROLL_MILLISECONDS = 7;
    private static final int ROLLED_FROM = 3;

    /** Of the shortest note: no roll takes more of it. */
    private static final Fraction LONGEST = Fraction.of(1, 4);

    private static final Comparator<Onset> HIGHEST_FIRST =
            Comparator.comparingInt(onset -> onset.note().string());

    private final Comparator<Onset> lowestFirst;
    private final TempoMap tempos;

    private Rolls(Tuning tuning, TempoMap tempos) {
        this.lowestFirst = Comparator.<Onset>comparingInt(onset -> pitch(onset.note(), tuning))
                .thenComparing(HIGHEST_FIRST.reversed());
        this.tempos = tempos;
    }

    /** Of a dead note that of its open string. */
    private static int pitch(Note note, Tuning tuning) {
        return note.midi(tuning)
                .orElseGet(() -> tuning.string(note.string()).pitch().midi());
    }

    static List<Onset> played(List<Onset> onsets, Tuning tuning, TempoMap tempos) {
        var rolls = new Rolls(tuning, tempos);
        Map<Fraction, List<Onset>> together =
                onsets.stream().collect(Collectors.groupingBy(Onset::at, LinkedHashMap::new, Collectors.toList()));
        return together.values().stream()
                .flatMap(chord -> rolls.rolled(chord).stream())
                .toList();
    }

    private List<Onset> rolled(List<Onset> chord) {
        var said = chord.get(0).note().ornaments().spread();
        return said.isPresent() ? spread(chord, said.get()) : byTheHand(chord);
    }

    private List<Onset> spread(List<Onset> chord, Spread said) {
        var step = tempos.span(SAID_MILLISECONDS, chord.get(0).at());
        return switch (said) {
            case ROLL, ROLL_UP -> spread(chord, lowestFirst, step);
            case ROLL_DOWN -> spread(chord, lowestFirst.reversed(), step);
            case BRACKET -> chord;
        };
    }

    private List<Onset> byTheHand(List<Onset> chord) {
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
