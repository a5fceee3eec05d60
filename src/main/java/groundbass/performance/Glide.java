package groundbass.performance;

import groundbass.performance.PitchCurve.Point;
import groundbass.score.Ornaments.Bend;
import groundbass.score.Ornaments.SlideIn;
import groundbass.score.Ornaments.SlideOff;
import java.util.ArrayList;

/** The movements of a pitch. Times and widths are common practice without a source; none takes over half its note. */
final class Glide {
    private static final double SLIDE_SECONDS = 0.08;
    private static final double BEND_SECONDS = 0.12;

    /** Notes to a whole one whose length a slide takes at the tempo (rule: slide-by-frets). */
    private static final int SIXTEENTHS = 16;

    private static final int THIRTY_SECONDS = 32;

    /** A finger is no longer than this between two frets. */
    private static final double BETWEEN_FRETS_SECONDS = 0.006;

    /** Of the note's length. */
    private static final double RELEASED_FROM = 0.625;

    private static final double BENT_UNTIL = 0.75;

    /** How many frets a slide to or from no stated fret covers. */
    private static final int IN_FRETS = 3;

    private static final int OFF_FRETS = 5;

    private Glide() {}

    static Point[] whole(When when, int semitones) {
        return byFrets(0, 0, when.seconds(), semitones);
    }

    static Point[] in(SlideIn from, int fret, When when) {
        int frets =
                switch (from) {
                    case BELOW -> -Math.min(IN_FRETS, fret);
                    case ABOVE -> IN_FRETS;
                };
        return byFrets(0, frets, atMostHalf(atTempo(THIRTY_SECONDS, when), when), 0);
    }

    /**
     * After the time of a slide in, and over before a slide off may begin. What is bent before its stroke is there from
     * the start; what is let back is so from five eighths of its length on.
     */
    static Point[] bend(Bend bend, When when) {
        double from = Math.max(atMostHalf(SLIDE_SECONDS, when), atMostHalf(atTempo(THIRTY_SECONDS, when), when));
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

    static Point[] to(int semitones, PitchCurve before, When when) {
        return ending(before, semitones, when);
    }

    static Point[] off(SlideOff way, int fret, PitchCurve before, When when) {
        int frets =
                switch (way) {
                    case DOWN -> -Math.min(OFF_FRETS, fret);
                    case UP -> OFF_FRETS;
                };
        return ending(before, frets, when);
    }

    /** Not before what the pitch did until then is over. */
    private static Point[] ending(PitchCurve before, double to, When when) {
        double from = when.seconds() - atMostHalf(atTempo(SIXTEENTHS, when), when);
        return byFrets(Math.max(from, before.settled()), before.last(), when.seconds(), to);
    }

    /** From fret to fret in equal steps, each rung out until the finger moves on: the last is reached at the end. */
    private static Point[] byFrets(double start, double from, double end, double to) {
        int frets = (int) Math.max(1, Math.ceil(Math.abs(to - from)));
        double step = (end - start) / frets;
        double moving = Math.min(BETWEEN_FRETS_SECONDS, step / 2);
        var points = new ArrayList<Point>();
        for (int fret = 1; fret <= frets; fret++) {
            double there = fret == frets ? end : start + fret * step;
            points.add(new Point(there - moving, from + (to - from) * (fret - 1) / frets));
            points.add(new Point(there, from + (to - from) * fret / frets));
        }
        return points.toArray(Point[]::new);
    }

    /** How long so small a note is where this one is played. */
    private static double atTempo(int toTheWhole, When when) {
        double length = when.until().minus(when.at()).toDouble();
        return when.seconds() / (length * toTheWhole);
    }

    private static double atMostHalf(double seconds, When when) {
        return Math.min(seconds, when.seconds() / 2);
    }
}
