package groundbass.engraving.spacing;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.options.SheetOptions;
import groundbass.score.Hairpins;
import groundbass.theory.Key;
import groundbass.writing.WrittenBar;
import java.util.List;

/** What stands at the edges of bars, and how much room it takes. */
public final class BarSigns {
    public static final double CLEF_LEFT = 0.8;
    public static final double BETWEEN = 0.85;
    public static final double REPEAT = Measures.THICK_BARLINE
            + Measures.BARLINE_GAP
            + Measures.THIN_BARLINE
            + Measures.REPEAT_DOT_GAP
            + Measures.REPEAT_DOT;
    private static final double DOUBLE = 2 * Measures.THIN_BARLINE + Measures.BARLINE_GAP;
    private static final double FINAL = Measures.THIN_BARLINE + Measures.BARLINE_GAP + Measures.THICK_BARLINE;

    private final List<WrittenBar> bars;
    private final SheetOptions options;
    private final List<Hairpins.Reach> hairpins;

    /** The line between one bar and the next. */
    public enum Closing {
        /** The next bar's repeat sign is the line. */
        NOTHING,
        SINGLE,
        DOUBLE,
        FINAL,
        REPEAT,
        /** Ends one repeat and begins another. */
        REPEAT_BOTH;

        double width() {
            return switch (this) {
                case NOTHING -> 0;
                case SINGLE -> Measures.THIN_BARLINE;
                case DOUBLE -> BarSigns.DOUBLE;
                case FINAL -> BarSigns.FINAL;
                case REPEAT -> BarSigns.REPEAT;
                case REPEAT_BOTH -> 2 * BarSigns.REPEAT - Measures.THICK_BARLINE;
            };
        }
    }

    public BarSigns(List<WrittenBar> bars, SheetOptions options) {
        this.bars = bars;
        this.options = options;
        this.hairpins = Hairpins.of(bars.stream().map(WrittenBar::bar).toList());
    }

    /** Those of the whole line. */
    public List<Hairpins.Reach> hairpins() {
        return hairpins;
    }

    public WrittenBar bar(int index) {
        return bars.get(index);
    }

    public int size() {
        return bars.size();
    }

    /** Whether a system must end with this bar: the last, or one before a bar that is wanted at a system's head. */
    boolean endsStretch(int index) {
        return index + 1 == bars.size()
                || bars.get(index + 1).bar().changes().place().isPresent();
    }

    Closing closing(int index, boolean lastInSystem) {
        boolean last = index + 1 == bars.size();
        boolean nextStarts = !last && bars.get(index + 1).bar().repeats().start();
        if (bars.get(index).bar().repeats().end().isPresent()) {
            return nextStarts && !lastInSystem ? Closing.REPEAT_BOTH : Closing.REPEAT;
        }
        if (last) {
            return Closing.FINAL;
        }
        if (nextStarts && !lastInSystem && !changes(index + 1)) {
            return Closing.NOTHING;
        }
        var changes = bars.get(index + 1).bar().changes();
        var roadmap = bars.get(index).bar().repeats().roadmap();
        boolean cut = changes.section().isPresent()
                || changes.key().isPresent()
                || roadmap.fine()
                || roadmap.jump().isPresent();
        return cut ? Closing.DOUBLE : Closing.SINGLE;
    }

    /** Whether the bar's own left edge shows a start of repeat, rather than the end of the bar before. */
    public boolean opensRepeat(int index, boolean firstInSystem) {
        boolean joined = !firstInSystem && closing(index - 1, false) == Closing.REPEAT_BOTH;
        return bars.get(index).bar().repeats().start() && !joined;
    }

    public boolean showsKey(int index) {
        return index > 0
                && !key(index).equals(key(index - 1))
                && key(index).fifths() != key(index - 1).fifths();
    }

    public boolean showsTime(int index) {
        return index == 0 || !meter(index).equals(meter(index - 1));
    }

    private boolean changes(int index) {
        return showsKey(index) || showsTime(index);
    }

    public Key key(int index) {
        return bars.get(index).inForce().key();
    }

    public groundbass.score.Meter meter(int index) {
        return bars.get(index).inForce().meter();
    }

    /** What a change to this bar cancels: signs of the old key where the new one has none. */
    public int cancelled(int index) {
        return index > 0 && key(index).fifths() == 0 ? key(index - 1).fifths() : 0;
    }

    /** From the system's left edge to where its first bar's notes may begin. */
    double prefixWidth(int index) {
        double width = CLEF_LEFT + clefWidth();
        if (options.staves().hasNotation() && key(index).fifths() != 0) {
            width += BETWEEN + KeySignature.width(key(index).fifths());
        }
        if (showsTime(index)) {
            width += BETWEEN + TimeSignature.width(meter(index));
        }
        return width + (opensRepeat(index, true) ? BETWEEN + REPEAT : 0.4);
    }

    public double clefWidth() {
        return options.staves().hasNotation()
                ? MusicFont.bravura().width(Glyph.F_CLEF)
                : MusicFont.bravura().width(Glyph.TAB_CLEF_FOUR) * Measures.TAB_GAP;
    }

    /** From a barline inside a system to where the bar's notes may begin. */
    double startWidth(int index) {
        return changesWidth(index) + (opensRepeat(index, false) ? REPEAT + (changes(index) ? BETWEEN : 0) : 0);
    }

    /** Of a new key and meter. */
    double changesWidth(int index) {
        double width = 0;
        if (showsKey(index) && options.staves().hasNotation()) {
            width += BETWEEN + KeySignature.width(key(index).fifths(), cancelled(index));
        }
        if (showsTime(index)) {
            width += BETWEEN + TimeSignature.width(meter(index));
        }
        return width;
    }

    /** Behind the last barline of a system: the warning of a change that the next one begins with. */
    double warningWidth(int lastIndex) {
        boolean warns = lastIndex + 1 < bars.size() && changes(lastIndex + 1);
        return warns ? changesWidth(lastIndex + 1) + 0.3 : 0;
    }
}
