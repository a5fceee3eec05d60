package groundbass.engraving.mark;

/** Short decimal numbers, the same in every locale. */
public final class Decimals {
    private Decimals() {}

    /** Appends with at most two decimals, or three, without trailing zeros. */
    public static void append(StringBuilder out, double value, int decimals) {
        long scale = decimals == 3 ? 1000 : 100;
        long scaled = Math.round(value * scale);
        if (scaled < 0) {
            out.append('-');
            scaled = -scaled;
        }
        long whole = scaled / scale;
        long rest = scaled % scale;
        if (whole != 0 || rest == 0) {
            out.append(whole);
        }
        for (long step = scale / 10; rest > 0; step /= 10) {
            if (step == scale / 10) {
                out.append('.');
            }
            out.append((char) ('0' + rest / step));
            rest %= step;
        }
    }
}
