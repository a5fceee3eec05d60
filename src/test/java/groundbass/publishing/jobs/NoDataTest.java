package groundbass.publishing.jobs;

import static org.assertj.core.api.Assertions.assertThat;

import com.github.kagkarlsson.scheduler.task.TaskInstanceId;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.io.Serializable;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class NoDataTest {
    private static final AtomicInteger MADE = new AtomicInteger();

    /** Something that does what it likes as soon as it is read. */
    private static final class Trap implements Serializable {
        private static final long serialVersionUID = 1L;

        private void readObject(ObjectInputStream in) throws IOException, ClassNotFoundException {
            in.defaultReadObject();
            MADE.incrementAndGet();
        }
    }

    /** OWASP ASVS 5.0, 1.5.2: a row may come out of a backup that a stranger has written. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatStandsInAJobsRowIsNotMadeIntoAnObject(Database database) throws IOException {
        try (database) {
            var hour = Clock.systemUTC().instant().plus(Duration.ofSeconds(30));
            byte[] written = written(new Trap());
            database.jdbi()
                    .useHandle(handle -> handle.execute(
                            "insert into scheduled_tasks (task_name, task_instance, task_data, execution_time, picked, version)"
                                    + " values (?, 'one', ?, ?, false, 1)",
                            Jobs.BUILD,
                            written,
                            Timestamp.from(hour)));
            try (var jobs = Jobs.start(database.dataSource(), id -> {}, () -> {}, List.of(), 1, Clock.systemUTC())) {
                var row = jobs.scheduler.getScheduledExecution(TaskInstanceId.of(Jobs.BUILD, "one"));
                assertThat(row.orElseThrow().getData()).isNull();
            }
            assertThat(MADE).hasValue(0);
        }
    }

    private static byte[] written(Object object) throws IOException {
        var bytes = new ByteArrayOutputStream();
        try (var out = new ObjectOutputStream(bytes)) {
            out.writeObject(object);
        }
        return bytes.toByteArray();
    }
}
