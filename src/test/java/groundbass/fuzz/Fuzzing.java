package groundbass.fuzz;

import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Random;

/** Runs one target on many spoiled inputs, and collects what was found, each kind of fault once. */
final class Fuzzing {
    /** Above this an input counts as found too: linear work on so small a text takes a thousandth of it. */
    private static final Duration SLOW = Duration.ofSeconds(5);

    private static final int SHOWN = 2_000;

    /** Processor time, so that other work on the machine does not count. */
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();

    private final Target target;
    private final long seed;
    private final Random random;
    private final Mutator mutator;
    private final Map<String, String> found = new LinkedHashMap<>();
    private long inputs;

    Fuzzing(Target target, long seed) {
        this.target = target;
        this.seed = seed;
        this.random = new Random(seed);
        this.mutator = new Mutator(target, random);
    }

    long inputs() {
        return inputs;
    }

    /** Where it happened, to what happened. */
    Map<String, String> found() {
        return found;
    }

    void runOnce() {
        byte[] input = mutator.next();
        long began = THREADS.getCurrentThreadCpuTime();
        inputs++;
        try {
            target.take(input, random);
            var took = Duration.ofNanos(THREADS.getCurrentThreadCpuTime() - began);
            if (took.compareTo(SLOW) > 0) {
                note("slow", "took " + took, input);
            }
        } catch (Throwable fault) {
            note(kind(fault), trace(fault), input);
        }
    }

    private void note(String kind, String what, byte[] input) {
        String text = new String(input, StandardCharsets.UTF_8);
        String shown = text.length() > SHOWN ? text.substring(0, SHOWN) + "..." : text;
        found.putIfAbsent(kind, "seed " + seed + ", input " + inputs + ": " + what + "\n--- input\n" + shown + "\n---");
    }

    private static String kind(Throwable fault) {
        var trace = fault.getStackTrace();
        return fault.getClass().getName() + " at " + (trace.length == 0 ? "nowhere" : trace[0]);
    }

    private static String trace(Throwable fault) {
        var text = new StringBuilder(fault.toString());
        for (int i = 0; i < Math.min(12, fault.getStackTrace().length); i++) {
            text.append("\n    at ").append(fault.getStackTrace()[i]);
        }
        return text.toString();
    }
}
