package groundbass.performance;

import groundbass.score.Fraction;
import groundbass.score.Swing;
import java.util.Collection;
import java.util.List;
import java.util.NavigableSet;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * Plays written pairs long and short (rule: swing-offbeat). A pair lies inside one beat, counted from the beat's start; what is left over in a
 * beat of an odd number stays where it is, and so do the parts of a tuplet that runs across the pair. Inside each half of
 * a pair time runs evenly. Every moment keeps its order.
 */
public final class SwungTime {
    private final TreeMap<Fraction, TimedBar> bars = new TreeMap<>();
    private final NavigableSet<Fraction> points;

    /** A pair of written notes of the swing's unit. */
    private record Pair(Fraction start, Swing swing) {
        Fraction middle() {
            return start.plus(swing.unit());
        }

        Fraction end() {
            return start.plus(swing.unit().times(2));
        }

        Fraction swung(Fraction moment) {
            var unit = swing.unit();
            var second = swing.secondOnset();
            var offset = moment.minus(start);
            return offset.isAfter(unit)
                    ? start.plus(second)
                            .plus(offset.minus(unit)
                                    .times(unit.times(2).minus(second))
                                    .dividedBy(unit))
                    : start.plus(offset.times(second).dividedBy(unit));
        }
    }

    /** @param points every moment at which the part begins or ends something, before swing: they tell tuplets from pairs */
    public SwungTime(List<TimedBar> bars, Collection<Fraction> points) {
        bars.forEach(bar -> this.bars.put(bar.start(), bar));
        this.points = new TreeSet<>(points);
    }

    /** As the notes of these bars are swung. */
    public static SwungTime ofNotes(List<TimedBar> bars) {
        return new SwungTime(
                bars,
                bars.stream()
                        .flatMap(bar -> bar.bar().notes().stream()
                                .flatMap(note -> Stream.of(bar.moment(note.onset()), bar.moment(note.end()))))
                        .toList());
    }

    /** When a written moment sounds. */
    public Fraction of(Fraction moment) {
        return pairAt(moment)
                .filter(pair -> !isTuplet(pair))
                .map(pair -> pair.swung(moment))
                .orElse(moment);
    }

    private Optional<Pair> pairAt(Fraction moment) {
        var entry = bars.floorEntry(moment);
        if (entry == null) {
            return Optional.empty();
        }
        var bar = entry.getValue();
        return bar.inForce().feel().swing().flatMap(swing -> pairIn(bar, swing, bar.offset(moment)));
    }

    private static Optional<Pair> pairIn(TimedBar bar, Swing swing, Fraction offset) {
        var meter = bar.inForce().meter();
        var length = swing.unit().times(2);
        if (meter.isCompound() && !meter.pulse().isOnGrid(length)) {
            return Optional.empty();
        }
        var beat = meter.beatStart(offset);
        var start = beat.plus(length.times(offset.minus(beat).dividedBy(length).floor()));
        var room = meter.beatEnd(offset).min(bar.bar().to());
        return start.plus(length).isAfter(room) ? Optional.empty() : Optional.of(new Pair(bar.moment(start), swing));
    }

    /** Parts that no halving reaches belong to a tuplet: across the pair, unless they fill just one of its halves. */
    private boolean isTuplet(Pair pair) {
        boolean first = hasTupletPart(pair, between(pair.start(), pair.middle()));
        boolean second = hasTupletPart(pair, between(pair.middle(), pair.end()));
        return (first && second) || ((first || second) && !points.contains(pair.middle()));
    }

    private Stream<Fraction> between(Fraction from, Fraction to) {
        return points.subSet(from, false, to, false).stream();
    }

    private static boolean hasTupletPart(Pair pair, Stream<Fraction> inside) {
        return inside.map(moment ->
                        moment.minus(pair.start()).dividedBy(pair.swing().unit()))
                .anyMatch(share -> Long.bitCount(share.denominator()) != 1);
    }
}
