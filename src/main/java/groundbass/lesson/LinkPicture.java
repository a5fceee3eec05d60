package groundbass.lesson;

import groundbass.engraving.mark.Kind;
import groundbass.score.Line;
import groundbass.text.Messages;
import java.util.Set;

/** The picture beside a link to a lesson: its first bars on paper. */
public final class LinkPicture {
    private static final int WIDTH = 1200;
    private static final int HEIGHT = 630;
    /** Cards cut their pictures off a little differently (common practice, no source). */
    private static final int AROUND = 60;

    private static final double LARGEST_SPACE = 30;
    private static final int BARS = 4;

    private LinkPicture() {}

    /** A PNG picture. */
    public static byte[] of(Line line, Messages messages) {
        var best = FirstBars.of(
                line, BARS, Set.of(Kind.BAR_NUMBER), messages, WIDTH - 2 * AROUND, HEIGHT - 2 * AROUND, LARGEST_SPACE);
        return FirstBars.onPaper(best, WIDTH, HEIGHT);
    }
}
