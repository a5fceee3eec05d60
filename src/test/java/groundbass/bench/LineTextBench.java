package groundbass.bench;

import groundbass.linetext.LineText;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Arrays;
import java.util.function.Supplier;

/**
 * Prints how long 1,000 bars take to read and to print, beside the floor of merely cutting the same text into lines.
 * Aim: reading below 50 ms when warm. Figures are for people; nothing asserts them.
 */
public final class LineTextBench {
    private static final int BARS = 1000;
    private static final int WARM_UP = 60;
    private static final int ROUNDS = 41;

    /** Time of this thread alone, so that nothing else shows. */
    private static final ThreadMXBean THREAD = ManagementFactory.getThreadMXBean();

    private LineTextBench() {}

    public static void main(String[] args) {
        String text = text();
        var reading = LineText.read(text);
        System.out.printf(
                "%d bars, %d lines, %d characters, %d problems%n",
                reading.line().bars().size(),
                text.lines().count(),
                text.length(),
                reading.problems().size());
        System.out.printf("lines only  %8.3f ms%n", median(() -> text.lines().count()));
        System.out.printf("read        %8.3f ms%n", median(() -> LineText.read(text)));
        System.out.printf("print       %8.3f ms%n", median(() -> LineText.print(reading.line())));
        String doubled = text + bars(BARS + 1, 2 * BARS);
        System.out.printf("read twice as many bars %8.3f ms%n", median(() -> LineText.read(doubled)));
    }

    private static String text() {
        return "title A thousand bars\nkey A dorian\nmeter 4/4\ntempo 96\n" + bars(1, BARS);
    }

    private static String bars(int from, int to) {
        var text = new StringBuilder();
        for (int number = from; number <= to; number++) {
            text.append("\nbar ").append(number).append(" over Am7, D9 at 3\n");
            text.append("1    E5\n1&   E5, E8\n2    A5, Ax\n2&   A7 short\n3    E5 down, E7 up, A5 down\n");
            text.append("4    E8*2 slap, D5 pop, E5 slap\n");
        }
        return text.toString();
    }

    private static double median(Supplier<Object> work) {
        for (int i = 0; i < WARM_UP; i++) {
            work.get();
        }
        var times = new long[ROUNDS];
        for (int i = 0; i < ROUNDS; i++) {
            long start = THREAD.getCurrentThreadCpuTime();
            work.get();
            times[i] = THREAD.getCurrentThreadCpuTime() - start;
        }
        Arrays.sort(times);
        return times[ROUNDS / 2] / 1e6;
    }
}
