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
    private double shelfFirst;
    private double shelfSecond;
    private double passFirst;
    private double passSecond;

    KWeighting(int rate) {
        this.shelf = shelf(rate);
        this.pass = pass(rate);
    }

    /**
     * The sum of the squares of the next samples as they are weighted. Both filters go in transposed form and in one turn,
     * and nothing is stored within it: measuring is a good part of what a lesson's sound costs.
     */
    double energy(float[] samples, int from, int count) {
        double b0 = shelf.b0();
        double b1 = shelf.b1();
        double b2 = shelf.b2();
        double a1 = shelf.a1();
        double a2 = shelf.a2();
        double c1 = pass.a1();
        double c2 = pass.a2();
        double s1 = shelfFirst;
        double s2 = shelfSecond;
        double p1 = passFirst;
        double p2 = passSecond;
        double energy = 0;
        for (int i = from; i < from + count; i++) {
            double x = samples[i];
            double y = b0 * x + s1;
            s1 = b1 * x - a1 * y + s2;
            s2 = b2 * x - a2 * y;
            double z = y + p1;
            p1 = -2 * y - c1 * z + p2;
            p2 = y - c2 * z;
            energy += z * z;
        }
        shelfFirst = s1;
        shelfSecond = s2;
        passFirst = p1;
        passSecond = p2;
        return energy;
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
