package groundbass.engraving.sheet;

import groundbass.engraving.options.SheetOptions;
import groundbass.engraving.options.Sign;
import groundbass.engraving.sheet.Layout.Piece;
import groundbass.engraving.sign.SystemDrawing;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.spacing.BarSigns;
import groundbass.engraving.spacing.Column;
import groundbass.engraving.spacing.Columns;
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
import java.util.Set;
import java.util.stream.IntStream;

/** One line, measured once, as the systems that any width of paper breaks it into. */
final class LineSystems {
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
        for (int i = 0; i < bars.size(); i++) {
            measure(bars.get(i), columns.get(i), stretches.get(i).bars(), options);
        }
    }

    private void measure(WrittenBar bar, List<Column> columns, int bars, SheetOptions options) {
        var measured = Measuring.measure(bar, columns, techniques.get(full.size()), options.staves());
        var whole = bars > 1 ? Measuring.longRest(measured, bars) : measured;
        full.add(whole);
        continued.add(options.simile() && bar.simile() ? Measuring.simile(measured) : whole);
    }

    /** The width below which some bar would not fit a system of its own. */
    double leastWidth() {
        return SystemBreaks.leastWidth(full, signs);
    }

    /** The heading and the systems, in their order. */
    List<Block> blocks(SheetOptions options, Set<Sign> used) {
        var tuning = piece.line().line().header().tuning();
        var blocks = new ArrayList<Block>();
        Block.heading(PageHeader.parts(options, piece.header(), tuning, number == 0), number)
                .ifPresent(blocks::add);
        for (var plan : plans(options.paper().room())) {
            var sketch = new Sketch(plan, options, signs, techniques, tuning);
            var part = SystemDrawing.draw(sketch);
            used.addAll(sketch.used());
            var place = signs.bar(plan.firstIndex()).bar().changes().place();
            boolean newPage = plan.firstIndex() > 0 && place.equals(java.util.Optional.of(Fresh.PAGE));
            blocks.add(Block.system(part.of(number), newPage));
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
            plans.add(SystemPlan.of(bars, first, signs, room));
        }
        return plans;
    }
}
