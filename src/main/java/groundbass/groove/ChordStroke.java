package groundbass.groove;

import java.util.Arrays;
import java.util.Optional;

/** What the hand on the chords does in one column of a groove, with the sign that stands for it. */
enum ChordStroke {
    /** What sounds rings on. */
    HOLD('-', 0),
    SOFT('g', 46),
    NORMAL('x', 64),
    ACCENT('X', 78),
    /** The hand leaves the keys. */
    LIFT('.', 0);

    private final char sign;
    private final int velocity;

    ChordStroke(char sign, int velocity) {
        this.sign = sign;
        this.velocity = velocity;
    }

    char sign() {
        return sign;
    }

    /** Softer than the line (common practice, no source); 0 where nothing is struck. */
    int velocity() {
        return velocity;
    }

    boolean strikes() {
        return velocity > 0;
    }

    static Optional<ChordStroke> ofSign(int sign) {
        return Arrays.stream(values()).filter(stroke -> stroke.sign == sign).findFirst();
    }
}
