package groundbass.writing;

import groundbass.score.Fraction;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * Parts of a bar that overlap one another, directly or through others. One chord of equal onset and length needs one
 * voice; anything else is divided into an upper and a lower one.
 */
record Cluster(List<BarShare> parts) {
    /** The parts of a cluster by voice. */
    record Division(List<BarShare> upper, List<BarShare> lower) {
        Division(List<BarShare> upper, List<BarShare> lower) {
            this.upper = List.copyOf(upper);
            this.lower = List.copyOf(lower);
        }
    }

    Cluster {
        parts = List.copyOf(parts);
    }

    /** The clusters of a bar in order. */
    static List<Cluster> of(List<BarShare> sounding) {
        var sorted = sounding.stream()
                .sorted(Comparator.comparing(BarShare::from).thenComparing(BarShare::to))
                .toList();
        var clusters = new ArrayList<Cluster>();
        int start = 0;
        var end = Fraction.ZERO;
        for (int i = 0; i < sorted.size(); i++) {
            var part = sorted.get(i);
            if (i > start && !part.from().isBefore(end)) {
                clusters.add(new Cluster(sorted.subList(start, i)));
                start = i;
            }
            end = end.max(part.to());
        }
        if (start < sorted.size()) {
            clusters.add(new Cluster(sorted.subList(start, sorted.size())));
        }
        return clusters;
    }

    boolean isOneChord() {
        return parts.stream().allMatch(parts.get(0)::spans);
    }

    Fraction from() {
        return parts.get(0).from();
    }

    Fraction to() {
        return parts.stream().map(BarShare::to).reduce(Fraction.ZERO, Fraction::max);
    }

    /** Two voices without an overlap where two are enough, else the cut between pitches that leaves the fewest. */
    Division divided() {
        var chords = chords();
        List<BarShare> first = new ArrayList<>();
        List<BarShare> second = new ArrayList<>();
        var firstFree = Fraction.ZERO;
        var secondFree = Fraction.ZERO;
        for (var chord : chords) {
            var part = chord.get(0);
            if (!firstFree.isAfter(part.from())) {
                first.addAll(chord);
                firstFree = part.to();
            } else if (!secondFree.isAfter(part.from())) {
                second.addAll(chord);
                secondFree = part.to();
            } else {
                return dividedByPitch();
            }
        }
        boolean firstIsUpper = meanPitch(first) > meanPitch(second);
        return firstIsUpper ? new Division(first, second) : new Division(second, first);
    }

    static double meanPitch(List<BarShare> parts) {
        return parts.stream().mapToInt(part -> part.pitch().midi()).average().orElse(0);
    }

    private Collection<List<BarShare>> chords() {
        record Stretch(Fraction from, Fraction to) {}
        Map<Stretch, List<BarShare>> chords = new LinkedHashMap<>();
        for (var part : parts) {
            chords.computeIfAbsent(new Stretch(part.from(), part.to()), stretch -> new ArrayList<>())
                    .add(part);
        }
        return chords.values();
    }

    private Division dividedByPitch() {
        return parts.stream()
                .map(part -> part.pitch().midi())
                .distinct()
                .sorted()
                .map(this::dividedAt)
                .min(Comparator.comparing(Cluster::overlaps))
                .orElseThrow();
    }

    private Division dividedAt(int lowestUpper) {
        var upper = parts.stream()
                .filter(part -> part.pitch().midi() >= lowestUpper)
                .toList();
        var lower =
                parts.stream().filter(part -> part.pitch().midi() < lowestUpper).toList();
        return new Division(upper, lower);
    }

    private static long overlaps(Division division) {
        return overlaps(division.upper()) + overlaps(division.lower());
    }

    private static long overlaps(List<BarShare> parts) {
        return IntStream.range(0, parts.size())
                .mapToLong(i -> parts.subList(0, i).stream()
                        .filter(before -> before.overlaps(parts.get(i)) && !before.spans(parts.get(i)))
                        .count())
                .sum();
    }
}
