package groundbass.walkthrough.words;

import groundbass.score.Meter;
import groundbass.score.Tempo;
import java.util.TreeMap;

/**
 * What one sets a metronome to. Clicks come on the beats of the tempo, or on the counts where a bar is no whole number of
 * beats, so that they would fall otherwise in every second bar.
 *
 * @param perMinute clicks: a step of the scale that metronomes have, where they have one
 */
public record Metronome(int perMinute, boolean onCounts) {
    /** From so many clicks on, steps of so many (common practice, no source). */
    private static final TreeMap<Integer, Integer> SCALE = scale();

    private static TreeMap<Integer, Integer> scale() {
        var scale = new TreeMap<Integer, Integer>();
        scale.put(0, 1);
        scale.put(40, 2);
        scale.put(60, 3);
        scale.put(72, 4);
        scale.put(120, 6);
        scale.put(144, 8);
        scale.put(208, 1);
        return scale;
    }

    /** @param beats of the tempo in a minute, as they are to be played */
    public static Metronome of(int beats, Tempo tempo, Meter meter) {
        boolean onCounts = !meter.length().isOnGrid(tempo.beat());
        return new Metronome(nearest(onCounts ? clicks(beats, tempo, meter) : beats), onCounts);
    }

    /** How many counts there are in a minute of so many beats. */
    public static int clicks(int beats, Tempo tempo, Meter meter) {
        return Math.round((float) (beats * tempo.beat().dividedBy(meter.count()).toDouble()));
    }

    /** Of two that are as near the slower one. */
    private static int nearest(int clicks) {
        var range = SCALE.floorEntry(clicks);
        int step = range.getValue();
        return range.getKey() + (2 * (clicks - range.getKey()) + step - 1) / (2 * step) * step;
    }
}
