package groundbass.effort;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.util.ArrayList;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class ConcurrencyLimitTest {
    @Test
    void neverMoreIsDoneAtOnceThanIsGranted() throws Exception {
        var turns = new ConcurrencyLimit(2, 30, Duration.ofSeconds(20));
        var now = new AtomicInteger();
        var most = new AtomicInteger();
        var pool = Executors.newFixedThreadPool(16);
        try {
            var done = new ArrayList<CompletableFuture<Integer>>();
            for (int i = 0; i < 32; i++) {
                done.add(CompletableFuture.supplyAsync(() -> turns.take(() -> counted(now, most)), pool));
            }
            for (var each : done) {
                assertThat(each.get(20, TimeUnit.SECONDS)).isPositive();
            }
        } finally {
            pool.shutdownNow();
        }
        assertThat(most.get()).isBetween(1, 2);
    }

    private static int counted(AtomicInteger now, AtomicInteger most) {
        int here = now.incrementAndGet();
        most.accumulateAndGet(here, Math::max);
        Thread.yield();
        now.decrementAndGet();
        return here;
    }

    @Test
    void whoFindsTheQueueFullIsToldAtOnceAndWhoWaitsTooLongIsToldThen() throws Exception {
        var turns = new ConcurrencyLimit(1, 1, Duration.ofMillis(50));
        var begun = new CountDownLatch(1);
        var end = new CountDownLatch(1);
        var first = CompletableFuture.runAsync(() -> turns.take(() -> held(begun, end)));
        begun.await();
        // one place in the queue is free: it is taken, and left after the patience of all
        assertThatThrownBy(() -> turns.take(() -> "done")).isInstanceOf(Busy.class);
        end.countDown();
        first.get(10, TimeUnit.SECONDS);
        assertThat(turns.take(() -> "done")).isEqualTo("done");
    }

    @Test
    void aTurnIsGivenBackAfterAFault() {
        var turns = new ConcurrencyLimit(1, 0, Duration.ZERO);
        for (int i = 0; i < 3; i++) {
            assertThatThrownBy(() -> turns.take(() -> {
                        throw new IllegalStateException("a fault");
                    }))
                    .isInstanceOf(IllegalStateException.class);
        }
        assertThat(turns.take(() -> "done")).isEqualTo("done");
    }

    private static String held(CountDownLatch begun, CountDownLatch end) {
        begun.countDown();
        try {
            end.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        return "";
    }
}
