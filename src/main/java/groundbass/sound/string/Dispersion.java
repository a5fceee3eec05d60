package groundbass.sound.string;

import groundbass.signal.SampleRate;

/**
 * Stiffness makes high partials travel faster and so sound sharp, {@code f_k = k f_1 sqrt((1 + B k^2) / (1 + B))}
 * (rule: string-stiffness). Here {@value #SECTIONS} equal all-passes {@code (c + z^-1) / (1 + c z^-1)} in the loop
 * delay low partials more than high ones, so that the tenth partial, or the highest below a limit, lies where the law
 * says.
 *
 * @param c from -1 to 0; 0 delays everything alike
 */
record Dispersion(double c) {
    static final int SECTIONS = 4;
    private static final int PARTIAL = 10;

    /** The highest frequency, as an angle, at which the law is met. */
    private static final double HIGHEST = 1.2;

    private static final double STIFFEST = -0.97;
    private static final int HALVINGS = 30;

    /** @param b how stiff the string is */
    static Dispersion of(SampleRate rate, double hertz, double b, LoopFilter loss) {
        double w = rate.radians(hertz);
        int partial = (int) Math.max(2, Math.min(PARTIAL, HIGHEST / w));
        double high = w * partial * StrictMath.sqrt((1 + b * partial * partial) / (1 + b));
        double wanted = 2 * Math.PI / w - 2 * Math.PI * partial / high - (loss.delay(w) - loss.delay(high));
        double low = STIFFEST;
        double none = 0;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (low + none) / 2;
            var tried = new Dispersion(middle);
            if (tried.delay(w) - tried.delay(high) > wanted) {
                low = middle;
            } else {
                none = middle;
            }
        }
        return new Dispersion((low + none) / 2);
    }

    /** By how many samples all sections together delay a frequency. */
    double delay(double radians) {
        double turn = StrictMath.atan2(c * StrictMath.sin(radians), 1 + c * StrictMath.cos(radians));
        return SECTIONS * (1 - 2 * turn / radians);
    }
}
