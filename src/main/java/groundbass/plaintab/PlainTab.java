package groundbass.plaintab;

import groundbass.score.Credits;
import groundbass.score.Line;
import groundbass.text.Messages;
import java.util.ArrayList;
import java.util.List;

/**
 * A line as tablature in plain text, at most {@value #WIDTH} characters wide: over the strings the counts, chords and
 * words, under them the letters of the plucking hand, at the end what the letters mean. Distances are in proportion to
 * time as far as figures leave room; how long a note is held, the sheet tells. That strings are rows of dashes with
 * frets in them, h, p, slashes and x, is common practice, no source.
 */
public final class PlainTab {
    /** What a mail shows without wrapping, a quote mark or two before it (RFC 5322, 2.1.1, advises 78). */
    public static final int WIDTH = 76;

    private PlainTab() {}

    /** With the credits that the line itself has. */
    public static List<String> of(Line line, Messages messages) {
        return of(line, Credits.of(line.header()), messages);
    }

    /** Rows without line ends. */
    public static List<String> of(Line line, Credits credits, Messages messages) {
        var legend = new TabLegend(messages);
        var bars = TabBar.of(line, legend);
        var rows = new ArrayList<>(TabHead.of(line.header(), credits, messages));
        for (var system : TabSystem.of(bars, line.header().tuning())) {
            rows.add("");
            rows.addAll(system.rows());
        }
        rows.addAll(legend.rows());
        return rows.stream().map(String::stripTrailing).toList();
    }
}
