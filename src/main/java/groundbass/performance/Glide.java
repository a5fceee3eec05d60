package groundbass.performance;

import groundbass.performance.PitchCurve.Point;
import groundbass.score.Ornaments.Bend;
import groundbass.score.Ornaments.SlideIn;
import groundbass.score.Ornaments.SlideOff;
import java.util.ArrayList;

/** The movements of a pitch. Times and widths are common practice without a source; none takes over half its note. */
final class Glide {
    private static final double SLIDE_SECONDS = 0.08;
    private static final double OFF_SECONDS = 0.12;
    private static final double BEND_SECONDS = 0.12;

    /** Of the note's length. */
    private static final double RELEASED_FROM = 0.625;

    private static final double BENT_UNTIL = 0.75;

    /** How many frets a slide to or from no stated fret covers. */
    private static final int IN_FRETS = 3;

    private static final int OFF_FRETS = 5;

    private Glide() {}

    static Point[] whole(When when, int semitones) {
        return new Point[] {new Point(0, 0), new Point(when.seconds(), semitones)};
    }

    static Point[] in(SlideIn from, int fret, When when) {
        int frets =
                switch (from) {
                    case BELOW -> -Math.min(IN_FRETS, fret);
                    case ABOVE -> IN_FRETS;
                };
        return new Point[] {new Point(0, frets), new Point(atMostHalf(SLIDE_SECONDS, when), 0)};
    }

    /**
     * After the time of a slide in, and over before a slide off may begin. What is bent before its stroke is there from
     * the start; what is let back is so from five eighths of its length on.
     */
    static Point[] bend(Bend bend, When when) {
        double from = atMostHalf(SLIDE_SECONDS, when);
        double latest = when.seconds() * (bend.released() ? RELEASED_FROM : BENT_UNTIL);
        double to = Math.min(from + BEND_SECONDS, Math.max(from, latest));
        var points = new ArrayList<Point>();
        points.add(new Point(from, bend.before() ? bend.semitones() : 0));
        points.add(new Point(to, bend.semitones()));
        if (bend.released()) {
            double back = Math.max(to, latest);
            points.add(new Point(back, bend.semitones()));
            points.add(new Point(Math.min(back + BEND_SECONDS, Math.max(back, when.seconds() * BENT_UNTIL)), 0));
        }
        return points.toArray(Point[]::new);
    }

    static Point[] to(int semitones, double from, When when) {
        return ending(atMostQuarter(SLIDE_SECONDS, when), from, semitones, when);
    }

    static Point[] off(SlideOff way, int fret, double from, When when) {
        int frets =
                switch (way) {
                    case DOWN -> -Math.min(OFF_FRETS, fret);
                    case UP -> OFF_FRETS;
                };
        return ending(atMostQuarter(OFF_SECONDS, when), from, frets, when);
    }

    private static Point[] ending(double seconds, double from, double to, When when) {
        return new Point[] {new Point(when.seconds() - seconds, from), new Point(when.seconds(), to)};
    }

    private static double atMostHalf(double seconds, When when) {
        return Math.min(seconds, when.seconds() / 2);
    }

    private static double atMostQuarter(double seconds, When when) {
        return Math.min(seconds, when.seconds() / 4);
    }
}
