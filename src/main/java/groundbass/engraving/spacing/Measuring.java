package groundbass.engraving.spacing;

import groundbass.engraving.mark.Measures;
import groundbass.engraving.options.Staves;
import groundbass.score.Arrival;
import groundbass.score.ChordAt;
import groundbass.score.Direction;
import groundbass.score.Fraction;
import groundbass.writing.WrittenBar;
import java.util.List;

/**
 * How wide the gaps of a bar would like to be and must be. A gap grows with its duration by half for each doubling
 * (rule: spacing-by-length).
 */
public final class Measuring {
    private static final double SIXTEENTH = 2.6;
    /** rule: bars-per-system. */
    private static final double EIGHTH = 2.8;

    private static final Fraction SHORT = Fraction.of(1, 16);

    /** From so many bars with sixteenths on, they are what a line's spacing goes by. */
    private static final double OFTEN = 0.1;

    private static final double PER_DOUBLING = 1.5;
    /** rule: barline-to-note. */
    private static final double AFTER_BARLINE = 1.3;

    private static final double ACCIDENTAL_TO_BARLINE = 0.55;
    private static final double BEFORE_BARLINE = 0.7;
    private static final double BETWEEN_COLUMNS = 0.3;
    private static final double BETWEEN_LABELS = 0.35;
    private static final double BETWEEN_CHORDS = 0.8;
    private static final double SHORTEST_SLUR = 2.6;
    private static final double SHORTEST_SLIDE = 3.3;
    private static final double EMPTY_BAR = 8;
    private static final double LONG_REST = 12;

    private final WrittenBar bar;
    private final List<Column> columns;
    private final List<TechniqueMarks.At> letters;
    private final double scale;
    private final Rods rods = new Rods();

    private Measuring(WrittenBar bar, List<Column> columns, List<TechniqueMarks.At> letters, double scale) {
        this.bar = bar;
        this.scale = scale;
        this.columns = columns;
        this.letters = letters;
    }

    /** @param scale as {@link #scale} has it */
    public static MeasuredBar measure(
            WrittenBar bar, List<Column> columns, List<TechniqueMarks.At> letters, Staves staves, double scale) {
        return new Measuring(bar, columns, letters, scale).measured(staves);
    }

    /** By how much all gaps of a line are narrower: its shortest common note is the unit (rule: spacing-unit). */
    public static double scale(List<List<Column>> bars) {
        long quick = bars.stream().filter(Measuring::hasShort).count();
        return quick < OFTEN * bars.size() ? EIGHTH / (SIXTEENTH * PER_DOUBLING) : 1;
    }

    private static boolean hasShort(List<Column> columns) {
        for (int i = 1; i < columns.size(); i++) {
            if (!columns.get(i).onset().minus(columns.get(i - 1).onset()).isAfter(SHORT)) {
                return true;
            }
        }
        return false;
    }

    /** The same bar with nothing in it but a repeat sign and its chord names. */
    public static MeasuredBar simile(MeasuredBar full) {
        double least = Math.max(EMPTY_BAR * 0.6, chordsRoom(full.written()));
        double[] natural = {Math.max(EMPTY_BAR, least)};
        return new MeasuredBar(full.written(), List.of(), natural, new double[] {least}, 1, true);
    }

    /** A silent bar and those after it, which one sign stands for. */
    public static MeasuredBar longRest(MeasuredBar first, int bars) {
        return new MeasuredBar(
                first.written(), List.of(), new double[] {LONG_REST}, new double[] {LONG_REST * 0.6}, bars, false);
    }

    /** How wide a bar without columns must be for its chord names, which stand in proportion to their time. */
    private static double chordsRoom(WrittenBar bar) {
        var chords = bar.bar().chords();
        double room = 0;
        for (int i = 0; i < chords.size(); i++) {
            var to = i + 1 < chords.size() ? chords.get(i + 1).at() : bar.bar().to();
            double share =
                    to.minus(chords.get(i).at()).dividedBy(bar.bar().length()).toDouble();
            room = Math.max(room, (ChordName.width(chords.get(i).chord()) + BETWEEN_CHORDS) / share);
        }
        return room + BarSpan.LEAD;
    }

    /** The natural width of a duration: {@code 1.5 ^ log2} of its ratio to a sixteenth. */
    public static double natural(Fraction duration) {
        double doublings = StrictMath.log(duration.toDouble() * 16) / StrictMath.log(2);
        return SIXTEENTH * StrictMath.pow(PER_DOUBLING, doublings);
    }

    private MeasuredBar measured(Staves staves) {
        double[] natural = springs();
        rodsOfColumns();
        if (staves.hasTab()) {
            rodsOfLabels(staves == Staves.TAB_ONLY);
        }
        rodsOfLetters();
        rodsOfChords();
        rodsOfWords();
        rodsOfArrivals();
        return new MeasuredBar(bar, columns, natural, rods.least(natural), 1, false);
    }

    private double[] springs() {
        if (columns.isEmpty()) {
            rods.keep(0, 1, Math.max(EMPTY_BAR * 0.6, chordsRoom(bar)));
            return new double[] {EMPTY_BAR};
        }
        double[] natural = new double[columns.size() + 1];
        for (int i = 0; i < columns.size(); i++) {
            var end = i + 1 < columns.size()
                    ? columns.get(i + 1).onset()
                    : bar.bar().to();
            natural[i + 1] = scale * natural(end.minus(columns.get(i).onset()));
        }
        return natural;
    }

    private void rodsOfColumns() {
        if (columns.isEmpty()) {
            return;
        }
        rods.keep(
                0,
                1,
                Math.max(AFTER_BARLINE, ACCIDENTAL_TO_BARLINE + columns.get(0).left()));
        for (int i = 1; i < columns.size(); i++) {
            rods.keep(
                    i,
                    i + 1,
                    columns.get(i - 1).right()
                            + BETWEEN_COLUMNS
                            + columns.get(i).left());
        }
        rods.keep(
                columns.size(),
                columns.size() + 1,
                columns.get(columns.size() - 1).right() + BEFORE_BARLINE);
    }

    /** @param restsToo whether rests stand among the numbers */
    private void rodsOfLabels(boolean restsToo) {
        int before = -1;
        for (int i = 0; i < columns.size(); i++) {
            var cells = columns.get(i).cells();
            double reach = Labels.reach(cells);
            if (reach > 0 || restsToo) {
                double left = Math.max(reach, restsToo ? Column.MIDDLE : 0) + Labels.leftRoom(cells);
                if (before < 0) {
                    rods.keep(0, i + 1, left + BETWEEN_LABELS - Column.MIDDLE);
                } else {
                    rods.keep(before + 1, i + 1, reach(before, restsToo) + BETWEEN_LABELS + left);
                }
                before = i;
            }
        }
        if (before >= 0) {
            rods.keep(before + 1, columns.size() + 1, reach(before, restsToo) + Column.MIDDLE + BETWEEN_LABELS);
        }
    }

    private double reach(int column, boolean restsToo) {
        var cells = columns.get(column).cells();
        double label = Labels.reach(cells) + Labels.rightRoom(cells);
        return restsToo ? Math.max(label, columns.get(column).right() - Column.MIDDLE) : label;
    }

    private void rodsOfLetters() {
        int before = -1;
        double beforeWidth = 0;
        for (var letter : letters) {
            if (letter.letters().isEmpty()) {
                continue;
            }
            int column = columnAt(letter.owner().from().at());
            double half = letter.width() / 2;
            if (before < 0) {
                rods.keep(0, column + 1, half + BETWEEN_LABELS - Column.MIDDLE);
            } else {
                rods.keep(before + 1, column + 1, beforeWidth + BETWEEN_LABELS + half);
            }
            before = column;
            beforeWidth = half;
        }
        if (before >= 0) {
            rods.keep(before + 1, columns.size() + 1, beforeWidth + BETWEEN_LABELS + Column.MIDDLE);
        }
    }

    private void rodsOfChords() {
        var chords = columns.isEmpty() ? List.<ChordAt>of() : bar.bar().chords();
        for (int i = 0; i < chords.size(); i++) {
            int from = point(chords.get(i));
            int to = i + 1 < chords.size() ? point(chords.get(i + 1)) : columns.size() + 1;
            rods.keep(
                    from, Math.max(to, from + 1), ChordName.width(chords.get(i).chord()) + BETWEEN_CHORDS);
        }
    }

    /** Two texts in a bar leave one another room. */
    private void rodsOfWords() {
        var texts = bar.bar().directions().stream()
                .filter(Direction.Words.class::isInstance)
                .map(Direction.Words.class::cast)
                .toList();
        for (int i = 0; i + 1 < texts.size() && !columns.isEmpty(); i++) {
            int from = columnAt(texts.get(i).at()) + 1;
            int to = columnAt(texts.get(i + 1).at()) + 1;
            rods.keep(from, to, WordsRoom.least(texts.get(i).text()));
        }
    }

    private int point(ChordAt chord) {
        return Math.max(0, columnAt(chord.at()) + 1);
    }

    private void rodsOfArrivals() {
        for (int i = 1; i < columns.size(); i++) {
            int column = i;
            columns.get(i).cells().stream()
                    .flatMap(cell -> cell.heads().stream())
                    .filter(head -> Labels.isShown(head.head()))
                    .flatMap(head -> head.head().note().arrival().stream())
                    .filter(arrival -> !arrival.isGrace())
                    .forEach(arrival -> rods.keep(
                            column,
                            column + 1,
                            shortest(arrival, column) + columns.get(column).left()));
        }
    }

    private double shortest(Arrival arrival, int column) {
        return switch (arrival.kind()) {
            case HAMMER, PULL -> SHORTEST_SLUR;
            case SLIDE -> {
                double labels = Labels.reach(columns.get(column - 1).cells())
                        + Labels.reach(columns.get(column).cells());
                yield Math.max(SHORTEST_SLIDE, labels + Measures.SLIDE_ROOM);
            }
        };
    }

    private int columnAt(Fraction at) {
        int found = 0;
        for (int i = 0; i < columns.size() && !columns.get(i).onset().isAfter(at); i++) {
            found = i;
        }
        return found;
    }
}
