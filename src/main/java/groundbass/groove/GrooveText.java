package groundbass.groove;

import groundbass.score.Fraction;
import groundbass.score.Meter;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * A groove as a drummer reads it: a header, then one row for each piece and one column for each subdivision.
 *
 * <pre>
 * groove   Plain rock
 * meter    4/4
 * columns  8
 * kick     x- -- x- --
 * snare    -- x- -- x-
 * hat      xx xx xx xx
 * </pre>
 *
 * {@code x} is a stroke, {@code X} an accent, {@code g} a ghost stroke, {@code -} none. Spaces and bar lines
 * ({@code |}) only help the eye. A row may hold several bars: four make a unit that leads on in its last. Lines that begin
 * with {@code #} are comments. Three more fields say how it is played:
 *
 * <pre>
 * chords   x- -x .- --      the rhythm of the chords: x X g struck, - rings on, . the hand leaves the keys
 * back     8                milliseconds by which the backbeat lies back, 0 to 30
 * follow   kick             the kick takes its cue from the line
 * </pre>
 */
public final class GrooveText {
    private GrooveText() {}

    /** Reads any text at all; what is wrong comes back as problems. */
    public static GrooveReading read(String text) {
        return new GrooveReader(text).read();
    }

    /** The canonical text: what {@link #read} makes the same groove of. */
    public static String print(Groove groove) {
        int width = Math.max(
                "columns".length(),
                groove.rows().keySet().stream()
                        .mapToInt(piece -> piece.word().length())
                        .max()
                        .orElse(0));
        var rows = groove.rows().entrySet().stream()
                .map(row -> line(
                        width,
                        row.getKey().word(),
                        signs(groove, row.getValue().stream().map(Stroke::sign).toList())));
        return line(width, "groove", groove.name())
                + line(width, "meter", groove.meter().toString())
                + line(width, "columns", "" + groove.columns())
                + style(width, groove)
                + rows.collect(Collectors.joining());
    }

    /** What is usual is not said. */
    private static String style(int width, Groove groove) {
        var style = groove.style();
        String back = style.back() == Style.USUAL_BACK ? "" : line(width, "back", "" + style.back());
        String follow = style.followsLine() ? line(width, "follow", Piece.KICK.word()) : "";
        String chords = style.chords().isEmpty()
                ? ""
                : line(
                        width,
                        "chords",
                        signs(
                                groove,
                                style.chords().stream().map(ChordStroke::sign).toList()));
        return back + follow + chords;
    }

    private static String line(int width, String name, String value) {
        return (name + " ".repeat(width + 2 - name.length()) + value).stripTrailing() + "\n";
    }

    private static String signs(Groove groove, List<Character> row) {
        return IntStream.range(0, row.size())
                .mapToObj(i -> gap(groove, i) + row.get(i))
                .collect(Collectors.joining());
    }

    /** A bar line before a bar, a space before a beat. */
    private static String gap(Groove groove, int index) {
        int column = index % groove.columns();
        if (index == 0) {
            return "";
        }
        return column == 0 ? " | " : startsBeat(groove, column) ? " " : "";
    }

    private static boolean startsBeat(Groove groove, int column) {
        Meter meter = groove.meter();
        Fraction at = groove.column().times(column);
        return meter.beatStart(at).equals(at);
    }
}
