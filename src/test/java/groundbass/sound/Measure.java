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

    /** The centre of gravity of the power spectrum to 12 kHz, in steps of 40 Hz. */
    public static double centroid(float[] samples, int from, int count) {
        double weighted = 0;
        double all = 0;
        for (int hertz = 40; hertz <= 12_000; hertz += 40) {
            double[] sum = spectrum(samples, from, count, hertz);
            double power = sum[0] * sum[0] + sum[1] * sum[1];
            weighted += hertz * power;
            all += power;
        }
        return weighted / all;
    }

    /** How much the spectrum from 2 to 12 kHz is like noise, in steps of 40 Hz: its geometric mean by its mean. */
    public static double flatness(float[] samples, int from, int count) {
        double logs = 0;
        double all = 0;
        int lines = 0;
        for (int hertz = 2_000; hertz <= 12_000; hertz += 40) {
            double[] sum = spectrum(samples, from, count, hertz);
            double power = sum[0] * sum[0] + sum[1] * sum[1] + 1e-20;
            logs += Math.log(power);
            all += power;
            lines++;
        }
        return Math.exp(logs / lines) / (all / lines);
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

    /** Which part of the power up to 12 kHz lies above {@code hertz}, in steps of 40 Hz. */
    public static double share(float[] samples, int from, int count, int hertz) {
        double above = 0;
        double all = 0;
        for (int line = 40; line <= 12_000; line += 40) {
            double[] sum = spectrum(samples, from, count, line);
            double power = sum[0] * sum[0] + sum[1] * sum[1];
            all += power;
            above += line > hertz ? power : 0;
        }
        return above / all;
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
