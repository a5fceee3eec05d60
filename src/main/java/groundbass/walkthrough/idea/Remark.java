package groundbass.walkthrough.idea;

import groundbass.score.Position;
import java.util.List;

/**
 * What is said of notes that have just been played.
 *
 * @param at   the last of them
 * @param tones which they are, so that nothing is said of them twice
 */
record Remark(Position at, String text, List<Position> tones) {
    Remark {
        tones = List.copyOf(tones);
    }
}
