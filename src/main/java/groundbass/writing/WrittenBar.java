package groundbass.writing;

import groundbass.score.Bar;
import groundbass.score.InForce;
import java.util.List;

/**
 * One bar as it is written down.
 *
 * @param voices one, or two where a note is held while others move: the upper first
 * @param simile whether the bar says exactly what the bar before it says, was written so, and may be printed as a
 *     repeat sign
 */
public record WrittenBar(InForce inForce, Bar bar, List<Voice> voices, boolean simile) {
    public WrittenBar {
        voices = List.copyOf(voices);
        if (voices.isEmpty() || voices.size() > 2) {
            throw new IllegalArgumentException("a bar has one or two voices: " + voices.size());
        }
    }
}
