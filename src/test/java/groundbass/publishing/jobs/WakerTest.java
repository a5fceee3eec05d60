package groundbass.publishing.jobs;

import static org.assertj.core.api.Assertions.assertThat;

import com.github.kagkarlsson.scheduler.SchedulerClient;
import com.github.kagkarlsson.scheduler.task.TaskInstance;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class WakerTest {
    private static final Instant NOW = Instant.parse("2030-03-01T12:00:00Z");
    private static final Duration INTERVAL = Duration.ofMinutes(5);

    /** What a clock leaves behind that was a day ahead for a moment: rows that are due tomorrow. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatAClockPutToSleepIsDueNow(Database database) {
        try (database) {
            var client = client(database);
            client.scheduleIfNotExists(new TaskInstance<>("trial", "one"), NOW.plus(Duration.ofDays(1)));
            waker(client).wake();
            assertThat(due(client)).isEqualTo(NOW);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatIsDueWithinItsIntervalSleepsOn(Database database) {
        try (database) {
            var client = client(database);
            client.scheduleIfNotExists(new TaskInstance<>("trial", "one"), NOW.plus(INTERVAL));
            waker(client).wake();
            assertThat(due(client)).isEqualTo(NOW.plus(INTERVAL));
        }
    }

    private static SchedulerClient client(Database database) {
        var known = Tasks.oneTime("trial").execute((instance, context) -> {});
        return SchedulerClient.Builder.create(database.dataSource(), List.of(known))
                .build();
    }

    private static Waker waker(SchedulerClient client) {
        return new Waker(client, Map.of("trial", INTERVAL), () -> NOW);
    }

    private static Instant due(SchedulerClient client) {
        return client.getScheduledExecution(new TaskInstance<>("trial", "one"))
                .orElseThrow()
                .getExecutionTime();
    }
}
