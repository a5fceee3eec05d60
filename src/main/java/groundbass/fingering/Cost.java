package groundbass.fingering;

import java.util.Arrays;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * What a way of playing costs, by kinds of effort. The unit is moving the hand by one fret at leisure. The weights start
 * from those of rule: fingering-cost.
 */
public record Cost(Map<Part, Double> parts) {
    /** A kind of effort. */
    public enum Part {
        /** The hand moves along the neck. */
        SHIFT("shift"),
        /** It has little time for that. */
        HURRY("hurry"),
        /** The fingers spread, or stand closer than they like. */
        STRETCH("stretch"),
        /** The next note lies on another string. */
        CROSSING("crossing"),
        /** A finger is needed elsewhere at once. */
        HOP("hop"),
        /** High on the neck. */
        HIGH("high"),
        /** A weaker finger. */
        FINGER("finger"),
        /** Open strings: low on the neck they cost less than nothing, higher up they stand out. */
        OPEN("open"),
        /** A stroke on a string that it does not suit. */
        STROKE("stroke"),
        /** What no hand does. */
        IMPOSSIBLE("impossible");

        private final String word;

        Part(String word) {
            this.word = word;
        }

        /** The key of its name in the message bundle. */
        public String messageKey() {
            return "fingering.part." + word;
        }
    }

    public Cost {
        var copy = new EnumMap<Part, Double>(Part.class);
        copy.putAll(parts);
        parts = Collections.unmodifiableMap(copy);
    }

    static Cost of(double[] parts) {
        var map = new EnumMap<Part, Double>(Part.class);
        Arrays.stream(Part.values())
                .filter(part -> parts[part.ordinal()] != 0)
                .forEach(part -> map.put(part, parts[part.ordinal()]));
        return new Cost(map);
    }

    static Cost sum(List<Cost> costs) {
        var sums = new double[Part.values().length];
        for (var cost : costs) {
            cost.parts().forEach((part, value) -> sums[part.ordinal()] += value);
        }
        return of(sums);
    }

    public double of(Part part) {
        return parts.getOrDefault(part, 0.0);
    }

    public double total() {
        return Stream.of(Part.values()).mapToDouble(this::of).sum();
    }

    public boolean isPossible() {
        return of(Part.IMPOSSIBLE) == 0;
    }
}
