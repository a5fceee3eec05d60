package groundbass.performance;

import java.util.ArrayList;
import java.util.List;

/**
 * How a note's pitch moves while it sounds: straight between points, and a vibrato on top.
 *
 * @param points in order of time; before the first and after the last the pitch stands still
 */
public record PitchCurve(List<Point> points, boolean vibrato) {
    public static final PitchCurve FLAT = new PitchCurve(List.of(), false);

    /** Vibrato: turns a second, width to each side in semitones (rule: vibrato-figures), and when it sets in. */
    private static final double VIBRATO_HERTZ = 5;

    private static final double VIBRATO_DEPTH = 0.2;
    private static final double VIBRATO_FROM = 0.15;

    /** @param seconds from the note's start */
    public record Point(double seconds, double semitones) {}

    public PitchCurve {
        points = List.copyOf(points);
        for (int i = 1; i < points.size(); i++) {
            if (points.get(i).seconds() < points.get(i - 1).seconds()) {
                throw new IllegalArgumentException("points run forward: " + points);
            }
        }
    }

    public boolean isFlat() {
        return equals(FLAT);
    }

    /** Semitones above the note's own pitch, so many seconds after its start. */
    public double at(double seconds) {
        return line(seconds) + (vibrato ? wave(seconds) : 0);
    }

    /** The farthest that the pitch strays to either side, in semitones. */
    public double reach() {
        double reach = points.stream()
                .mapToDouble(point -> Math.abs(point.semitones()))
                .max()
                .orElse(0);
        return reach + (vibrato ? VIBRATO_DEPTH : 0);
    }

    PitchCurve then(Point... more) {
        var all = new ArrayList<>(points);
        all.addAll(List.of(more));
        return new PitchCurve(all, vibrato);
    }

    /** Where the last point has brought the pitch. */
    double last() {
        return points.isEmpty() ? 0 : points.get(points.size() - 1).semitones();
    }

    /** When the last point is reached, in seconds from the note's start. */
    double settled() {
        return points.isEmpty() ? 0 : points.get(points.size() - 1).seconds();
    }

    private double line(double seconds) {
        Point before = null;
        for (var point : points) {
            if (point.seconds() > seconds) {
                return before == null ? point.semitones() : between(before, point, seconds);
            }
            before = point;
        }
        return last();
    }

    private static double between(Point from, Point to, double seconds) {
        double share = (seconds - from.seconds()) / (to.seconds() - from.seconds());
        return from.semitones() + share * (to.semitones() - from.semitones());
    }

    private static double wave(double seconds) {
        double since = seconds - VIBRATO_FROM;
        return since < 0 ? 0 : VIBRATO_DEPTH * StrictMath.sin(2 * Math.PI * VIBRATO_HERTZ * since);
    }
}
