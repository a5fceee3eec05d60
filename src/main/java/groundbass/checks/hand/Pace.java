package groundbass.checks.hand;

import groundbass.checks.finding.Evidence;
import groundbass.performance.Played;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * How fast a line goes, judged over four onsets in a row rather than over one gap (rule: speed-limits).
 */
public final class Pace {
    private static final int ONSETS = 4;

    private Pace() {}

    /** Four onsets in a row, and how fast that is for the way they are played. */
    public record Window(List<Played> notes, Speed speed, double perSecond) {
        /** Beside what is at ease for this way of playing; 1 is just that. */
        public double effort() {
            return perSecond / speed.easy();
        }
    }

    public static List<Window> of(Evidence evidence) {
        var onsets = onsets(evidence);
        return IntStream.rangeClosed(0, onsets.size() - ONSETS)
                .mapToObj(i -> window(onsets.subList(i, i + ONSETS)))
                .flatMap(Optional::stream)
                .toList();
    }

    /** One note for each onset. */
    private static List<Played> onsets(Evidence evidence) {
        var onsets = new ArrayList<Played>();
        for (var note : evidence.notes()) {
            boolean same = !onsets.isEmpty()
                    && onsets.get(onsets.size() - 1)
                            .timed()
                            .when()
                            .at()
                            .equals(note.timed().when().at());
            if (!same) {
                onsets.add(note);
            }
        }
        return onsets;
    }

    private static Optional<Window> window(List<Played> notes) {
        double seconds = notes.get(ONSETS - 1).start() - notes.get(0).start();
        return Speed.of(notes).map(speed -> new Window(notes, speed, (ONSETS - 1) / seconds));
    }
}
