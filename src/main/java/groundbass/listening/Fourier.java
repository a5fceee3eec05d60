package groundbass.listening;

/** The discrete Fourier transform of a power of two of real samples, by halving (Cooley & Tukey 1965). Mutable. */
final class Fourier {
    private final int size;
    private final double[] cosine;
    private final double[] sine;
    private final double[] real;
    private final double[] imaginary;

    Fourier(int size) {
        if (Integer.bitCount(size) != 1) {
            throw new IllegalArgumentException("not a power of two: " + size);
        }
        this.size = size;
        this.cosine = new double[size / 2];
        this.sine = new double[size / 2];
        this.real = new double[size];
        this.imaginary = new double[size];
        for (int i = 0; i < size / 2; i++) {
            cosine[i] = StrictMath.cos(2 * Math.PI * i / size);
            sine[i] = StrictMath.sin(2 * Math.PI * i / size);
        }
    }

    /** How strong each frequency from zero to half the rate is in these samples. */
    void magnitudes(float[] samples, float[] into) {
        int bits = Integer.numberOfTrailingZeros(size);
        for (int i = 0; i < size; i++) {
            int place = Integer.reverse(i) >>> 32 - bits;
            real[place] = samples[i];
            imaginary[place] = 0;
        }
        for (int half = 1; half < size; half *= 2) {
            for (int start = 0; start < size; start += 2 * half) {
                butterflies(start, half);
            }
        }
        for (int i = 0; i < into.length; i++) {
            into[i] = (float) Math.sqrt(real[i] * real[i] + imaginary[i] * imaginary[i]);
        }
    }

    private void butterflies(int start, int half) {
        int step = size / (2 * half);
        for (int i = 0; i < half; i++) {
            int low = start + i;
            int high = low + half;
            double r = real[high] * cosine[i * step] + imaginary[high] * sine[i * step];
            double m = imaginary[high] * cosine[i * step] - real[high] * sine[i * step];
            real[high] = real[low] - r;
            imaginary[high] = imaginary[low] - m;
            real[low] += r;
            imaginary[low] += m;
        }
    }
}
