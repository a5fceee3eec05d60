package groundbass.listening;

/**
 * A filter of second order, {@code y[n] = b0 x[n] + b1 x[n-1] + b2 x[n-2] - a1 y[n-1] - a2 y[n-2]}, in transposed form.
 * Mutable.
 */
final class Biquad {
    final double b0;
    final double b1;
    final double b2;
    final double a1;
    final double a2;
    private double first;
    private double second;

    Biquad(double b0, double b1, double b2, double a1, double a2) {
        this.b0 = b0;
        this.b1 = b1;
        this.b2 = b2;
        this.a1 = a1;
        this.a2 = a2;
    }

    double next(double x) {
        double y = b0 * x + first;
        first = b1 * x - a1 * y + second;
        second = b2 * x - a2 * y;
        return y;
    }
}
