package groundbass.engraving;

import java.util.ArrayList;
import java.util.List;

/** Text set in lines that fit a width. */
final class Paragraph {
    private static final double LEADING = 1.25;

    private Paragraph() {}

    /** At least one line, broken at spaces; a word wider than the width stands alone. */
    static List<String> lines(String text, Face face, double size, double width) {
        var lines = new ArrayList<String>();
        var line = new StringBuilder();
        for (String word : text.split(" ")) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (!line.isEmpty() && TextFont.of(face).width(longer) * size > width) {
                lines.add(line.toString());
                line.setLength(0);
                line.append(word);
            } else {
                line.setLength(0);
                line.append(longer);
            }
        }
        lines.add(line.toString());
        return lines;
    }

    /** Lines under one another, the first one's top at {@code top}. */
    static List<Shape> set(List<String> lines, Face face, double size, double x, double top, Align align) {
        var shapes = new ArrayList<Shape>();
        double y = top + size * 0.75;
        for (String line : lines) {
            shapes.add(new Shape.Run(line, face, size, new Point(x, y), align));
            y += size * LEADING;
        }
        return shapes;
    }

    static double height(List<String> lines, double size) {
        return lines.size() * size * LEADING;
    }
}
