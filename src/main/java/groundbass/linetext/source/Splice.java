package groundbass.linetext.source;

import java.util.Comparator;
import java.util.List;

/**
 * One stretch of a text put in the place of another.
 *
 * @param from, to in UTF-16 units from the start of the text, half-open; equal where something is only put in
 */
public record Splice(int from, int to, String text) {
    public Splice {
        if (from < 0 || to < from) {
            throw new IllegalArgumentException("no such stretch: " + from + " to " + to);
        }
    }

    /** The text with all of these done; none may reach into another. */
    public static String apply(String text, List<Splice> splices) {
        var out = new StringBuilder();
        int at = 0;
        for (var splice : inOrder(splices)) {
            out.append(text, at, splice.from).append(splice.text);
            at = splice.to;
        }
        return out.append(text, at, text.length()).toString();
    }

    public static List<Splice> inOrder(List<Splice> splices) {
        return splices.stream()
                .sorted(Comparator.comparingInt(Splice::from).thenComparingInt(Splice::to))
                .toList();
    }
}
