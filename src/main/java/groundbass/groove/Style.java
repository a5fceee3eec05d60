package groundbass.groove;

import java.util.List;

/**
 * How a groove is played beside its drums.
 *
 * @param chords the rhythm of the chords, as long as the rows of the drums; empty where each is held
 * @param back milliseconds by which the backbeat lies back
 * @param followsLine whether the kick takes its cue from the line
 */
record Style(List<ChordStroke> chords, int back, boolean followsLine) {
    static final int USUAL_BACK = 4;
    static final int FARTHEST_BACK = 30;
    static final Style PLAIN = new Style(List.of(), USUAL_BACK, false);

    Style {
        chords = List.copyOf(chords);
        if (back < 0 || back > FARTHEST_BACK) {
            throw new IllegalArgumentException("a backbeat lies back by 0 to 30 ms, not " + back);
        }
    }
}
