package groundbass.linetext.print;

import groundbass.linetext.source.NumberWords;
import groundbass.score.Shift;

/** Says how far a bar is moved that is taken over: {@code , one string higher, two frets down}; nothing where it is not. */
public final class ShiftPrinter {
    private ShiftPrinter() {}

    public static String print(Shift shift) {
        return part(shift.strings(), "string", "higher", "lower") + part(shift.frets(), "fret", "up", "down");
    }

    private static String part(int by, String unit, String upwards, String downwards) {
        if (by == 0) {
            return "";
        }
        String units = Math.abs(by) == 1 ? unit : unit + "s";
        return ", " + NumberWords.of(Math.abs(by)) + " " + units + " " + (by > 0 ? upwards : downwards);
    }
}
