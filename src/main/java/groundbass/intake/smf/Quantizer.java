package groundbass.intake.smf;

import groundbass.score.Fraction;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.IntStream;

/**
 * The written rhythm that is nearest to what was played in one bar. Each beat is divided on its own: into as few parts as
 * meet every stroke to the tick, two beats together where only that does; and where nothing does, into those with the
 * least error, a finer division being worth its effort only where it halves the error (common practice, no source).
 */
final class Quantizer {
    private static final List<Integer> EXACT = List.of(1, 2, 3, 4, 6, 8, 5, 7, 12, 9, 10, 16, 24, 32);
    private static final List<Integer> PLAYED = List.of(1, 2, 3, 4, 6, 8);
    private static final List<Integer> PLAYED_IN_THREES = List.of(1, 3, 6, 2, 12);

    /** A tick and the rounding of two. */
    private static final double TO_THE_TICK = 1.01;

    /** What each further part of a beat must save, as a share of the beat. */
    private static final double EFFORT = 0.004;

    /** Strokes further apart than this are two, so no division may make one of them. */
    private static final double APART = 0.09;

    private final TickBar bar;
    private final List<Long> strokes;
    private final TreeMap<Fraction, Division> divisions = new TreeMap<>();

    /**
     * How a stretch of a bar is divided.
     *
     * @param from, to in whole notes from the beginning of the bar
     * @param error the largest, as a share of the stretch
     */
    record Division(Fraction from, Fraction to, int parts, double error, boolean exact) {
        Fraction part() {
            return to.minus(from).dividedBy(parts);
        }
    }

    private Quantizer(TickBar bar, List<Long> strokes) {
        this.bar = bar;
        this.strokes = strokes;
    }

    /** @param strokes in the bar, in ticks; one that comes a little before the bar may be among them */
    static Quantizer of(TickBar bar, TreeSet<Long> strokes) {
        var rhythm = new Quantizer(bar, List.copyOf(strokes));
        rhythm.divide();
        return rhythm;
    }

    List<Division> divisions() {
        return List.copyOf(divisions.values());
    }

    /** A tick as a time of the bar; it may be the end of the bar. */
    Fraction at(long tick) {
        var division = divisions.values().stream()
                .filter(each -> bar.tick(each.to()).toDouble() > tick)
                .findFirst()
                .orElse(divisions.lastEntry().getValue());
        return nearest(division, tick);
    }

    private Fraction nearest(Division division, long tick) {
        double parts = share(division.from(), division.to(), tick) * division.parts();
        long whole = Math.max(0, Math.min(division.parts(), Math.round(parts)));
        return division.from().plus(division.part().times(whole));
    }

    private double share(Fraction from, Fraction to, long tick) {
        double start = bar.tick(from).toDouble();
        return (tick - start) / (bar.tick(to).toDouble() - start);
    }

    private void divide() {
        var starts = new ArrayList<>(bar.meter().beatStarts().stream()
                .filter(start -> start.isBefore(bar.length()))
                .toList());
        starts.add(bar.length());
        for (int beat = 0; beat + 1 < starts.size(); beat++) {
            var from = starts.get(beat);
            var to = starts.get(beat + 1);
            var one = exact(from, to);
            var two = one.isEmpty() && beat + 2 < starts.size()
                    ? exact(from, starts.get(beat + 2))
                    : Optional.<Division>empty();
            var back = one.isEmpty() && two.isEmpty() ? withTheLast(to) : Optional.<Division>empty();
            back.ifPresent(each -> divisions.put(each.from(), each));
            if (back.isEmpty()) {
                divisions.put(from, one.or(() -> two).orElseGet(() -> played(from, to)));
            }
            beat += two.isPresent() ? 1 : 0;
        }
    }

    /** The beat before and this one, where they are met together. */
    private Optional<Division> withTheLast(Fraction to) {
        return Optional.ofNullable(divisions.lastEntry())
                .map(Map.Entry::getValue)
                .filter(Division::exact)
                .flatMap(last -> exact(last.from(), to));
    }

    private List<Long> within(Fraction from, Fraction to) {
        double start = bar.tick(from).toDouble();
        double end = bar.tick(to).toDouble();
        return strokes.stream()
                .filter(tick -> tick >= start - TO_THE_TICK && tick < end - TO_THE_TICK)
                .toList();
    }

    /** Empty where no division meets every stroke. */
    private Optional<Division> exact(Fraction from, Fraction to) {
        var inside = within(from, to);
        double ticks = bar.ticks(to.minus(from)).toDouble();
        return EXACT.stream()
                .filter(parts -> ticks / parts > 4 * TO_THE_TICK)
                .filter(parts -> inside.stream().allMatch(tick -> error(from, to, tick, parts) * ticks <= TO_THE_TICK))
                .findFirst()
                .map(parts -> new Division(from, to, parts, 0, true));
    }

    private double error(Fraction from, Fraction to, long tick, int parts) {
        double share = share(from, to, tick) * parts;
        return Math.abs(share - Math.round(share)) / parts;
    }

    private Division played(Fraction from, Fraction to) {
        var inside = within(from, to);
        int counts = (int) to.minus(from).dividedBy(bar.meter().count()).floor();
        var choices = counts % 3 == 0 && counts > 0 ? PLAYED_IN_THREES : PLAYED;
        int best = choices.get(0);
        double least = Double.MAX_VALUE;
        for (int parts : choices) {
            double cost = cost(from, to, inside, parts);
            if (cost < least) {
                least = cost;
                best = parts;
            }
        }
        int chosen = best;
        double error = inside.stream()
                .mapToDouble(tick -> error(from, to, tick, chosen))
                .max()
                .orElse(0);
        return new Division(from, to, chosen, error, false);
    }

    private double cost(Fraction from, Fraction to, List<Long> inside, int parts) {
        double error = inside.stream()
                .mapToDouble(tick -> error(from, to, tick, parts))
                .average()
                .orElse(0);
        long met = IntStream.range(1, inside.size())
                .filter(i -> share(from, to, inside.get(i)) - share(from, to, inside.get(i - 1)) > APART)
                .filter(i -> Math.round(share(from, to, inside.get(i)) * parts)
                        == Math.round(share(from, to, inside.get(i - 1)) * parts))
                .count();
        return error + EFFORT * parts + met;
    }
}
