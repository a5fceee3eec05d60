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
