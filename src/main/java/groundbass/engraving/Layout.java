package groundbass.engraving;

import groundbass.writing.WrittenLine;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** From a written line to pages of marks. A pure function of its arguments. */
public final class Layout {
    /** How often staves are made smaller for a system that is higher than a page. */
    private static final int MOST_ATTEMPTS = 6;

    private final WrittenLine line;
    private final SheetOptions options;
    private final BarSigns signs;
    private final List<List<TechniqueMarks.At>> techniques;
    private final List<MeasuredBar> full;
    private final List<MeasuredBar> continued;

    private Layout(WrittenLine line, SheetOptions options) {
        this.line = line;
        this.options = options;
        this.signs = new BarSigns(line.bars(), options);
        this.techniques = TechniqueMarks.of(line.bars(), options.letters());
        this.full = new ArrayList<>();
        this.continued = new ArrayList<>();
        for (int i = 0; i < line.bars().size(); i++) {
            var bar = line.bars().get(i);
            var measured = Measuring.measure(bar, techniques.get(i), options.staves());
            full.add(measured);
            continued.add(options.simile() && bar.simile() ? Measuring.simile(measured) : measured);
        }
    }

    /**
     * Lays out a line. Where a single bar does not fit the paper's width, all staves get smaller until it does.
     *
     * @return at least one page; on a screen exactly one
     */
    public static List<Page> of(WrittenLine line, SheetOptions options) {
        return new Layout(line, options).pages();
    }

    private List<Page> pages() {
        var paper = options.paper().holding(SystemBreaks.leastWidth(full, signs));
        for (int attempt = 0; ; attempt++) {
            var fitting = options.with(paper);
            var used = EnumSet.noneOf(Sign.class);
            var systems = systems(fitting, used);
            var pages = new Pages(fitting, line.line().header(), used);
            double tooTall = pages.tooTall(systems);
            if (tooTall <= 1 || attempt == MOST_ATTEMPTS) {
                return pages.of(systems);
            }
            paper = paper.holding(paper.room() * tooTall * 1.02);
        }
    }

    private List<Page.Part> systems(SheetOptions fitting, Set<Sign> used) {
        var systems = new ArrayList<Page.Part>();
        for (var plan : plans(fitting.paper().room())) {
            var sketch = new Sketch(
                    plan, fitting, signs, techniques, line.line().header().tuning());
            systems.add(SystemDrawing.draw(sketch));
            used.addAll(sketch.used());
        }
        return systems;
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
