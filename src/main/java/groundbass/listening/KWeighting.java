package groundbass.listening;

/**
 * The weighting of ITU-R BS.1770-4, Annex 1: a high shelf for the head, then a high pass. The standard prints
 * coefficients for 48 kHz; for other rates both filters are derived anew by the bilinear transform from the corner,
 * quality and gain that those coefficients come from. Mutable, one channel.
 */
final class KWeighting {
    private static final double SHELF_HERTZ = 1_681.974450955533;
    private static final double SHELF_GAIN_DB = 3.999843853973347;
    private static final double SHELF_Q = 0.7071752369554196;

    /** The share of the gain that the shelf's middle takes. */
    private static final double SHELF_MIDDLE = 0.4996667741545416;

    private static final double PASS_HERTZ = 38.13547087602444;
    private static final double PASS_Q = 0.5003270373238773;

    private final Biquad shelf;
    private final Biquad pass;

    KWeighting(int rate) {
        this.shelf = shelf(rate);
        this.pass = pass(rate);
    }

    double next(double sample) {
        return pass.next(shelf.next(sample));
    }

    static Biquad shelf(int rate) {
        double k = StrictMath.tan(Math.PI * SHELF_HERTZ / rate);
        double high = StrictMath.pow(10, SHELF_GAIN_DB / 20);
        double middle = StrictMath.pow(high, SHELF_MIDDLE);
        double a0 = 1 + k / SHELF_Q + k * k;
        return new Biquad(
                (high + middle * k / SHELF_Q + k * k) / a0,
                2 * (k * k - high) / a0,
                (high - middle * k / SHELF_Q + k * k) / a0,
                2 * (k * k - 1) / a0,
                (1 - k / SHELF_Q + k * k) / a0);
    }

    static Biquad pass(int rate) {
        double k = StrictMath.tan(Math.PI * PASS_HERTZ / rate);
        double a0 = 1 + k / PASS_Q + k * k;
        return new Biquad(1, -2, 1, 2 * (k * k - 1) / a0, (1 - k / PASS_Q + k * k) / a0);
    }
}
