package groundbass.publishing.jobs;

import com.github.kagkarlsson.scheduler.SchedulerClient;
import com.github.kagkarlsson.scheduler.task.TaskInstance;
import groundbass.release.ReleaseId;
import java.time.Clock;
import javax.sql.DataSource;

/** Enters builds as rows of the job scheduler, which {@link Jobs} then takes up. */
public final class ReleaseQueue implements BuildQueue {
    private final SchedulerClient client;
    private final Clock clock;

    public ReleaseQueue(DataSource database, Clock clock) {
        this.client = SchedulerClient.Builder.create(database)
                .serializer(new NoData())
                .enablePriority() // else its rows have none, and PostgreSQL puts these before all others
                .build();
        this.clock = clock;
    }

    @Override
    public void add(ReleaseId id) {
        client.scheduleIfNotExists(new TaskInstance<>(Jobs.BUILD, id.value()), clock.instant());
    }
}
