package groundbass.groove;

import groundbass.groove.Click.Weight;
import groundbass.performance.Performance;
import groundbass.performance.TimedBar;
import groundbass.score.Fraction;
import groundbass.score.InForce;
import groundbass.score.Meter;
import java.util.ArrayList;
import java.util.List;

/**
 * The count-in and the metronome: one click for each pulse (rule: clicks-of-a-metre), in half-time for every second one;
 * the groups of an uneven meter stand out.
 */
final class Clicks {
    private final Performance performance;
    private final List<Click> clicks = new ArrayList<>();

    private Clicks(Performance performance) {
        this.performance = performance;
    }

    public static List<Click> of(Performance performance) {
        var clicks = new Clicks(performance);
        clicks.countIn();
        performance.bars().stream()
                .filter(bar -> !bar.start().isBefore(performance.start()))
                .forEach(clicks::bar);
        return List.copyOf(clicks.clicks);
    }

    private void countIn() {
        var meter = performance.countIn().meter();
        for (int bar = 0; bar < performance.countIn().bars(); bar++) {
            var start = meter.length().times(bar);
            every(meter.pulse(), Fraction.ZERO, meter.length())
                    .forEach(at -> add(start.plus(at), weight(meter, at), true));
        }
    }

    private void bar(TimedBar bar) {
        every(step(bar.inForce()), bar.bar().from(), bar.bar().to())
                .forEach(at -> add(bar.moment(at), weight(bar.inForce().meter(), at), false));
    }

    private static Fraction step(InForce inForce) {
        Meter meter = inForce.meter();
        var doubled = meter.pulse().times(2);
        boolean halves = inForce.feel().halfTime() && meter.length().isOnGrid(doubled);
        return halves ? doubled : meter.pulse();
    }

    private static List<Fraction> every(Fraction step, Fraction from, Fraction to) {
        var times = new ArrayList<Fraction>();
        for (var at = Fraction.ZERO; at.isBefore(to); at = at.plus(step)) {
            if (!at.isBefore(from)) {
                times.add(at);
            }
        }
        return times;
    }

    private static Weight weight(Meter meter, Fraction at) {
        if (at.isZero()) {
            return Weight.BAR;
        }
        return meter.beatStart(at).equals(at) ? Weight.BEAT : Weight.COUNT;
    }

    private void add(Fraction at, Weight weight, boolean countIn) {
        clicks.add(new Click(at, performance.seconds(at), weight, countIn));
    }
}
