package groundbass.publishing;

import com.github.kagkarlsson.scheduler.Scheduler;
import com.github.kagkarlsson.scheduler.task.helper.OneTimeTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.FixedDelay;
import groundbass.release.BuildQueue;
import groundbass.release.ReleaseId;
import java.time.Duration;
import java.time.Instant;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javax.sql.DataSource;

/**
 * The work that no request waits for, kept as rows so that it outlives a restart: building releases, and the calendar's
 * pass every few seconds. What is added before {@link #start} is found by the first pass.
 */
public final class Jobs implements BuildQueue, AutoCloseable {
    private static final Duration PASS_EVERY = Duration.ofSeconds(5);
    private static final Duration POLL_EVERY = Duration.ofSeconds(1);
    // a node that died leaves its jobs to the others after four missed heartbeats
    private static final Duration HEARTBEAT = Duration.ofSeconds(5);
    private static final int MISSED_HEARTBEATS = 4;
    private static final Duration STOP_WITHIN = Duration.ofSeconds(10);

    private final Scheduler scheduler;
    private final OneTimeTask<Void> building;

    private Jobs(Scheduler scheduler, OneTimeTask<Void> building) {
        this.scheduler = scheduler;
        this.building = building;
    }

    /** What the jobs do; told after the queue exists, because going live adds to it. */
    public record Work(Consumer<ReleaseId> build, Runnable pass) {}

    /** Makes the scheduler without starting it; {@code work} is asked when the first job runs. */
    public static Jobs of(DataSource database, Supplier<Work> work, int threads) {
        var building = Tasks.oneTime("build-release").execute((instance, context) -> {
            work.get().build().accept(new ReleaseId(instance.getId()));
            work.get().pass().run();
        });
        var passing = Tasks.recurring("going-live", FixedDelay.of(PASS_EVERY))
                .execute((instance, context) -> work.get().pass().run());
        var scheduler = Scheduler.create(database, building)
                .startTasks(passing)
                .threads(threads)
                .pollingInterval(POLL_EVERY)
                .heartbeatInterval(HEARTBEAT)
                .missedHeartbeatsLimit(MISSED_HEARTBEATS)
                .shutdownMaxWait(STOP_WITHIN)
                .build();
        return new Jobs(scheduler, building);
    }

    public void start() {
        scheduler.start();
    }

    @Override
    public void add(ReleaseId id) {
        scheduler.scheduleIfNotExists(building.instance(id.value()), Instant.EPOCH);
        scheduler.triggerCheckForDueExecutions();
    }

    @Override
    public void close() {
        scheduler.stop();
    }
}
