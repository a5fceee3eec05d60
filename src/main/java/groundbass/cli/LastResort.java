package groundbass.cli;

import java.sql.SQLException;
import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * Ends the process where a fault has left it in a state from which only a new start leads out: the heap was used up, a
 * class cannot be loaded any more, the embedded database has closed itself. Whoever runs the server starts it again.
 * Every fault is logged somewhere, so {@link FaultFilter} tells of them all. Its threads are there beforehand, since they
 * could not be made when they are needed. One for each process.
 */
final class LastResort {
    /** "Internal software error", sysexits.h of 4.3BSD. */
    static final int BROKEN = 70;

    /** "Input/output error", sysexits.h of 4.3BSD. */
    static final int DATABASE_CLOSED = 74;

    /** "Temporary failure", sysexits.h of 4.3BSD: another server has taken the site. */
    static final int SITE_TAKEN = 75;

    private static final int DATABASE_IS_CLOSED = 90098; // H2's ErrorCode.DATABASE_IS_CLOSED
    private static final int CLOSED_AT_SHUTDOWN = 90121; // H2's ErrorCode.DATABASE_CALLED_AT_SHUTDOWN
    private static final int DEEPEST = 10;
    private static final Duration TO_FINISH = Duration.ofSeconds(15);
    private static final AtomicInteger status = new AtomicInteger();
    private static final CountDownLatch met = new CountDownLatch(1);
    private static final CountDownLatch ending = new CountDownLatch(1);

    private LastResort() {}

    /** From now on such a fault ends this process, within {@link #TO_FINISH}. */
    static void arm() {
        daemon("last resort", LastResort::finish);
        daemon("last resort of all", LastResort::halt);
        Thread.setDefaultUncaughtExceptionHandler((thread, fault) -> {
            FaultFilter.tell(thread, fault);
            look(fault);
        });
    }

    /** The process is about to end by itself: what closes meanwhile is no fault. */
    static void disarm() {
        status.compareAndSet(0, -1);
    }

    /** Ends the process if this fault is one to end it. Allocates nothing where memory is what is missing. */
    static void look(Throwable fault) {
        int end = endOf(fault);
        if (end != 0) {
            end(end);
        }
    }

    /** Ends the process with this status. */
    static void end(int end) {
        if (status.compareAndSet(0, end)) {
            met.countDown();
        }
    }

    /** The status to end with; 0 for a fault with which the process can go on. */
    static int endOf(Throwable fault) {
        int depth = 0;
        for (Throwable e = fault; e != null && depth < DEEPEST; e = e.getCause()) {
            int end = statusOf(e);
            if (end != 0) {
                return end;
            }
            depth++;
        }
        return 0;
    }

    private static int statusOf(Throwable e) {
        if (e instanceof OutOfMemoryError || e instanceof InternalError || e instanceof NoClassDefFoundError) {
            return BROKEN;
        }
        boolean closed = e instanceof SQLException sql
                && (sql.getErrorCode() == DATABASE_IS_CLOSED || sql.getErrorCode() == CLOSED_AT_SHUTDOWN);
        return closed ? DATABASE_CLOSED : 0;
    }

    private static void finish() {
        await(met);
        ending.countDown();
        FaultFilter.tellEnd(status.get());
        System.exit(status.get());
    }

    private static void halt() {
        await(ending);
        try {
            Thread.sleep(TO_FINISH.toMillis());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        Runtime.getRuntime().halt(status.get());
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static void daemon(String name, Runnable work) {
        var thread = new Thread(work, name);
        thread.setDaemon(true);
        thread.start();
    }
}
