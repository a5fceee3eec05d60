package groundbass.walkthrough;

import groundbass.score.Fraction;
import groundbass.score.Meter;
import java.util.List;
import java.util.stream.IntStream;

/** Which beats of a meter a stretch of time touches. */
final class BeatsTouched {
    private BeatsTouched() {}

    /** Their numbers, from 1. */
    static List<Integer> between(Meter meter, Fraction from, Fraction to) {
        var starts = meter.beatStarts();
        return IntStream.range(0, starts.size())
                .filter(i -> starts.get(i).isBefore(to))
                .filter(i -> i + 1 == starts.size() || starts.get(i + 1).isAfter(from))
                .mapToObj(i -> i + 1)
                .toList();
    }

    /** The first count of a beat. */
    static int firstCount(Meter meter, int beat) {
        return 1
                + meter.beats().stream()
                        .limit(beat - 1L)
                        .mapToInt(Integer::intValue)
                        .sum();
    }

    static int lastCount(Meter meter, int beat) {
        return firstCount(meter, beat) + meter.beats().get(beat - 1) - 1;
    }
}
