package groundbass.lesson;

import groundbass.engraving.mark.Kind;
import groundbass.engraving.png.SheetPng;
import groundbass.score.Line;
import groundbass.text.Messages;
import java.util.Set;

/**
 * The picture of a lesson in lists: its first bars with nothing behind the ink, so that they stand on the page's own
 * ground. Twice as many pixels as it takes on a page, for sharp screens.
 */
public final class CardPicture {
    private static final int WIDTH = 720;
    private static final int HEIGHT = 240;
    private static final int BARS = 2;
    private static final double LARGEST_SPACE = 14;
    /** What stands over the staff and is told beside the picture, or on the lesson's page. */
    private static final Set<Kind> HIDDEN = Set.of(Kind.BAR_NUMBER, Kind.SECTION, Kind.TEMPO, Kind.FEEL, Kind.TEXT);

    private CardPicture() {}

    /** A PNG picture. */
    public static byte[] of(Line line, Messages messages, SheetPng.Ink ink) {
        var best = FirstBars.of(line, BARS, HIDDEN, messages, WIDTH, HEIGHT, LARGEST_SPACE);
        return SheetPng.of(best.page(), best.scale(), ink);
    }
}
