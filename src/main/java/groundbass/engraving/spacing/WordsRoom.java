package groundbass.engraving.spacing;

import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.TextFont;
import java.util.stream.Stream;

/** How much room words over the staff take along a system (rule: words-over-staff). */
public final class WordsRoom {
    public static final double SIZE = 1.9;

    /** No block of words is narrower for want of room. */
    public static final double NARROWEST = 9;

    /** Between one text and the next. */
    public static final double BETWEEN = 0.8;

    private WordsRoom() {}

    /** What a bar leaves for a text before the next: its longest word, or a few of them. */
    static double least(String text) {
        double longest =
                Stream.of(text.split(" ")).mapToDouble(WordsRoom::width).max().orElse(0);
        return Math.min(width(text), Math.max(longest, NARROWEST)) + BETWEEN;
    }

    /** Of one line. */
    public static double width(String line) {
        return TextFont.of(Face.ITALIC).width(line) * SIZE;
    }
}
