package groundbass.engraving.spacing;

import groundbass.score.Fraction;
import groundbass.writing.WrittenBar;
import java.util.List;

/**
 * A bar whose columns are known and whose places are not. Its points are the start (after any signs), each column, and
 * the end; a gap lies between one point and the next.
 *
 * @param natural how wide each gap would like to be; scaled when a system is justified
 * @param least how wide each gap must be
 * @param bars how many silent bars it stands for; else 1
 * @param simile whether a repeat sign stands for the notes
 */
public record MeasuredBar(
        WrittenBar written, List<Column> columns, double[] natural, double[] least, int bars, boolean simile) {
    double naturalWidth() {
        double sum = 0;
        for (int i = 0; i < natural.length; i++) {
            sum += Math.max(natural[i], least[i]);
        }
        return sum;
    }

    double leastWidth() {
        return java.util.Arrays.stream(least).sum();
    }

    /** The same bar with so much more room before its first column, and behind it for a number in parentheses. */
    public MeasuredBar withLead(double before, double behind) {
        var wider = least.clone();
        wider[0] = Math.max(wider[0], columns.get(0).left() + before);
        wider[1] = Math.max(wider[1], behind);
        return withLeast(wider);
    }

    MeasuredBar withLeast(double[] newLeast) {
        return new MeasuredBar(written, columns, natural, newLeast, bars, simile);
    }

    /** How long a gap behind a column lasts; a bar without columns is one gap as long as itself. */
    Fraction duration(int gap) {
        if (columns.isEmpty()) {
            return written.bar().length();
        }
        var end =
                gap < columns.size() ? columns.get(gap).onset() : written.bar().to();
        return end.minus(columns.get(gap - 1).onset());
    }

    public int number() {
        return written.inForce().number();
    }

    /** The index of the last column that begins at or before a moment; -1 where there is none. */
    int columnAt(Fraction at) {
        int found = -1;
        for (int i = 0; i < columns.size() && !columns.get(i).onset().isAfter(at); i++) {
            found = i;
        }
        return found;
    }
}
