package groundbass.publishing.jobs;

import com.github.kagkarlsson.scheduler.Clock;
import com.github.kagkarlsson.scheduler.ScheduledExecution;
import com.github.kagkarlsson.scheduler.SchedulerClient;
import com.github.kagkarlsson.scheduler.task.TaskInstanceId;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Map;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Wakes jobs that a clock has put to sleep: one that jumped ahead and was set right again leaves rows behind that are due
 * in a future that never was meant. No job is due later than its own interval; the time between two looks is measured by
 * a clock that does not jump.
 */
final class Waker implements AutoCloseable {
    private static final Logger log = LoggerFactory.getLogger(Waker.class);
    private static final Duration EVERY = Duration.ofSeconds(30);

    private final SchedulerClient client;
    private final Map<String, Duration> longest;
    private final Clock clock;
    private final ScheduledExecutorService timer = Executors.newSingleThreadScheduledExecutor(work -> {
        var thread = new Thread(work, "waker");
        thread.setDaemon(true);
        return thread;
    });

    /** @param longest how far ahead a job of this name may be due */
    Waker(SchedulerClient client, Map<String, Duration> longest, Clock clock) {
        this.client = client;
        this.longest = Map.copyOf(longest);
        this.clock = clock;
    }

    Waker start() {
        timer.scheduleWithFixedDelay(this::lookAfter, 0, EVERY.toSeconds(), TimeUnit.SECONDS);
        return this;
    }

    private void lookAfter() {
        try {
            wake();
        } catch (RuntimeException | Error e) {
            log.warn("no sleeping job can be looked for; trying again in {}", EVERY, e);
        }
    }

    void wake() {
        var now = clock.now();
        var asleep = new ArrayList<TaskInstanceId>();
        client.fetchScheduledExecutions(job -> {
            if (isAsleep(job, now)) {
                asleep.add(job.getTaskInstance());
            }
        });
        for (var job : asleep) {
            client.reschedule(job, now);
            log.warn("the job {} was due too far ahead and is woken; was the clock set?", job.getTaskName());
        }
    }

    private boolean isAsleep(ScheduledExecution<?> job, Instant now) {
        var most = longest.get(job.getTaskInstance().getTaskName());
        return most != null && !job.isPicked() && job.getExecutionTime().isAfter(now.plus(most));
    }

    @Override
    public void close() {
        timer.shutdown();
    }
}
