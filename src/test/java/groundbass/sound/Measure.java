package groundbass.sound;

import java.util.Arrays;

/** Readings of samples that know nothing of how they were made. */
public final class Measure {
    private static final int RATE = 44_100;

    private Measure() {}

    /** Frequency of the partial near {@code expected}: by how far its phase turns between two windows half a second apart. */
    public static double hertz(float[] samples, int from, double expected) {
        int window = RATE / 2;
        int hop = (int) Math.round(Math.round(expected / 4) / expected * RATE);
        double turned = phase(samples, from + hop, window, expected) - phase(samples, from, window, expected);
        double turns = turned / (2 * Math.PI) + expected * hop / RATE;
        double whole = Math.round(expected * hop / RATE - turns);
        return (turns + whole) * RATE / hop;
    }

    public static double cents(double hertz, double expected) {
        return 1200 * Math.log(hertz / expected) / Math.log(2);
    }

    /** How loud the partial at {@code hertz} is around {@code from}. */
    public static double partial(float[] samples, int from, double hertz) {
        double[] sum = spectrum(samples, from, RATE / 4, hertz);
        return Math.hypot(sum[0], sum[1]);
    }

    private static double phase(float[] samples, int from, int window, double hertz) {
        double[] sum = spectrum(samples, from, window, hertz);
        // of the wave at the window's start, seen from a clock that began with it
        return Math.atan2(sum[1], sum[0]);
    }

    /** One line of a Fourier transform under a Hann window. Both pointers are turned on from sample to sample. */
    private static double[] spectrum(float[] samples, int from, int window, double hertz) {
        double across = Math.cos(2 * Math.PI * hertz / RATE);
        double up = Math.sin(2 * Math.PI * hertz / RATE);
        double windowAcross = Math.cos(2 * Math.PI / window);
        double windowUp = Math.sin(2 * Math.PI / window);
        double x = 1;
        double y = 0;
        double c = 1;
        double s = 0;
        double real = 0;
        double imaginary = 0;
        for (int i = 0; i < window; i++) {
            double sample = samples[from + i] * (0.5 - 0.5 * c);
            real += sample * x;
            imaginary -= sample * y;
            double turned = x * across - y * up;
            y = x * up + y * across;
            x = turned;
            turned = c * windowAcross - s * windowUp;
            s = c * windowUp + s * windowAcross;
            c = turned;
        }
        return new double[] {real, imaginary};
    }

    /** The centre of gravity of the power spectrum from 30 Hz to 12 kHz. */
    public static double centroid(float[] samples, int from, int count) {
        double[] powers = powers(samples, from, count);
        double weighted = 0;
        double all = 0;
        for (int i = line(30, powers); i <= line(12_000, powers); i++) {
            weighted += hertz(i, powers) * powers[i];
            all += powers[i];
        }
        return weighted / all;
    }

    /** How much the spectrum from 2 to 12 kHz is like noise: its geometric mean by its mean. */
    public static double flatness(float[] samples, int from, int count) {
        double[] powers = powers(samples, from, count);
        double logs = 0;
        double all = 0;
        int lines = 0;
        for (int i = line(2_000, powers); i <= line(12_000, powers); i++) {
            logs += Math.log(powers[i] + 1e-20);
            all += powers[i] + 1e-20;
            lines++;
        }
        return Math.exp(logs / lines) / (all / lines);
    }

    private static int line(double hertz, double[] powers) {
        return (int) Math.round(hertz * 2 * powers.length / RATE);
    }

    private static double hertz(int line, double[] powers) {
        return (double) line * RATE / (2 * powers.length);
    }

    /** The power spectrum under a Hann window, in lines so narrow that it does not matter where a partial lies between two. */
    private static double[] powers(float[] samples, int from, int count) {
        int size = 4 * Integer.highestOneBit(count);
        double[] real = new double[size];
        double[] imaginary = new double[size];
        for (int i = 0; i < count; i++) {
            int reversed = Integer.reverse(i) >>> Integer.numberOfLeadingZeros(size) + 1;
            real[reversed] = samples[from + i] * (0.5 - 0.5 * Math.cos(2 * Math.PI * i / count));
        }
        for (int span = 1; span < size; span *= 2) {
            butterflies(real, imaginary, span);
        }
        double[] powers = new double[size / 2];
        for (int i = 0; i < powers.length; i++) {
            powers[i] = real[i] * real[i] + imaginary[i] * imaginary[i];
        }
        return powers;
    }

    /** One stage of a fast Fourier transform (Cooley and Tukey 1965). */
    private static void butterflies(double[] real, double[] imaginary, int span) {
        for (int k = 0; k < span; k++) {
            double x = Math.cos(-Math.PI * k / span);
            double y = Math.sin(-Math.PI * k / span);
            for (int i = k; i < real.length; i += 2 * span) {
                double turnedX = real[i + span] * x - imaginary[i + span] * y;
                double turnedY = real[i + span] * y + imaginary[i + span] * x;
                real[i + span] = real[i] - turnedX;
                imaginary[i + span] = imaginary[i] - turnedY;
                real[i] += turnedX;
                imaginary[i] += turnedY;
            }
        }
    }

    /** Seconds in which 95 hundredths of the energy are given. */
    public static double lasting(float[] samples) {
        double all = 0;
        for (float sample : samples) {
            all += sample * sample;
        }
        double given = 0;
        int i = 0;
        while (given < 0.95 * all) {
            given += samples[i] * samples[i];
            i++;
        }
        return i / (double) RATE;
    }

    /** Seconds from {@code from} until half of the loudest sample of the next 50 ms is reached. */
    public static double attack(float[] samples, int from) {
        float half = peak(Arrays.copyOfRange(samples, from, from + RATE / 20)) / 2;
        int i = from;
        while (Math.abs(samples[i]) < half) {
            i++;
        }
        return (i - from) / (double) RATE;
    }

    public static float peak(float[] samples) {
        float peak = 0;
        for (float sample : samples) {
            peak = Math.max(peak, Math.abs(sample));
        }
        return peak;
    }

    public static double mean(float[] samples) {
        double sum = 0;
        for (float sample : samples) {
            sum += sample;
        }
        return sum / samples.length;
    }

    public static double decibels(float[] samples, int from, int count) {
        double power = 0;
        for (int i = from; i < from + count; i++) {
            power += samples[i] * samples[i];
        }
        return 10 * Math.log10(power / count + 1e-20);
    }

    /** Which part of the power from 30 Hz to 12 kHz lies above {@code hertz}. */
    public static double share(float[] samples, int from, int count, int hertz) {
        double[] powers = powers(samples, from, count);
        double above = 0;
        double all = 0;
        for (int i = line(30, powers); i <= line(12_000, powers); i++) {
            all += powers[i];
            above += i > line(hertz, powers) ? powers[i] : 0;
        }
        return above / all;
    }

    /** The greatest part of the power over 30 Hz that lies within a tenth of one frequency. */
    public static double strongest(float[] samples, int from, int count) {
        double[] powers = powers(samples, from, count);
        double all = 0;
        for (int i = line(30, powers); i < powers.length; i++) {
            all += powers[i];
        }
        double most = 0;
        for (double hertz = 40; hertz < 10_000; hertz *= 1.02) {
            double within = 0;
            for (int i = line(0.9 * hertz, powers); i <= line(1.1 * hertz, powers); i++) {
                within += powers[i];
            }
            most = Math.max(most, within);
        }
        return most / all;
    }

    /** The highest value of the normalised autocorrelation at lags of 30 to 400 Hz: near 1 where there is a pitch. */
    public static double periodicity(float[] samples, int from, int count) {
        double best = 0;
        for (int lag = RATE / 400; lag <= RATE / 30; lag++) {
            double product = 0;
            double first = 1e-20;
            double second = 1e-20;
            for (int i = from; i < from + count; i++) {
                product += samples[i] * samples[i + lag];
                first += samples[i] * samples[i];
                second += samples[i + lag] * samples[i + lag];
            }
            // by the louder of the two, so that what dies away is not called periodic
            best = Math.max(best, product / Math.max(first, second));
        }
        return best;
    }

    /** As {@link #hertz}, from a short stretch: for pitches that move. */
    public static double quickHertz(float[] samples, int from, double expected) {
        int window = RATE / 25;
        int hop = RATE / 200;
        double turned = phase(samples, from + hop, window, expected) - phase(samples, from, window, expected);
        double turns = turned / (2 * Math.PI);
        return (turns + Math.round(expected * hop / RATE - turns)) * RATE / hop;
    }

    /** The greatest step from a sample to its neighbour. */
    public static double steepest(float[] samples, int from, int to) {
        double steepest = from == 0 ? Math.abs(samples[0]) : 0;
        for (int i = Math.max(1, from); i < to; i++) {
            steepest = Math.max(steepest, Math.abs(samples[i] - samples[i - 1]));
        }
        return steepest;
    }
}
