package groundbass.publishing.jobs;

import com.github.kagkarlsson.scheduler.Scheduler;
import com.github.kagkarlsson.scheduler.task.CompletionHandler.OnCompleteRemove;
import com.github.kagkarlsson.scheduler.task.CompletionHandler.OnCompleteReschedule;
import com.github.kagkarlsson.scheduler.task.FailureHandler.OnFailureRetryLater;
import com.github.kagkarlsson.scheduler.task.helper.CustomTask;
import com.github.kagkarlsson.scheduler.task.helper.RecurringTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.FixedDelay;
import groundbass.release.ReleaseId;
import java.time.Clock;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Semaphore;
import java.util.function.Consumer;
import javax.sql.DataSource;

/**
 * The work that no request waits for, kept as rows so that it outlives a restart and is shared among nodes: building
 * releases, and passes that come round.
 */
public final class Jobs implements AutoCloseable {
    static final String BUILD = "build-release";

    private static final Duration POLL_EVERY = Duration.ofSeconds(1);
    // a node that died leaves its jobs to the others after four missed heartbeats
    private static final Duration HEARTBEAT = Duration.ofSeconds(5);
    private static final int MISSED_HEARTBEATS = 4;
    private static final Duration STOP_WITHIN = Duration.ofSeconds(10);

    /** Builds are entered as due at once: what is due later than this comes from a clock that was ahead. */
    private static final Duration LONGEST_UNTIL_BUILD = Duration.ofMinutes(1);

    /** A pass goes first where both wait, but no build that has begun ends for it; and one uses several processors itself. */
    private static final int BUILDS_AT_ONCE = 1;
    /** How soon a build is looked at again that a server took up which had its hands full. */
    private static final FixedDelay GIVEN_BACK_FOR = FixedDelay.of(Duration.ofSeconds(2));

    /** After a build could not even be noted as failed; within {@link #LONGEST_UNTIL_BUILD}, or it looks like a wrong clock. */
    private static final Duration TRIED_AGAIN_AFTER = Duration.ofSeconds(30);

    final Scheduler scheduler;
    private final Waker waker;

    private Jobs(Scheduler scheduler, Waker waker) {
        this.scheduler = scheduler;
        this.waker = waker;
    }

    /** Something done again and again, on one node at a time; it may be cut short anywhere and begun anew. */
    public record Pass(String name, Duration every, Runnable work) {}

    /**
     * Starts working.
     *
     * @param build builds one release
     * @param built what follows a build
     * @param threads so many jobs at once; builds never take more than one of them
     * @param clock which goes by itself, and alike on all nodes
     */
    public static Jobs start(
            DataSource database,
            Consumer<ReleaseId> build,
            Runnable built,
            List<Pass> passes,
            int threads,
            Clock clock) {
        var scheduler = Scheduler.create(database, building(build, built))
                .startTasks(passes.stream().map(Jobs::recurring).toList())
                .serializer(new NoData())
                .enablePriority() // passes before builds: hours and letters wait for none of many
                .threads(threads)
                .pollingInterval(POLL_EVERY)
                .heartbeatInterval(HEARTBEAT)
                .missedHeartbeatsLimit(MISSED_HEARTBEATS)
                .shutdownMaxWait(STOP_WITHIN)
                .clock(clock::instant)
                .build();
        scheduler.start();
        return new Jobs(scheduler, new Waker(scheduler, longest(passes), clock::instant).start());
    }

    private static Map<String, Duration> longest(List<Pass> passes) {
        var longest = new HashMap<>(Map.of(BUILD, LONGEST_UNTIL_BUILD));
        passes.forEach(pass -> longest.put(pass.name(), pass.every()));
        return longest;
    }

    static CustomTask<Void> building(Consumer<ReleaseId> build, Runnable built) {
        var permits = new Semaphore(BUILDS_AT_ONCE);
        var tasks = Tasks.custom(BUILD, Void.class).onFailure(new OnFailureRetryLater<>(TRIED_AGAIN_AFTER));
        return tasks.execute((instance, context) -> {
            if (!permits.tryAcquire()) {
                return new OnCompleteReschedule<>(GIVEN_BACK_FOR); // another server may have a hand free sooner
            }
            try {
                build.accept(new ReleaseId(instance.getId()));
                built.run();
                return new OnCompleteRemove<>();
            } finally {
                permits.release();
            }
        });
    }

    private static RecurringTask<Void> recurring(Pass pass) {
        return Tasks.recurring(pass.name(), FixedDelay.of(pass.every()))
                .execute((instance, context) -> pass.work().run());
    }

    @Override
    public void close() {
        waker.close();
        scheduler.stop();
    }
}
