package groundbass.catalog.educator;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.effort.Busy;
import java.util.ArrayList;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executors;
import org.junit.jupiter.api.Test;

class PasswordsTest {
    /** Argon2id with 19 MiB (OWASP Password Storage Cheat Sheet): two of them leave most of 256 MiB to everything else. */
    @Test
    void aSmallHeapMakesFewAtOnce() {
        assertThat(Passwords.atOnce(256L << 20)).isEqualTo(2);
        assertThat(Passwords.atOnce(64L << 20)).isEqualTo(1);
        assertThat(Passwords.atOnce(64L << 30)).isEqualTo(8);
    }

    @Test
    void whoComesWhenAllTurnsAreTakenWaitsOrIsToldToComeAgain() throws Exception {
        String hash = Passwords.hash("four strings and a bow");
        var pool = Executors.newFixedThreadPool(40);
        try {
            var tries = new ArrayList<CompletableFuture<Boolean>>();
            for (int i = 0; i < 40; i++) {
                tries.add(CompletableFuture.supplyAsync(() -> Passwords.matches("four strings and a bow", hash), pool));
            }
            int right = 0;
            for (var each : tries) {
                right += answered(each) ? 1 : 0;
            }
            assertThat(right).isPositive();
        } finally {
            pool.shutdownNow();
        }
        assertThat(Passwords.matches("four strings and a bow", hash)).isTrue();
    }

    /** Whether it was the right password; false where it was not tried. */
    private static boolean answered(CompletableFuture<Boolean> tried) throws InterruptedException {
        try {
            return tried.get();
        } catch (ExecutionException e) {
            assertThat(e.getCause()).isInstanceOf(Busy.class);
            return false;
        }
    }
}
