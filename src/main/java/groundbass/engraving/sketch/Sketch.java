package groundbass.engraving.sketch;

import groundbass.engraving.mark.Measures;
import groundbass.engraving.options.SheetOptions;
import groundbass.engraving.options.Sign;
import groundbass.engraving.spacing.BarSigns;
import groundbass.engraving.spacing.BarSpan;
import groundbass.engraving.spacing.Cell;
import groundbass.engraving.spacing.SystemPlan;
import groundbass.engraving.spacing.TechniqueMarks;
import groundbass.score.Note;
import groundbass.score.Tuning;
import groundbass.writing.WrittenBar;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** A system while it is being drawn: each concern adds its marks to the staves. */
public final class Sketch {
    /** Bars. */
    private static final int FARTHEST = 8;

    private final SystemPlan plan;
    private final SheetOptions options;
    private final BarSigns signs;
    private final List<List<TechniqueMarks.At>> techniques;
    private final Layer notation;
    private final Layer tab;
    private final Tuning tuning;
    private final List<Spot> spots = new ArrayList<>();
    private final Map<Cell, Double> tips = new IdentityHashMap<>();
    private final Row slurLettersAbove = new Row(0.2);
    private final Row slurLettersBelow = new Row(0.2);
    private double chordBaseline;
    private final Set<Sign> used = EnumSet.noneOf(Sign.class);

    public Sketch(
            SystemPlan plan,
            SheetOptions options,
            BarSigns signs,
            List<List<TechniqueMarks.At>> techniques,
            Tuning tuning) {
        this.plan = plan;
        this.options = options;
        this.signs = signs;
        this.techniques = techniques;
        this.tuning = tuning;
        this.notation = new Layer(plan.width(), Measures.STAFF_HEIGHT, false);
        this.tab = new Layer(plan.width(), Measures.stringY(tuning.size()), true);
        for (var span : plan.bars()) {
            for (int i = 0; i < span.columns().length; i++) {
                var column = span.bar().columns().get(i);
                for (var cell : column.cells()) {
                    spots.add(new Spot(cell, column, span, span.columns()[i]));
                }
            }
        }
    }

    public SystemPlan plan() {
        return plan;
    }

    public SheetOptions options() {
        return options;
    }

    public BarSigns signs() {
        return signs;
    }

    public Layer notation() {
        return notation;
    }

    public Layer tab() {
        return tab;
    }

    /** The staff that comes first from above. */
    public Layer upper() {
        return options.staves().hasNotation() ? notation : tab;
    }

    /** The staff that comes last. */
    public Layer lower() {
        return options.staves().hasTab() ? tab : notation;
    }

    public int strings() {
        return tuning.size();
    }

    public Tuning tuning() {
        return tuning;
    }

    /** In time, upper voice first. */
    public List<Spot> spots() {
        return spots;
    }

    public List<TechniqueMarks.At> techniques(BarSpan span) {
        return techniques.get(span.index());
    }

    public WrittenBar written(BarSpan span) {
        return span.bar().written();
    }

    /** The last note on a string before this system. */
    public Optional<Note> earlier(int string) {
        for (int i = plan.firstIndex() - 1; i >= 0; i--) {
            var notes = on(string, signs.bar(i));
            if (!notes.isEmpty()) {
                return Optional.of(notes.get(notes.size() - 1));
            }
        }
        return Optional.empty();
    }

    /** The next note on a string after this system, if it is not too far away to be reached from it. */
    public Optional<Note> later(int string) {
        int end = Math.min(signs.size(), plan.lastIndex() + 1 + FARTHEST);
        for (int i = plan.lastIndex() + 1; i < end; i++) {
            var notes = on(string, signs.bar(i));
            if (!notes.isEmpty()) {
                return Optional.of(notes.get(0));
            }
        }
        return Optional.empty();
    }

    private static List<Note> on(int string, WrittenBar bar) {
        return bar.bar().notes().stream()
                .filter(note -> note.string() == string)
                .toList();
    }

    /** The height of a stem's far end on the notation staff. */
    public void tip(Spot spot, double y) {
        tips.put(spot.cell(), y);
    }

    public Optional<Double> tip(Spot spot) {
        return Optional.ofNullable(tips.get(spot.cell()));
    }

    /** Letters that wait until every slur has its place. */
    public Row slurLetters(boolean above) {
        return above ? slurLettersAbove : slurLettersBelow;
    }

    public void chordBaseline(double y) {
        chordBaseline = y;
    }

    /** Where the chord names of the system stand; 0 where there are none. */
    public double chordBaseline() {
        return chordBaseline;
    }

    public void use(Sign sign) {
        used.add(sign);
    }

    public Set<Sign> used() {
        return used;
    }
}
