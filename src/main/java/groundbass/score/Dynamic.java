package groundbass.score;

import java.util.Locale;

/** How loud, from here on. */
public enum Dynamic {
    PP,
    P,
    MP,
    MF,
    F,
    FF;

    /** The letters that stand under the staff and in line text. */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
