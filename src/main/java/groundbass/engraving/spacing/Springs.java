package groundbass.engraving.spacing;

import java.util.List;

/** Gaps in a row, stretched or squeezed by one factor, none below its least (rule: spacing-least-gap). */
final class Springs {
    private static final int STEPS = 50;

    private Springs() {}

    /** The factor at which the gaps of these bars fill a width; 0 where they do not fit. */
    static double factor(List<MeasuredBar> bars, double width) {
        double low = 0;
        double high = 1;
        while (width(bars, high) < width && high < 1e6) {
            high *= 2;
        }
        for (int i = 0; i < STEPS; i++) {
            double middle = (low + high) / 2;
            if (width(bars, middle) < width) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    static double gap(MeasuredBar bar, int index, double factor) {
        return Math.max(bar.least()[index], factor * bar.natural()[index]);
    }

    static double width(MeasuredBar bar, double factor) {
        double sum = 0;
        for (int i = 0; i < bar.natural().length; i++) {
            sum += gap(bar, i, factor);
        }
        return sum;
    }

    private static double width(List<MeasuredBar> bars, double factor) {
        double sum = 0;
        for (var bar : bars) {
            sum += width(bar, factor);
        }
        return sum;
    }
}
