package groundbass.sound.mix;

import groundbass.signal.LateSound;
import groundbass.signal.Sound;

/** The silence before the first click of a file. rule: pre-roll. */
public final class PreRoll {
    public static final double SECONDS = 0.4;

    private PreRoll() {}

    /** A sound after it. */
    public static Sound before(Sound sound) {
        return new LateSound(sound, sound.rate().at(SECONDS));
    }
}
