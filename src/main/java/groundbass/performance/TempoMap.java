package groundbass.performance;

import groundbass.score.Fraction;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;

/** How fast every moment is, and so when it comes in seconds. Moments are in whole notes. */
public final class TempoMap {
    private final List<Change> changes;
    private final TreeMap<Fraction, Segment> byMoment = new TreeMap<>();
    private final TreeMap<Double, Segment> bySecond = new TreeMap<>();

    /** From this moment on so many quarters a minute. */
    public record Change(Fraction at, Fraction quartersPerMinute) {
        public Change {
            if (!quartersPerMinute.isPositive()) {
                throw new IllegalArgumentException("a tempo is positive: " + quartersPerMinute);
            }
        }

        double secondsPerWhole() {
            return 240 / quartersPerMinute.toDouble();
        }
    }

    private record Segment(Change change, double start) {
        double seconds(Fraction moment) {
            return start + moment.minus(change.at()).toDouble() * change.secondsPerWhole();
        }
    }

    /** @param changes in order of time, the first at zero; those that change nothing are left out */
    TempoMap(List<Change> changes) {
        if (changes.isEmpty() || !changes.get(0).at().isZero()) {
            throw new IllegalArgumentException("a tempo holds from the start: " + changes);
        }
        this.changes = withoutRepetition(changes);
        double now = 0;
        Change before = this.changes.get(0);
        for (var change : this.changes) {
            now += change.at().minus(before.at()).toDouble() * before.secondsPerWhole();
            var segment = new Segment(change, now);
            byMoment.put(change.at(), segment);
            bySecond.put(now, segment);
            before = change;
        }
    }

    public List<Change> changes() {
        return changes;
    }

    /** Seconds from the start, at 60 / quarters a minute for each quarter. */
    public double seconds(Fraction moment) {
        return segment(moment).seconds(moment);
    }

    /** The moment that comes after so many seconds, in whole notes. */
    public double moment(double seconds) {
        var entry = bySecond.floorEntry(seconds);
        var segment = entry == null ? bySecond.firstEntry().getValue() : entry.getValue();
        return segment.change().at().toDouble()
                + (seconds - segment.start()) / segment.change().secondsPerWhole();
    }

    /** Quarters a minute at this moment. */
    public Fraction at(Fraction moment) {
        return segment(moment).change().quartersPerMinute();
    }

    /** How many whole notes so many milliseconds are at this moment. */
    Fraction span(int milliseconds, Fraction moment) {
        return at(moment).times(Fraction.of(milliseconds, 240_000));
    }

    private Segment segment(Fraction moment) {
        var entry = byMoment.floorEntry(moment);
        return entry == null ? byMoment.firstEntry().getValue() : entry.getValue();
    }

    private static List<Change> withoutRepetition(List<Change> changes) {
        var kept = new ArrayList<Change>();
        for (var change : changes) {
            boolean same = !kept.isEmpty()
                    && kept.get(kept.size() - 1).quartersPerMinute().equals(change.quartersPerMinute());
            if (!same) {
                kept.add(change);
            }
        }
        return List.copyOf(kept);
    }
}
