package groundbass.bench;

import java.util.Locale;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;

/** Medians of rounds in which a piece of work and its anchor take turns, so that both see the same machine. */
final class Timing {
    private static final int ROUNDS = 11;

    /** Work that is timed; its result is looked at, so that it cannot be optimised away. */
    @FunctionalInterface
    interface Work {
        Object run() throws Exception;
    }

    private static volatile Object seen;

    private Timing() {}

    /** Milliseconds of each piece of work: the median of {@value #ROUNDS} rounds, each the mean of {@code times} runs. */
    static double[] medians(int times, Work... works) throws Exception {
        for (var work : works) {
            mean(work, 3 * times); // warm
        }
        var rounds = new double[works.length][ROUNDS];
        for (int round = 0; round < ROUNDS; round++) {
            for (int i = 0; i < works.length; i++) {
                rounds[i][round] = mean(works[i], times);
            }
        }
        return IntStream.range(0, works.length)
                .mapToDouble(i -> median(rounds[i]))
                .toArray();
    }

    private static double mean(Work work, int times) throws Exception {
        long start = System.nanoTime();
        for (int i = 0; i < times; i++) {
            seen = work.run();
        }
        return (System.nanoTime() - start) / 1e6 / times;
    }

    static double median(double... values) {
        var sorted = DoubleStream.of(values).sorted().toArray();
        return sorted[sorted.length / 2];
    }

    static void print(String form, Object... values) {
        System.out.printf(Locale.ROOT, form + "%n", values);
    }
}
