package groundbass.bench;

import java.io.IOException;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.locks.LockSupport;

/** One kind of attack, again and again until the end, in some threads; counts what it got for it. */
final class Attacker {
    private static final long REST_NANOS = 20_000_000;

    /** A request or more; gives back what came of it: a status, or a word. */
    @FunctionalInterface
    interface Blow {
        String strike() throws IOException;
    }

    private final String name;
    private final int threads;
    private final Blow blow;
    private final Map<String, Long> came = new TreeMap<>();

    Attacker(String name, int threads, Blow blow) {
        this.name = name;
        this.threads = threads;
        this.blow = blow;
    }

    void start(long endNanos) {
        for (int i = 0; i < threads; i++) {
            var thread = new Thread(() -> goOn(endNanos), name + " " + i);
            thread.setDaemon(true);
            thread.start();
        }
    }

    private void goOn(long endNanos) {
        while (System.nanoTime() < endNanos) {
            count(strike());
            LockSupport.parkNanos(REST_NANOS);
        }
    }

    private String strike() {
        try {
            return blow.strike();
        } catch (IOException | RuntimeException e) {
            return "cut";
        }
    }

    private synchronized void count(String what) {
        came.merge(what, 1L, Long::sum);
    }

    /** What came of it so far. */
    synchronized String told() {
        long all = came.values().stream().mapToLong(Long::longValue).sum();
        return String.format(Locale.ROOT, "%-28s %,8d  %s", name, all, came);
    }
}
