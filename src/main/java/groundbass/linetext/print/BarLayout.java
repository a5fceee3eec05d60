package groundbass.linetext.print;

import groundbass.score.Bar;
import groundbass.score.Copy;
import groundbass.score.Direction;
import groundbass.score.Fraction;
import groundbass.score.Meter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Cuts the sounds of one bar into count lines and events. A sound is plain where the events themselves carry it; it is
 * detached, and needs {@code until}, where others move meanwhile.
 */
final class BarLayout {
    private final Bar bar;
    private final Meter meter;
    private final TreeMap<Fraction, Group> groups = new TreeMap<>();
    private final TreeSet<Fraction> borders = new TreeSet<>();
    private final TreeSet<Fraction> lineStarts = new TreeSet<>();

    /**
     * Sounds that begin together.
     *
     * @param plainEnd where the plain ones end; empty where all are detached
     */
    record Group(Fraction from, List<SoundInBar> pieces, Optional<Fraction> plainEnd) {
        boolean isPlain(SoundInBar piece) {
            return plainEnd.filter(piece.to()::equals).isPresent();
        }

        private boolean soundsPlainlyAfter(Fraction at) {
            return plainEnd.filter(end -> end.isAfter(at)).isPresent();
        }
    }

    /** One event. Its group is that which begins with it or, if it is held, the one whose plain sounds go on. */
    record Slot(Fraction from, Fraction to, Optional<Group> group) {
        boolean strikes() {
            return group.filter(found -> found.from().equals(from)).isPresent();
        }
    }

    /** One count line. */
    record Row(Copy.Span span, List<Slot> slots) {}

    BarLayout(Bar bar, Meter meter, List<SoundInBar> pieces) {
        this.bar = bar;
        this.meter = meter;
        Map<Fraction, List<SoundInBar>> byStart = new TreeMap<>();
        pieces.forEach(piece ->
                byStart.computeIfAbsent(piece.from(), at -> new ArrayList<>()).add(piece));
        var starts = new TreeSet<>(byStart.keySet());
        byStart.forEach((from, list) -> groups.put(from, group(from, list, starts)));
        findBorders();
        findLineStarts();
    }

    List<Row> rows() {
        var rows = new ArrayList<Row>();
        for (var start : lineStarts) {
            var end = Optional.ofNullable(lineStarts.higher(start)).orElse(bar.to());
            rows.add(new Row(new Copy.Span(start, end), slots(start, end)));
        }
        return rows;
    }

    private Group group(Fraction from, List<SoundInBar> pieces, TreeSet<Fraction> starts) {
        var next = Optional.ofNullable(starts.higher(from)).orElse(bar.to());
        var plainEnd = pieces.stream()
                .map(SoundInBar::to)
                .filter(to -> !to.isAfter(next))
                .max(Fraction::compareTo);
        return new Group(from, pieces, plainEnd);
    }

    private void findBorders() {
        borders.add(bar.from());
        borders.add(bar.to());
        bar.directions().stream().map(Direction::at).forEach(borders::add);
        groups.values().forEach(group -> {
            borders.add(group.from());
            group.plainEnd().ifPresent(borders::add);
        });
    }

    /** Every beat has its line, but where one event fills several beats or a tuplet runs across them. */
    private void findLineStarts() {
        meter.beatStarts().stream()
                .filter(start -> start.isAfter(bar.from()) && start.isBefore(bar.to()))
                .forEach(lineStarts::add);
        lineStarts.add(bar.from());
        var aligned = new TreeSet<>(lineStarts);
        aligned.add(bar.to());
        for (var from : borders.headSet(bar.to(), false)) {
            var to = borders.higher(from);
            if ((aligned.contains(from) && aligned.contains(to)) || isOdd(from) || isOdd(to)) {
                lineStarts.subSet(from, false, to, false).clear();
            }
        }
        borders.addAll(lineStarts);
    }

    /** Whether nobody has a syllable for this time, halved as often as one likes. */
    private boolean isOdd(Fraction at) {
        return Long.bitCount(at.dividedBy(meter.count()).denominator()) != 1;
    }

    private List<Slot> slots(Fraction start, Fraction end) {
        var slots = new ArrayList<Slot>();
        for (var from : borders.subSet(start, true, end, false)) {
            var group = Optional.ofNullable(groups.floorEntry(from))
                    .map(Map.Entry::getValue)
                    .filter(found -> found.from().equals(from) || found.soundsPlainlyAfter(from));
            slots.add(new Slot(from, borders.higher(from), group));
        }
        return slots;
    }
}
