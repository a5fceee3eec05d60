package groundbass.engraving.mark;

import java.util.ArrayList;
import java.util.List;

/** Text set in lines that fit a width. */
public final class Paragraph {
    private static final double LEADING = 1.25;

    private Paragraph() {}

    /** At least one line, broken at spaces, and inside a word that alone is wider. */
    public static List<String> lines(String text, Face face, double size, double width) {
        var lines = new ArrayList<String>();
        var line = new StringBuilder();
        for (String word : text.split(" ")) {
            var longer = line.isEmpty() ? word : line + " " + word;
            if (!line.isEmpty() && !fits(longer, face, size, width)) {
                lines.add(line.toString());
                longer = word;
            }
            while (!fits(longer, face, size, width) && longer.length() > 1) {
                int cut = fitting(longer, face, size, width);
                lines.add(longer.substring(0, cut));
                longer = longer.substring(cut);
            }
            line.setLength(0);
            line.append(longer);
        }
        lines.add(line.toString());
        return lines;
    }

    /** As few lines as {@link #lines}, and as much alike in length as these can be: no word is left by itself. */
    public static List<String> balanced(String text, Face face, double size, double width) {
        var greedy = lines(text, face, size, width);
        double narrowest = TextFont.of(face).width(text) * size / greedy.size();
        for (double narrower = narrowest; narrower < width; narrower += size / 4) {
            var lines = lines(text, face, size, narrower);
            if (lines.size() == greedy.size()) {
                return lines;
            }
        }
        return greedy;
    }

    private static boolean fits(String text, Face face, double size, double width) {
        return TextFont.of(face).width(text) * size <= width;
    }

    /** How much of a word fits, at least its first character. */
    private static int fitting(String word, Face face, double size, double width) {
        int cut = word.offsetByCodePoints(0, 1);
        while (cut < word.length()) {
            int next = word.offsetByCodePoints(cut, 1);
            if (!fits(word.substring(0, next), face, size, width)) {
                break;
            }
            cut = next;
        }
        return cut;
    }

    /**
     * Lines under one another, the first one's top at {@code top}. Lines set from the left end with the blank that they
     * were broken at, so that somebody who copies them gets words.
     */
    public static List<Shape> set(List<String> lines, Face face, double size, double x, double top, Align align) {
        var shapes = new ArrayList<Shape>();
        double y = top + size * 0.75;
        for (int i = 0; i < lines.size(); i++) {
            boolean goesOn = align == Align.START && i + 1 < lines.size();
            String line = goesOn ? lines.get(i) + " " : lines.get(i);
            shapes.add(new Shape.Run(line, face, size, new Point(x, y), align));
            y += size * LEADING;
        }
        return shapes;
    }

    public static double height(List<String> lines, double size) {
        return lines.size() * size * LEADING;
    }
}
