package groundbass.groove;

import groundbass.score.Fraction;
import groundbass.score.Meter;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/**
 * A drum pattern: for each piece one row of strokes, one column for each subdivision.
 *
 * @param name one line, may be empty
 * @param columns how many to a bar
 * @param rows in the order of the pieces, all of the same whole number of bars
 * @param style how it is played beside its drums
 * @param feel how much it is played as people play, in percent: {@link #MACHINE} or up to {@link #USUAL_FEEL}
 * @param instruments what is played on
 */
public record Groove(
        String name,
        Meter meter,
        int columns,
        Map<Piece, List<Stroke>> rows,
        Style style,
        int feel,
        Instruments instruments) {
    /** Every stroke at its moment and as hard as it is written, and nothing added. */
    public static final int MACHINE = 0;

    public static final int USUAL_FEEL = 100;
    public static final int MOST_COLUMNS = 96;
    public static final int MOST_BARS = 8;
    private static final int STEADY_BARS = 2;

    public Groove {
        Objects.requireNonNull(meter);
        Objects.requireNonNull(style);
        Objects.requireNonNull(instruments);
        if (!name.equals(name.strip()) || name.chars().anyMatch(Character::isISOControl)) {
            throw new IllegalArgumentException("a name is one line without outer spaces: " + name);
        }
        if (columns < 1 || columns > MOST_COLUMNS) {
            throw new IllegalArgumentException("columns out of range: " + columns);
        }
        if (feel < MACHINE || feel > USUAL_FEEL) {
            throw new IllegalArgumentException("feel is 0 to 100 percent, not " + feel);
        }
        rows = copy(rows);
        int length = lengthOf(rows);
        if (length % columns != 0 || length / columns > MOST_BARS || length == 0) {
            throw new IllegalArgumentException("rows of " + length + " strokes are not whole bars of " + columns);
        }
        if (rows.values().stream().anyMatch(row -> row.size() != length)) {
            throw new IllegalArgumentException("rows differ in length");
        }
        if (!style.chords().isEmpty() && style.chords().size() != length) {
            throw new IllegalArgumentException("the chords' row differs in length");
        }
    }

    /** Played as people play. */
    public Groove(String name, Meter meter, int columns, Map<Piece, List<Stroke>> rows) {
        this(name, meter, columns, rows, Style.PLAIN, USUAL_FEEL, Instruments.USUAL);
    }

    Groove with(Style other) {
        return new Groove(name, meter, columns, rows, other, feel, instruments);
    }

    public Groove withFeel(int percent) {
        return new Groove(name, meter, columns, rows, style, percent, instruments);
    }

    public Groove withInstruments(Instruments other) {
        return new Groove(name, meter, columns, rows, style, feel, other);
    }

    /** As a drill wants it: the same two bars again and again, whatever the line does. */
    public Groove steady() {
        int length = Math.min(bars(), STEADY_BARS) * columns;
        var cut = new EnumMap<Piece, List<Stroke>>(Piece.class);
        rows.forEach((piece, row) -> cut.put(piece, row.subList(0, length)));
        var chords = style.chords().isEmpty() ? style.chords() : style.chords().subList(0, length);
        return new Groove(name, meter, columns, cut, new Style(chords, style.back(), false), feel, instruments);
    }

    /** How many bars the pattern lasts. */
    public int bars() {
        return lengthOf(rows) / columns;
    }

    /** How long one column is. */
    public Fraction column() {
        return meter.length().dividedBy(columns);
    }

    /** What this piece plays in one column of one bar, both from zero. */
    public Stroke stroke(Piece piece, int bar, int column) {
        return rows.getOrDefault(piece, List.of()).isEmpty()
                ? Stroke.NONE
                : rows.get(piece).get(bar * columns + column);
    }

    /** What the hand on the chords does in one column of one bar, both from zero; each chord is held where nothing is said. */
    ChordStroke chords(int bar, int column) {
        return style.chords().isEmpty() ? ChordStroke.HOLD : style.chords().get(bar * columns + column);
    }

    private static Map<Piece, List<Stroke>> copy(Map<Piece, List<Stroke>> rows) {
        var copy = new EnumMap<Piece, List<Stroke>>(Piece.class);
        rows.forEach((piece, row) -> copy.put(piece, List.copyOf(row)));
        return Collections.unmodifiableMap(copy);
    }

    private static int lengthOf(Map<Piece, List<Stroke>> rows) {
        return rows.values().stream().findFirst().map(List::size).orElse(0);
    }
}
