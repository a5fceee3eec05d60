package groundbass.groove;

import java.util.Arrays;
import java.util.Optional;

/** What one column of a row holds, with the sign that stands for it and its loudness as MIDI counts it. */
public enum Stroke {
    NONE('-', 0),
    GHOST('g', 38),
    NORMAL('x', 84),
    ACCENT('X', 112);

    private final char sign;
    private final int velocity;

    Stroke(char sign, int velocity) {
        this.sign = sign;
        this.velocity = velocity;
    }

    public char sign() {
        return sign;
    }

    /** Common practice, no source; 0 for no stroke. */
    public int velocity() {
        return velocity;
    }

    static Optional<Stroke> ofSign(int sign) {
        return Arrays.stream(values()).filter(stroke -> stroke.sign == sign).findFirst();
    }
}
