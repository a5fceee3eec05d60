package groundbass.sound.mix;

import java.util.EnumMap;
import java.util.Map;

/**
 * By what each stem of a mix is multiplied.
 *
 * @param gains one for each stem
 * @param countIn of the clicks before the first bar
 */
public record Balance(Map<Stem, Double> gains, double countIn) {
    /** Everything as it is. */
    public static final Balance EVEN = new Balance(all(1), 1);

    public Balance {
        gains = Map.copyOf(gains);
        if (gains.size() != Stem.values().length) {
            throw new IllegalArgumentException("a stem has no gain: " + gains);
        }
    }

    private static Map<Stem, Double> all(double gain) {
        var gains = new EnumMap<Stem, Double>(Stem.class);
        for (var stem : Stem.values()) {
            gains.put(stem, gain);
        }
        return gains;
    }

    public double of(Stem stem) {
        return gains.get(stem);
    }

    /** Everything so much louder. */
    public Balance times(double gain) {
        var louder = new EnumMap<Stem, Double>(Stem.class);
        gains.forEach((stem, own) -> louder.put(stem, own * gain));
        return new Balance(louder, countIn * gain);
    }

    /** With clicks before the first bar that are multiplied by so much. */
    public Balance counted(double gain) {
        return new Balance(gains, gain);
    }
}
