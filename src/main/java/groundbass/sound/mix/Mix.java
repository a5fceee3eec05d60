package groundbass.sound.mix;

import java.util.EnumSet;
import java.util.Set;

/**
 * Which stems are heard.
 *
 * @param countIn whether the bar before the first is clicked even where the click is not heard
 */
public record Mix(Set<Stem> stems, boolean countIn) {
    public static final Mix FULL = of(Stem.BASS, Stem.DRUMS, Stem.CHORDS);
    public static final Mix WITHOUT_BASS = of(Stem.DRUMS, Stem.CHORDS);
    public static final Mix WITHOUT_DRUMS = of(Stem.BASS, Stem.CHORDS);
    public static final Mix BASS_AND_CLICK = of(Stem.BASS, Stem.CLICK);
    public static final Mix SILENT = new Mix(Set.of(), false);

    public Mix {
        stems = Set.copyOf(stems);
    }

    /** These stems with a count-in. */
    public static Mix of(Stem first, Stem... others) {
        return new Mix(EnumSet.of(first, others), true);
    }

    public boolean has(Stem stem) {
        return stems.contains(stem);
    }

    Mix withoutCountIn() {
        return new Mix(stems, false);
    }
}
