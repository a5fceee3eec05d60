package groundbass.fingering;

import groundbass.score.Place;
import java.util.Objects;

/**
 * A place and the finger that stops it.
 *
 * @param finger 1 (index) to 4 (little); 0 where no finger of the fretting hand is needed: open, dead, tapped
 */
public record Fingered(Place place, int finger) {
    public Fingered {
        Objects.requireNonNull(place);
        if (finger < 0 || finger > Hand.FINGERS) {
            throw new IllegalArgumentException("fretting fingers are 1 to 4: " + finger);
        }
    }
}
