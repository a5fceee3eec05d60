package groundbass.sound.mix;

/**
 * Keeps blocks under a ceiling: the gain moves straight from block edge to block edge and is at each edge low enough for
 * both of its blocks, so that no sample passes the ceiling. Looks one block ahead.
 */
public final class Limiter {
    /** rule: peak-limit. */
    static final double CEILING = StrictMath.pow(10, -1 / 20.0);

    /** How far the gain may rise again in one block. */
    private static final double RELEASE = 1.02;

    private double gain = 1;

    /** Scales {@code block} knowing how loud it and the block after it are. */
    public void limit(float[][] block, int count, float peak, float nextPeak) {
        double from = Math.min(gain, allowed(peak));
        double to = Math.min(Math.min(allowed(peak), allowed(nextPeak)), Math.min(1, from * RELEASE));
        if (from < 1 || to < 1) {
            scale(block, count, from, (to - from) / count);
        }
        gain = to;
    }

    private static void scale(float[][] block, int count, double from, double step) {
        for (float[] channel : block) {
            for (int i = 0; i < count; i++) {
                channel[i] *= (float) (from + step * i);
            }
        }
    }

    private static double allowed(float peak) {
        return peak <= CEILING ? 1 : CEILING / peak;
    }
}
