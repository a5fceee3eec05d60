package groundbass.publishing.jobs;

import static org.assertj.core.api.Assertions.assertThat;

import com.github.kagkarlsson.scheduler.task.TaskInstance;
import com.github.kagkarlsson.scheduler.testhelper.SettableClock;
import com.github.kagkarlsson.scheduler.testhelper.TestHelper;
import groundbass.publishing.jobs.Jobs.Pass;
import groundbass.release.ReleaseId;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class JobsTest {
    private static final long SOON_SECONDS = 60;

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void buildsWhatWasAddedBeforeAndAfterTheStart(Database database) throws InterruptedException {
        try (database) {
            var queue = new ReleaseQueue(database.dataSource(), Clock.systemUTC());
            var before = ReleaseId.next();
            var after = ReleaseId.next();
            var built = new CopyOnWriteArrayList<ReleaseId>();
            var followed = new CountDownLatch(2);
            queue.add(before);
            queue.add(before);
            var jobs = start(database, built, followed, List.of());
            try {
                queue.add(after);
                assertThat(followed.await(SOON_SECONDS, TimeUnit.SECONDS)).isTrue();
            } finally {
                jobs.close();
            }
            assertThat(built).containsExactlyInAnyOrder(before, after);
        }
    }

    /** Two servers of one site; a third was killed at work, and its row says so still. */
    @Test
    void eachBuildIsDoneByOneServerAndOneThatIsGoneIsTakenOver() throws InterruptedException {
        try (var database = Database.open(BothDatabases.migratedPostgresUrl(), "postgres", "")) {
            var queue = new ReleaseQueue(database.dataSource(), Clock.systemUTC());
            var ids = Stream.generate(ReleaseId::next).limit(20).toList();
            ids.forEach(queue::add);
            database.jdbi()
                    .useHandle(handle -> handle.execute(
                            "update scheduled_tasks set picked = true, picked_by = 'killed',"
                                    + " last_heartbeat = now() - interval '1' minute where task_instance = ?",
                            ids.get(0).value()));
            var built = new CopyOnWriteArrayList<ReleaseId>();
            var followed = new CountDownLatch(ids.size());
            var one = start(database, built, followed, List.of());
            var other = start(database, built, followed, List.of());
            try {
                assertThat(followed.await(SOON_SECONDS, TimeUnit.SECONDS)).isTrue();
            } finally {
                one.close();
                other.close();
            }
            assertThat(built).containsExactlyInAnyOrderElementsOf(ids);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aPassComesRoundAgainAfterItFailed(Database database) throws InterruptedException {
        try (database) {
            var rounds = new CountDownLatch(2);
            var pass = new Pass("trial", Duration.ofMillis(100), () -> {
                rounds.countDown();
                throw new IllegalStateException("a string broke");
            });
            var jobs = start(database, new CopyOnWriteArrayList<>(), new CountDownLatch(0), List.of(pass));
            try {
                assertThat(rounds.await(SOON_SECONDS, TimeUnit.SECONDS)).isTrue();
            } finally {
                jobs.close();
            }
        }
    }

    /** Fifteen lessons that are all to be drawn anew; an hour that has come waits for none of them. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aPassComesBeforeBuildsThatWaitedLonger(Database database) throws InterruptedException {
        try (database) {
            var queue = new ReleaseQueue(database.dataSource(), Clock.systemUTC());
            Stream.generate(ReleaseId::next).limit(15).forEach(queue::add);
            var done = new CopyOnWriteArrayList<String>();
            var all = new CountDownLatch(16);
            var pass = new Pass("going-live", Duration.ofHours(1), () -> {
                done.add("going-live");
                all.countDown();
            });
            var jobs = Jobs.start(
                    database.dataSource(),
                    id -> done.add("build"),
                    all::countDown,
                    List.of(pass),
                    1,
                    Clock.systemUTC());
            try {
                assertThat(all.await(SOON_SECONDS, TimeUnit.SECONDS)).isTrue();
            } finally {
                jobs.close();
            }
            assertThat(done).startsWith("going-live");
        }
    }

    /** Builds that last, as many as a server could take up: hours and letters come round all the same. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void buildsNeverTakeEveryThread(Database database) throws InterruptedException {
        try (database) {
            var queue = new ReleaseQueue(database.dataSource(), Clock.systemUTC());
            Stream.generate(ReleaseId::next).limit(3).forEach(queue::add);
            var end = new CountDownLatch(1);
            var built = new CountDownLatch(3);
            var rounds = new AtomicInteger(); // since a build was begun last: after the last one there is time for more
            var cameRound = new CountDownLatch(1);
            var pass = new Pass("going-live", Duration.ofMillis(100), () -> {
                if (rounds.incrementAndGet() == 3) {
                    cameRound.countDown();
                }
            });
            var jobs = Jobs.start(
                    database.dataSource(),
                    id -> {
                        rounds.set(0);
                        wait(end);
                    },
                    built::countDown,
                    List.of(pass),
                    2,
                    Clock.systemUTC());
            try {
                assertThat(cameRound.await(SOON_SECONDS, TimeUnit.SECONDS)).isTrue();
                end.countDown();
                assertThat(built.await(SOON_SECONDS, TimeUnit.SECONDS)).isTrue();
            } finally {
                end.countDown();
                jobs.close();
            }
        }
    }

    /** Within a minute: what is due later is taken for what a wrong clock left behind. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aBuildThatThrowsIsTriedAgainSoon(Database database) {
        try (database) {
            var clock = new SettableClock();
            clock.set(Instant.parse("2026-03-02T09:00:00Z")); // a moment that a database keeps without rounding it up
            var tries = new ArrayList<ReleaseId>();
            var task = Jobs.building(
                    id -> {
                        tries.add(id);
                        throw new IllegalStateException("the database was away");
                    },
                    () -> {});
            var scheduler = TestHelper.createManualScheduler(database.dataSource(), task)
                    .clock(clock)
                    .build();
            var id = ReleaseId.next();
            scheduler.schedule(new TaskInstance<>(Jobs.BUILD, id.value()), clock.now());
            scheduler.runAnyDueExecutions();
            assertThat(tries).containsExactly(id);
            clock.tick(Duration.ofSeconds(29));
            scheduler.runAnyDueExecutions();
            assertThat(tries).hasSize(1);
            clock.tick(Duration.ofSeconds(1));
            scheduler.runAnyDueExecutions();
            assertThat(tries).containsExactly(id, id);
        }
    }

    private static void wait(CountDownLatch end) {
        try {
            end.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static Jobs start(Database database, List<ReleaseId> built, CountDownLatch followed, List<Pass> passes) {
        return Jobs.start(database.dataSource(), built::add, followed::countDown, passes, 2, Clock.systemUTC());
    }
}
