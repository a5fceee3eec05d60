package groundbass.engraving.spacing;

import groundbass.theory.Pitch;
import groundbass.writing.Head;

/** Staff positions in bass clef: the bottom line, written G2, is 0, the top line 8 (rule: staff-positions). */
public final class Positions {
    /** The diatonic index of G2. */
    private static final int BOTTOM_LINE = 18;

    /** Steps of a scale. */
    public static final int OCTAVE = 7;

    private Positions() {}

    /** Bass parts are written an octave higher than they sound; what is bent before it is struck, where it is bent to. */
    static int of(Head head) {
        return sounding(head.bentBefore().map(Head.Bent::pitch).orElse(head.pitch()));
    }

    public static int sounding(Pitch pitch) {
        return pitch.diatonicIndex() + OCTAVE - BOTTOM_LINE;
    }

    public static int written(Pitch pitch) {
        return pitch.diatonicIndex() - BOTTOM_LINE;
    }

    public static int ledgersBelow(int position) {
        return position <= -2 ? -position / 2 : 0;
    }

    public static int ledgersAbove(int position) {
        return position >= 10 ? (position - 8) / 2 : 0;
    }
}
