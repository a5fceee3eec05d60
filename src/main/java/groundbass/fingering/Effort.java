package groundbass.fingering;

import groundbass.fingering.Cost.Part;
import groundbass.score.Technique;

/** What one grip costs by itself. rule: fingering-cost, hand-reach. */
final class Effort {
    /** For what no hand does; high enough that any way that can be played is cheaper. */
    static final double IMPOSSIBLE = 1000;

    private static final double PER_MILLIMETRE = 0.05;
    private static final double CLOSE = 0.3;
    private static final double OPEN = -0.5;

    /** Between stopped notes higher up an open string stands out and rings on. */
    private static final double OPEN_HIGH_UP = 0.7;

    private static final int LAST_LOW_POSITION = 4;
    private static final double ABOVE_TWELVE = 0.3;
    private static final double PER_POSITION = 0.02;
    private static final double POP_ON_LOW_STRING = 1.5;
    private static final double SLAP_ON_HIGH_STRING = 1;
    private static final double BARRE = 0.5;
    private static final double[] WEAK = {0, 0, 0, 0.05, 0.1};

    private final Fretboard neck;
    private final Hand hand;
    private final double[] fromNut;

    Effort(Fretboard neck, Hand hand) {
        this.neck = neck;
        this.hand = hand;
        this.fromNut = new double[neck.frets() + Hand.FINGERS + 2];
        for (int fret = 0; fret < fromNut.length; fret++) {
            fromNut[fret] = neck.fromNut(fret);
        }
    }

    double[] of(SoundingMoment moment, int position, int[] strings, int[] frets, int[] fingers) {
        var parts = new double[Part.values().length];
        for (int i = 0; i < strings.length; i++) {
            add(parts, moment.notes().get(i), position, strings[i], frets[i], fingers[i]);
            parts[Part.FINGER.ordinal()] += barre(fingers, i);
        }
        return parts;
    }

    private static double barre(int[] fingers, int note) {
        for (int i = 0; i < note; i++) {
            if (fingers[i] > 0 && fingers[i] == fingers[note]) {
                return BARRE;
            }
        }
        return 0;
    }

    private void add(double[] parts, NoteConstraint note, int position, int string, int fret, int finger) {
        if (finger > 0) {
            parts[Part.STRETCH.ordinal()] += stretch(position, fret, finger);
            parts[Part.FINGER.ordinal()] += WEAK[finger];
            parts[Part.HIGH.ordinal()] += PER_POSITION * position + (fret > 12 ? ABOVE_TWELVE : 0);
        } else if (fret == 0) {
            parts[Part.OPEN.ordinal()] += position <= LAST_LOW_POSITION ? OPEN : OPEN_HIGH_UP;
            parts[Part.IMPOSSIBLE.ordinal()] += note.pressed() ? IMPOSSIBLE : 0;
        }
        parts[Part.STROKE.ordinal()] += stroke(note, string);
    }

    private double stretch(int position, int fret, int finger) {
        double reach = fromNut[fret] - fromNut[position];
        double beyond = Math.max(0, reach - hand.comfortable(finger));
        return PER_MILLIMETRE * beyond + CLOSE * close(position, fret, finger);
    }

    /**
     * By how many frets a finger stands closer to the index than one finger a fret; the little finger may stand two away
     * where three would be a stretch, as on a double bass (rule: finger-a-fret).
     */
    private int close(int position, int fret, int finger) {
        boolean wide = fromNut[position + 3] - fromNut[position] > hand.comfortable();
        int usual = finger == Hand.FINGERS && wide ? finger - 2 : finger - 1;
        return Math.max(0, usual - (fret - position));
    }

    /** Slap belongs to the lower strings and pop to the upper ones. */
    private double stroke(NoteConstraint note, int string) {
        boolean high = string <= neck.tuning().size() / 2;
        if (note.stroke().isEmpty()) {
            return 0;
        }
        var technique = note.stroke().get();
        if (technique == Technique.POP) {
            return high ? 0 : POP_ON_LOW_STRING;
        }
        return technique == Technique.SLAP && high ? SLAP_ON_HIGH_STRING : 0;
    }
}
