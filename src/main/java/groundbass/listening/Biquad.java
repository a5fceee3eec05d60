package groundbass.listening;

/** A filter of second order, {@code y[n] = b0 x[n] + b1 x[n-1] + b2 x[n-2] - a1 y[n-1] - a2 y[n-2]}. */
record Biquad(double b0, double b1, double b2, double a1, double a2) {}
