package groundbass.bench;

import com.sun.management.ThreadMXBean;
import groundbass.bench.Timing.Work;
import java.lang.management.ManagementFactory;
import java.util.stream.IntStream;

/** Medians of what the working thread alone cost, pieces of work taking turns. */
final class ProcessorTime {
    private static final int ROUNDS = 15;
    private static final int WARM_UPS = 30;
    private static final ThreadMXBean THREADS = (ThreadMXBean) ManagementFactory.getThreadMXBean();

    private static volatile Object seen;

    private ProcessorTime() {}

    /** Milliseconds of each piece of work, each round the mean of {@code times} runs. */
    static double[] medians(int times, Work... works) throws Exception {
        for (int i = 0; i < WARM_UPS; i++) {
            for (var work : works) {
                mean(work, times);
            }
        }
        var rounds = new double[works.length][ROUNDS];
        for (int round = 0; round < ROUNDS; round++) {
            for (int i = 0; i < works.length; i++) {
                rounds[i][round] = mean(works[i], times);
            }
        }
        return IntStream.range(0, works.length)
                .mapToDouble(i -> Timing.median(rounds[i]))
                .toArray();
    }

    /** Bytes of heap that one run takes, most of them at once free again. */
    static long allocated(Work work) throws Exception {
        long before = THREADS.getCurrentThreadAllocatedBytes();
        seen = work.run();
        return THREADS.getCurrentThreadAllocatedBytes() - before;
    }

    private static double mean(Work work, int times) throws Exception {
        long start = THREADS.getCurrentThreadCpuTime();
        for (int i = 0; i < times; i++) {
            seen = work.run();
        }
        return (THREADS.getCurrentThreadCpuTime() - start) / 1e6 / times;
    }
}
