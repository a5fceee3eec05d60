package groundbass.engraving.sign.staff;

import groundbass.engraving.mark.Measures;
import java.util.List;

/**
 * How a beam lies: level or sloping with its outer notes, long enough stems for the nearest note, its ends on, under or
 * across staff lines (rule: beam-level, beam-slope, beam-on-staff-line).
 */
public final class BeamSlope {
    private static final double[] RISE_BY_INTERVAL = {0, 0.5, 0.75, 1.0, 1.25, 1.25, 1.5, 1.75};
    private static final double TIGHT_RISE = 1.0;
    private static final double TIGHT_SPACING = 2.6;
    private static final double QUARTER = 0.25;
    private static final double FARTHEST = 4;

    private final boolean up;
    private final int beams;
    private final List<Stem> stems;
    private final List<Limit> limits;

    /** A stem under the beam: where it stands, the note nearest the beam and the one farthest. */
    public record Stem(double x, int outer, int inner) {}

    /** What else stands under the beam, such as the sign before a note: where, and its edge towards the beam. */
    record Limit(double x, double y) {}

    /** @param beams the most levels at any stem */
    public BeamSlope(boolean up, int beams, List<Stem> stems, List<Limit> limits) {
        this.up = up;
        this.beams = beams;
        this.stems = stems;
        this.limits = limits;
    }

    /** The heights of the beam's far edge at its first and its last stem. */
    public double[] ends() {
        double width = last().x() - first().x();
        double rise = isLevel() ? 0 : rise(width);
        double start = outermost(rise);
        double snapped = snap(start);
        double end = rise == 0 ? snapped : snap(snapped - rise);
        if (Math.abs(end - snapped) > Math.abs(rise) + 0.3) {
            snapped = up ? Math.min(snapped, end) : Math.max(snapped, end);
            end = snapped;
        }
        return cleared(snapped, end);
    }

    /** Farther outward in steps of the lines' grid, until nothing is nearer than it may be. */
    private double[] cleared(double start, double end) {
        double step = up ? -2 * QUARTER : 2 * QUARTER;
        double moved = 0;
        while (lacks(start + moved, end + moved) && Math.abs(moved) < FARTHEST) {
            moved += step;
        }
        return new double[] {start + moved, end + moved};
    }

    private boolean lacks(double start, double end) {
        double width = last().x() - first().x();
        double clear = beams * (Measures.BEAM + Measures.BEAM_GAP);
        for (var limit : limits) {
            double edge = start + (end - start) * (limit.x() - first().x()) / width;
            if (up ? edge + clear > limit.y() + 0.01 : edge - clear < limit.y() - 0.01) {
                return true;
            }
        }
        return false;
    }

    /** From the head to the beam's far edge, at least: two and a half spaces of free stem, less under many beams. */
    static double shortest(int beams) {
        return switch (beams) {
            case 0, 1 -> 3.0;
            case 2 -> 3.5;
            case 3 -> 4.25;
            default -> 5.0;
        };
    }

    /** Level where the outer notes agree, an inner note is nearest the beam, or two pitches take turns. */
    public boolean isLevel() {
        if (first().outer() == last().outer()) {
            return true;
        }
        int sign = up ? 1 : -1;
        int nearerEnd = Math.max(sign * first().outer(), sign * last().outer());
        boolean innerNearer =
                stems.subList(1, stems.size() - 1).stream().anyMatch(stem -> sign * stem.outer() >= nearerEnd);
        return innerNearer || alternates();
    }

    private boolean alternates() {
        if (stems.size() < 4) {
            return false;
        }
        for (int i = 2; i < stems.size(); i++) {
            if (stems.get(i).outer() != stems.get(i - 2).outer()) {
                return false;
            }
        }
        return true;
    }

    /** How far the end lies above the start. */
    private double rise(double width) {
        int interval = last().outer() - first().outer();
        double rise = RISE_BY_INTERVAL[Math.min(Math.abs(interval), RISE_BY_INTERVAL.length - 1)];
        boolean tight = width / (stems.size() - 1) < TIGHT_SPACING;
        double capped = Math.min(rise, tight ? TIGHT_RISE : 2.0);
        return Math.signum(interval) * Math.min(capped, width / 4);
    }

    /** The start's height at which no stem is too short and every stem reaches the middle line. */
    private double outermost(double rise) {
        double width = last().x() - first().x();
        double start = up ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY;
        for (var stem : stems) {
            double share = (stem.x() - first().x()) / width;
            double head = Measures.y(stem.outer());
            double length = shortest(beams);
            double tip = up ? Math.min(head - length, 2) : Math.max(head + length, 2);
            double atStart = tip + rise * share;
            start = up ? Math.min(start, atStart) : Math.max(start, atStart);
        }
        double clear = beams * (Measures.BEAM + Measures.BEAM_GAP);
        for (var limit : limits) {
            double atStart = (up ? limit.y() - clear : limit.y() + clear) + rise * (limit.x() - first().x()) / width;
            start = up ? Math.min(start, atStart) : Math.max(start, atStart);
        }
        return start;
    }

    /** Outward to the next height at which the beam touches a line as it should; outside the staff anywhere. */
    private double snap(double edge) {
        double step = up ? -QUARTER : QUARTER;
        double y = (up ? Math.floor(edge / QUARTER + 1e-6) : Math.ceil(edge / QUARTER - 1e-6)) * QUARTER;
        for (int tries = 0; tries < 4 && isInStaff(y) && !touches(y); tries++) {
            y += step;
        }
        return y;
    }

    private static boolean isInStaff(double y) {
        return y > -0.5 && y < 4.5;
    }

    /** Whether the beam nearest the edge sits on, hangs from or straddles a line. */
    private boolean touches(double edge) {
        double centre = up ? edge + Measures.BEAM / 2 : edge - Measures.BEAM / 2;
        double part = centre - Math.floor(centre);
        return Math.abs(part - 0.5) > 0.1;
    }

    private Stem first() {
        return stems.get(0);
    }

    private Stem last() {
        return stems.get(stems.size() - 1);
    }
}
