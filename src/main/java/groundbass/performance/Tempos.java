package groundbass.performance;

import groundbass.performance.TempoMap.Change;
import groundbass.score.Fraction;
import groundbass.score.Tempo;
import java.util.ArrayList;
import java.util.List;

/** Gathers the tempo map of a performance from its bars. */
final class Tempos {
    private final Fraction share;
    private final List<Change> changes = new ArrayList<>();

    private Tempos(int percent) {
        this.share = Fraction.of(percent, 100);
    }

    /** The count-in takes the tempo of the first bar. */
    static TempoMap of(List<TimedBar> bars, int percent) {
        var tempos = new Tempos(percent);
        var first = bars.get(0);
        tempos.add(Fraction.ZERO, first.inForce().tempo().quartersPerMinute());
        bars.forEach(tempos::add);
        return new TempoMap(tempos.changes);
    }

    private void add(TimedBar bar) {
        var tempo = bar.inForce().tempo();
        var slowingTo = bar.bar().changes().slowingTo();
        if (slowingTo.isPresent()) {
            addSlowing(bar, tempo, slowingTo.get());
        } else {
            add(bar.start(), tempo.quartersPerMinute());
        }
    }

    /** The tempo falls by the same step at each beat, and by one more at the next bar, where it has arrived. */
    private void addSlowing(TimedBar bar, Tempo tempo, int target) {
        var beats = bar.inForce().meter().beatStarts().stream()
                .filter(at ->
                        at.isBefore(bar.bar().to()) && !at.isBefore(bar.bar().from()))
                .toList();
        for (int i = 0; i < beats.size(); i++) {
            var fallen = Fraction.of((long) (target - tempo.perMinute()) * (i + 1), beats.size() + 1);
            add(bar.moment(beats.get(i)), tempo.beat().times(4).times(fallen.plus(Fraction.of(tempo.perMinute()))));
        }
    }

    private void add(Fraction at, Fraction quartersPerMinute) {
        changes.add(new Change(at, quartersPerMinute.times(share)));
    }
}
