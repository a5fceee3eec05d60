package groundbass.sound;

/** The sine by table and straight lines between its points, good to -110 dB: for tones of which many sound at once. */
final class SineTable {
    private static final int SIZE = 4_096;
    private static final float[] POINTS = points();

    private SineTable() {}

    /** @param turns of the circle, from -8 on */
    static float at(double turns) {
        double place = (turns + 8) * SIZE;
        int whole = (int) place;
        float share = (float) (place - whole);
        int index = whole & SIZE - 1;
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
