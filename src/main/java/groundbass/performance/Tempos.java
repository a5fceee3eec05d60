package groundbass.performance;

import groundbass.performance.TempoMap.Change;
import groundbass.score.Fraction;
import groundbass.score.Note;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Tempo;
import java.util.List;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Gathers the tempo map of a performance from its bars. */
final class Tempos {
    /** How many times its length a note under a fermata lasts (common practice, no source). */
    private static final int FERMATA = 2;

    private final Fraction share;
    private final TreeMap<Fraction, Fraction> changes = new TreeMap<>();

    private Tempos(int percent) {
        this.share = Fraction.of(percent, 100);
    }

    /** The count-in takes the tempo of the first bar. */
    static TempoMap of(List<TimedBar> bars, int percent) {
        var tempos = new Tempos(percent);
        var first = bars.get(0);
        tempos.add(Fraction.ZERO, first.inForce().tempo().quartersPerMinute());
        bars.forEach(tempos::add);
        return new TempoMap(tempos.changes.entrySet().stream()
                .map(change -> new Change(change.getKey(), change.getValue()))
                .toList());
    }

    private void add(TimedBar bar) {
        var tempo = bar.inForce().tempo();
        var slowingTo = bar.bar().changes().slowingTo();
        if (slowingTo.isPresent()) {
            addSlowing(bar, tempo, slowingTo.get());
        } else {
            add(bar.start(), tempo.quartersPerMinute());
        }
        bar.bar().notes().stream()
                .filter(note -> note.has(Mark.FERMATA))
                .collect(Collectors.toMap(Note::onset, Note::end, Fraction::max, TreeMap::new))
                .forEach((onset, end) ->
                        hold(bar.moment(onset), bar.moment(end.min(bar.bar().to()))));
    }

    /** Everything waits while a note under a fermata is held. */
    private void hold(Fraction from, Fraction to) {
        var after = changes.floorEntry(to).getValue();
        changes.put(from, changes.floorEntry(from).getValue());
        changes.subMap(from, to).replaceAll((at, tempo) -> tempo.dividedBy(FERMATA));
        changes.put(to, after);
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
        changes.put(at, quartersPerMinute.times(share));
    }
}
