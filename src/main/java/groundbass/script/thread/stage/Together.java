package groundbass.script.thread.stage;

import groundbass.score.Fraction;
import groundbass.script.checking.Timeline.At;
import java.util.List;

/**
 * What happens in a stretch of a bar: notes that begin together, or silence.
 *
 * @param notes empty for silence
 */
public record Together(int bar, Fraction from, Fraction to, List<At> notes) {
    public boolean isRest() {
        return notes.isEmpty();
    }

    public boolean fits(Item item) {
        if (item.rest()) {
            return isRest()
                    && item.length()
                            .filter(said -> !said.equals(to.minus(from)))
                            .isEmpty();
        }
        return notes.stream().anyMatch(item::fits);
    }
}
