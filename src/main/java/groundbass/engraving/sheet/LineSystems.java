package groundbass.engraving.sheet;

import groundbass.engraving.options.SheetOptions;
import groundbass.engraving.sheet.Layout.Piece;
import groundbass.engraving.sign.SystemDrawing;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.spacing.BarSigns;
import groundbass.engraving.spacing.Column;
import groundbass.engraving.spacing.Columns;
import groundbass.engraving.spacing.HeadPlace;
import groundbass.engraving.spacing.LongRests;
import groundbass.engraving.spacing.MeasuredBar;
import groundbass.engraving.spacing.Measuring;
import groundbass.engraving.spacing.Ottavas;
import groundbass.engraving.spacing.SystemBreaks;
import groundbass.engraving.spacing.SystemPlan;
import groundbass.engraving.spacing.TechniqueMarks;
import groundbass.score.Changes.Fresh;
import groundbass.writing.WrittenBar;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** One line, measured once, as the systems that any width of paper breaks it into. */
final class LineSystems {
    /** What half a curve needs between a system's signs and its first note. */
    private static final double LEAD = 2.4;

    /** What a number in parentheses needs before the next. */
    private static final double NUMBER = 3.2;

    private final Piece piece;
    private final int number;
    private final BarSigns signs;
    private final List<List<TechniqueMarks.At>> techniques;
    private final List<MeasuredBar> full = new ArrayList<>();
    private final List<MeasuredBar> continued = new ArrayList<>();

    /** @param number of the piece in its document, from 0 */
    LineSystems(Piece piece, int number, SheetOptions options) {
        this.piece = piece;
        this.number = number;
        var stretches = LongRests.of(piece.line().bars(), options.restsTogether());
        var bars = stretches.stream().map(LongRests.Stretch::bar).toList();
        this.signs = new BarSigns(bars, options);
        var raised = options.staves().hasNotation() ? Ottavas.of(bars) : Ottavas.none(bars);
        var columns = IntStream.range(0, bars.size())
                .mapToObj(i -> Columns.of(bars.get(i), raised.get(i)))
                .toList();
        this.techniques = TechniqueMarks.of(columns, options.letters());
        double scale = Measuring.scale(columns);
        for (int i = 0; i < bars.size(); i++) {
            measure(bars.get(i), columns.get(i), stretches.get(i).bars(), options, scale);
        }
    }

    private void measure(WrittenBar bar, List<Column> columns, int bars, SheetOptions options, double scale) {
        var measured = Measuring.measure(bar, columns, techniques.get(full.size()), options.staves(), scale);
        var whole = bars > 1 ? Measuring.longRest(measured, bars) : measured;
        full.add(entersFromBefore(whole) ? whole.withLead(LEAD, NUMBER) : whole);
        continued.add(options.simile() && bar.simile() ? Measuring.simile(measured) : whole);
    }

    /** Whether a tie, a slur or a slide comes to its first notes from the bar before. */
    private static boolean entersFromBefore(MeasuredBar bar) {
        return bar.columns().stream()
                .limit(1)
                .flatMap(column -> column.cells().stream())
                .flatMap(cell -> cell.heads().stream())
                .map(HeadPlace::head)
                .anyMatch(head -> head.tiedFrom()
                        || head.note()
                                .arrival()
                                .filter(arrival -> !arrival.isGrace())
                                .isPresent());
    }

    /** The width below which some bar would not fit a system of its own. */
    double leastWidth() {
        return SystemBreaks.leastWidth(full, signs);
    }

    /** The heading and the systems, in their order. */
    List<Block> blocks(SheetOptions options) {
        var tuning = piece.line().line().header().tuning();
        var blocks = new ArrayList<Block>();
        Block.heading(PageHeader.parts(options, piece.header(), tuning, number == 0), number)
                .ifPresent(blocks::add);
        for (var plan : plans(options.paper().room())) {
            var sketch = new Sketch(plan, options.with(piece.aids()), signs, techniques, tuning);
            var part = SystemDrawing.draw(sketch);
            var place = signs.bar(plan.firstIndex()).bar().changes().place();
            boolean newPage = plan.firstIndex() > 0 && place.equals(java.util.Optional.of(Fresh.PAGE));
            blocks.add(Block.system(part.of(number), newPage, sketch.used()));
        }
        return blocks;
    }

    private List<SystemPlan> plans(double room) {
        var firsts = new SystemBreaks(full, continued, signs, room).firsts();
        var plans = new ArrayList<SystemPlan>();
        for (int i = 0; i < firsts.size(); i++) {
            int first = firsts.get(i);
            int end = i + 1 < firsts.size() ? firsts.get(i + 1) : full.size();
            var bars = new ArrayList<>(continued.subList(first, end));
            bars.set(0, full.get(first));
            double before = plans.isEmpty() ? 1 : plans.get(plans.size() - 1).factor();
            plans.add(SystemPlan.of(bars, first, signs, room, before));
        }
        return plans;
    }
}
