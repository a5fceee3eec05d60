package groundbass.fingering;

import groundbass.fingering.Cost.Part;
import groundbass.score.Arrival;

/**
 * What it costs to get from one grip to the next. Weights after rule: fingering-cost, speeds after
 * rule: shift-time.
 */
final class Movement {
    private static final double SHIFT = 0.5;
    private static final double PER_FRET = 1;
    private static final double PER_STRING = 0.5;
    private static final double SAME_FINGER = 2;
    private static final double ROLLED = 0.5;
    private static final double OTHER_FINGER = 0.5;
    private static final double UNNATURAL = 20;

    /** A hand without a note to hold, or with a rest to use, moves at half the price. */
    private static final double AT_LEISURE = 0.5;

    private static final double REST = 0.1;

    /** Seconds for a shift: the floor, and what each fret adds. */
    private static final double FLOOR = 0.08;

    private static final double FLOOR_PER_FRET = 0.015;
    private static final double TOO_FAST = 8;
    private static final int LONG = 5;
    private static final double LONG_NEEDS = 0.15;
    private static final double LONG_AND_FAST = 3;
    private static final double QUICK = 0.12;
    private static final double SKIPPING_AT_SPEED = 1;

    private final SoundingMoment from;
    private final SoundingMoment to;
    private final double seconds;
    private final boolean rested;

    Movement(SoundingMoment from, SoundingMoment to) {
        this.from = from;
        this.to = to;
        this.seconds = to.start() - from.start();
        this.rested = to.start() - from.end() > REST;
    }

    /** Seconds that a shift over so many frets takes at least. */
    private static double needed(int frets) {
        return FLOOR + FLOOR_PER_FRET * frets;
    }

    double cost(Hold before, Hold after) {
        return shift(before, after)
                + hurry(before, after)
                + crossing(before, after)
                + hop(before, after)
                + impossible(before, after);
    }

    void addTo(double[] parts, Hold before, Hold after) {
        parts[Part.SHIFT.ordinal()] += shift(before, after);
        parts[Part.HURRY.ordinal()] += hurry(before, after);
        parts[Part.CROSSING.ordinal()] += crossing(before, after);
        parts[Part.HOP.ordinal()] += hop(before, after);
        parts[Part.IMPOSSIBLE.ordinal()] += impossible(before, after);
    }

    private double shift(Hold before, Hold after) {
        int frets = Math.abs(after.position - before.position);
        if (frets == 0) {
            return 0;
        }
        double cost = SHIFT + PER_FRET * frets;
        return before.free || rested || slides() ? AT_LEISURE * cost : cost;
    }

    private double hurry(Hold before, Hold after) {
        int frets = Math.abs(after.position - before.position);
        if (frets == 0) {
            return 0;
        }
        double needed = needed(frets);
        if (seconds < needed) {
            return TOO_FAST * (1 + (needed - seconds) / needed);
        }
        return frets > LONG && seconds < LONG_NEEDS ? LONG_AND_FAST : 0;
    }

    private double crossing(Hold before, Hold after) {
        int nearest = Integer.MAX_VALUE;
        for (int string : before.strings) {
            for (int next : after.strings) {
                nearest = Math.min(nearest, Math.abs(next - string));
            }
        }
        if (nearest == Integer.MAX_VALUE) {
            return 0;
        }
        return PER_STRING * nearest + (nearest >= 2 && seconds < QUICK ? SKIPPING_AT_SPEED : 0);
    }

    private double hop(Hold before, Hold after) {
        double cost = 0;
        for (int i = 0; i < after.fingers.length; i++) {
            for (int j = 0; j < before.fingers.length && after.fingers[i] > 0; j++) {
                cost += hop(before, j, after, i);
            }
        }
        return cost;
    }

    private double hop(Hold before, int j, Hold after, int i) {
        boolean samePlace = before.strings[j] == after.strings[i] && before.frets[j] == after.frets[i];
        boolean sameFinger = before.fingers[j] == after.fingers[i];
        if (samePlace) {
            return sameFinger || before.fingers[j] == 0 ? 0 : OTHER_FINGER;
        }
        if (!sameFinger || before.position != after.position) {
            return 0;
        }
        double cost = before.frets[j] == after.frets[i] ? ROLLED : SAME_FINGER;
        return seconds < QUICK ? cost + 1 : cost;
    }

    private boolean slides() {
        for (var note : to.notes()) {
            if (note.arrival().isPresent() && note.arrival().get() == Arrival.Kind.SLIDE) {
                return true;
            }
        }
        return false;
    }

    private double impossible(Hold before, Hold after) {
        double cost = 0;
        for (int i = 0; i < after.strings.length; i++) {
            var note = to.notes().get(i);
            if (note.held()) {
                cost += isStillHeld(before, after, i) ? 0 : Effort.IMPOSSIBLE;
            } else if (note.arrival().isPresent()) {
                cost += arriving(note, before, after, i);
            }
        }
        return cost;
    }

    private static boolean isStillHeld(Hold before, Hold after, int note) {
        int source = before.on(after.strings[note]);
        return source >= 0
                && before.frets[source] == after.frets[note]
                && before.fingers[source] == after.fingers[note]
                && (after.fingers[note] == 0 || before.position == after.position);
    }

    private static double arriving(NoteConstraint note, Hold before, Hold after, int i) {
        int source = before.on(after.strings[i]);
        if (source < 0 || before.frets[source] == Hold.DEAD || after.frets[i] == Hold.DEAD) {
            return note.isFixed() ? 0 : Effort.IMPOSSIBLE;
        }
        int rise = after.frets[i] - before.frets[source];
        int fingers = after.fingers[i] - before.fingers[source];
        boolean oneHand = before.position == after.position || before.free || after.free;
        return switch (note.arrival().get()) {
            case HAMMER -> rise <= 0 ? Effort.IMPOSSIBLE : fingers > 0 && oneHand ? 0 : UNNATURAL;
            case PULL -> rise >= 0 ? Effort.IMPOSSIBLE : fingers < 0 && oneHand ? 0 : UNNATURAL;
            case SLIDE ->
                isSlide(before.frets[source], after.frets[i]) ? fingers == 0 ? 0 : UNNATURAL : Effort.IMPOSSIBLE;
        };
    }

    private static boolean isSlide(int from, int to) {
        return from != to && from > 0 && to > 0;
    }
}
