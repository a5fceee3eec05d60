package groundbass.plaintab;

import groundbass.score.Fraction;
import java.util.Map;

/**
 * What stands at one moment of a bar, and how far it is to the next.
 *
 * @param count how the moment is counted; a dot where nobody has a word for it
 * @param figures by string
 * @param under letters of the plucking hand and of marks
 * @param beat whether a beat begins here
 */
record TabColumn(Fraction at, String count, Map<Integer, String> figures, String under, boolean beat, int width) {
    /** Characters that a whole note takes where figures leave room. */
    private static final int WHOLE = 32;

    TabColumn {
        figures = Map.copyOf(figures);
    }

    /** @param until when the next moment is */
    static TabColumn of(
            Fraction at, Fraction until, String count, Map<Integer, String> figures, String under, boolean beat) {
        int inTime = (int) until.minus(at).times(WHOLE).floor();
        int widest = Math.max(
                Math.max(count.length(), under.length()),
                figures.values().stream().mapToInt(String::length).max().orElse(0));
        return new TabColumn(at, count, figures, under, beat, Math.max(inTime, widest + 1));
    }
}
