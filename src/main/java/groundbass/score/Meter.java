package groundbass.score;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Collectors;

/**
 * How a bar is counted: so many counts of one unit, gathered into beats. 4/4 has beats of one quarter each, 12/8 of
 * three eighths, 7/8 of two, two and three; a beat is what a count line fills and what beams join.
 *
 * @param unit the lower figure: 1, 2, 4, 8 or 16
 * @param beats how many counts each beat has; they add up to the upper figure
 */
public record Meter(int unit, List<Integer> beats) {
    public static final int MOST_COUNTS = 32;
    public static final Meter COMMON = of(4, 4);

    public Meter {
        beats = List.copyOf(beats);
        if (!isUnit(unit)) {
            throw new IllegalArgumentException("lower figure must be 1, 2, 4, 8 or 16: " + unit);
        }
        if (beats.isEmpty() || beats.stream().anyMatch(beat -> beat < 1) || total(beats) > MOST_COUNTS) {
            throw new IllegalArgumentException("beats must be positive, at most " + MOST_COUNTS + " counts: " + beats);
        }
    }

    /** The meter with its usual grouping: threes in compound metres, twos and a last three in odd ones. */
    public static Meter of(int counts, int unit) {
        return new Meter(unit, usualBeats(counts, unit));
    }

    public static boolean isUnit(int figure) {
        return figure >= 1 && figure <= 16 && Integer.bitCount(figure) == 1;
    }

    /** The upper figure. */
    public int counts() {
        return total(beats);
    }

    /** One count as a time. */
    public Fraction count() {
        return Fraction.of(1, unit);
    }

    /** A whole bar as a time. */
    public Fraction length() {
        return Fraction.of(counts(), unit);
    }

    /** Where each beat begins, from zero. */
    public List<Fraction> beatStarts() {
        var starts = new ArrayList<Fraction>();
        int counted = 0;
        for (int beat : beats) {
            starts.add(Fraction.of(counted, unit));
            counted += beat;
        }
        return starts;
    }

    /** The end of the beat that {@code at} lies in. */
    public Fraction beatEnd(Fraction at) {
        return beatStarts().stream()
                .filter(start -> start.isAfter(at))
                .findFirst()
                .orElse(length());
    }

    /** The start of the beat that {@code at} lies in. */
    public Fraction beatStart(Fraction at) {
        return beatStarts().stream()
                .filter(start -> !start.isAfter(at))
                .reduce(Fraction.ZERO, (earlier, later) -> later);
    }

    /** Beats of one length, each of three counts: 6/8, 12/8. */
    public boolean isCompound() {
        return beats.stream().allMatch(beat -> beat == 3);
    }

    /** Beats of different lengths: 7/8. */
    public boolean isGrouped() {
        return beats.stream().distinct().count() > 1;
    }

    /** What a tempo counts: the beat, or the lower figure where the beats differ. */
    public Fraction pulse() {
        return isGrouped() ? count() : count().times(beats.get(0));
    }

    public boolean hasUsualBeats() {
        return beats.equals(usualBeats(counts(), unit));
    }

    private static List<Integer> usualBeats(int counts, int unit) {
        if (counts % 3 == 0 && unit >= 8) {
            return Collections.nCopies(counts / 3, 3);
        }
        if (unit < 8 || counts < 4) {
            return Collections.nCopies(counts, 1);
        }
        if (counts == 5) {
            return List.of(3, 2);
        }
        var twos = new ArrayList<>(Collections.nCopies(counts / 2, 2));
        if (counts % 2 == 1) {
            twos.set(twos.size() - 1, 3);
        }
        return twos;
    }

    private static int total(List<Integer> beats) {
        return beats.stream().mapToInt(Integer::intValue).sum();
    }

    /** As line text has it: {@code 4/4}, {@code 7/8 (3+2+2)}; the groups only where they are not the usual ones. */
    @Override
    public String toString() {
        String figures = counts() + "/" + unit;
        return hasUsualBeats()
                ? figures
                : figures + beats.stream().map(String::valueOf).collect(Collectors.joining("+", " (", ")"));
    }
}
