package groundbass.writing;

import groundbass.score.Bar;
import groundbass.score.Fraction;
import groundbass.score.InForce;
import java.util.List;

/**
 * One bar as it is written down.
 *
 * @param voices one, or two where a note is held while others move: the upper first
 * @param divided the beats in which two voices stand, in order; in all others the first voice has everything
 * @param simile whether the bar says exactly what the bar before it says, was written so, and may be printed as a
 *     repeat sign
 */
public record WrittenBar(InForce inForce, Bar bar, List<Voice> voices, List<Divided> divided, boolean simile) {
    /** From a moment of the bar to another. */
    public record Divided(Fraction from, Fraction to) {
        public boolean contains(Fraction at) {
            return !at.isBefore(from) && at.isBefore(to);
        }
    }

    public WrittenBar {
        voices = List.copyOf(voices);
        divided = List.copyOf(divided);
        if (voices.isEmpty() || voices.size() > 2 || voices.size() > 1 == divided.isEmpty()) {
            throw new IllegalArgumentException(
                    "a bar has one voice, or two in some of its beats: " + voices.size() + " in " + divided);
        }
    }

    /** How many voices stand where an element begins. */
    public int voicesAt(Element element) {
        return divided.stream().anyMatch(beats -> beats.contains(element.onset())) ? 2 : 1;
    }
}
