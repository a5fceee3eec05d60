package groundbass.sound.keys;

/** The sine by table and straight lines between its points, good to -110 dB: for tones of which many sound at once. */
public final class SineTable {
    /** The whole circle as a phase counts it: a phase is an int that runs over. */
    public static final double CIRCLE = 0x1p32;

    private static final int SIZE = 4_096;
    private static final int SHIFT = 20;
    private static final int BELOW = (1 << SHIFT) - 1;
    private static final float SHARE = 1f / (1 << SHIFT);
    private static final float[] POINTS = points();

    private SineTable() {}

    public static float at(int phase) {
        int index = phase >>> SHIFT;
        float share = (phase & BELOW) * SHARE;
        return POINTS[index] + share * (POINTS[index + 1] - POINTS[index]);
    }

    private static float[] points() {
        var points = new float[SIZE + 1];
        for (int i = 0; i <= SIZE; i++) {
            points[i] = (float) StrictMath.sin(2 * Math.PI * i / SIZE);
        }
        return points;
    }
}
