package groundbass.audience.download;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.UnableToExecuteStatementException;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class GroupCommitTest {
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void everyCallerFindsItsOwnWorkCommitted(Database database) throws Exception {
        try (database) {
            var commits = new GroupCommit(database.jdbi());
            List<Callable<Boolean>> calls = IntStream.range(0, 400)
                    .<Callable<Boolean>>mapToObj(i -> () -> {
                        String name = commits.run(handle -> insert(handle, "name " + i));
                        return isThere(database, name);
                    })
                    .toList();
            assertThat(inThreads(16, calls)).hasSize(400).containsOnly(true);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void workThatFailsTakesNobodyDown(Database database) throws Exception {
        try (database) {
            var commits = new GroupCommit(database.jdbi());
            commits.run(handle -> insert(handle, "taken"));
            // the first piece holds the writer until the others wait behind it, so that they share one transaction
            var holding = new CountDownLatch(1);
            var first = CompletableFuture.supplyAsync(() -> commits.run(handle -> {
                await(holding);
                return insert(handle, "first");
            }));
            List<CompletableFuture<String>> behind = IntStream.range(0, 6)
                    .mapToObj(i -> CompletableFuture.supplyAsync(
                            () -> commits.run(handle -> insert(handle, i % 3 == 0 ? "taken" : "name " + i)),
                            runnable -> new Thread(runnable).start()))
                    .toList();
            holding.countDown();

            assertThat(first.join()).isEqualTo("first");
            for (int i = 0; i < behind.size(); i++) {
                var result = behind.get(i);
                if (i % 3 == 0)
                    assertThatThrownBy(result::join).hasCauseInstanceOf(UnableToExecuteStatementException.class);
                else assertThat(isThere(database, result.join())).isTrue();
            }
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void withoutADatabaseEveryCallerIsTold(Database database) {
        var commits = new GroupCommit(database.jdbi());
        database.close();
        for (int i = 0; i < 2; i++) {
            assertThatThrownBy(() -> commits.run(handle -> insert(handle, "x"))).isInstanceOf(RuntimeException.class);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatNobodyWaitsForIsCommittedInItsTurnAndItsFailureTold(Database database) {
        try (database) {
            var commits = new GroupCommit(database.jdbi());
            var failures = new ConcurrentLinkedQueue<Throwable>();
            commits.later(handle -> insert(handle, "once"), failures::add);
            commits.later(handle -> insert(handle, "once"), failures::add);
            commits.run(handle -> true);
            assertThat(isThere(database, "once")).isTrue();
            assertThat(failures).hasSize(1).hasOnlyElementsOfType(UnableToExecuteStatementException.class);
        }
    }

    private static String insert(Handle handle, String name) {
        handle.execute("insert into setting (name, chosen) values (?, 'x')", name);
        return name;
    }

    private static boolean isThere(Database database, String name) {
        return database.jdbi().withHandle(handle -> handle.select("select chosen from setting where name = ?", name)
                .mapTo(String.class)
                .findOne()
                .isPresent());
    }

    private static void await(CountDownLatch latch) {
        try {
            latch.await();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    private static <T> List<T> inThreads(int threads, List<Callable<T>> calls) throws Exception {
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            var results = new ArrayList<T>();
            for (Future<T> future : pool.invokeAll(calls)) results.add(future.get());
            return results;
        } finally {
            pool.shutdown();
        }
    }
}
