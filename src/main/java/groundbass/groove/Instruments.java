package groundbass.groove;

import java.util.Objects;

/** What a band plays on, where it can be chosen. */
public record Instruments(BassTone bass, ChordTone chords) {
    public static final Instruments USUAL = new Instruments(BassTone.AMPLIFIER, ChordTone.KEYS);

    public Instruments {
        Objects.requireNonNull(bass);
        Objects.requireNonNull(chords);
    }
}
