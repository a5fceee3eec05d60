package groundbass.store.node;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import groundbass.store.BothDatabases;
import groundbass.store.CannotOpen;
import java.sql.DriverManager;
import java.sql.SQLException;
import org.junit.jupiter.api.Test;

/** What is expected of the server: PostgreSQL's manual, "Advisory Locks" (13.3.5) and pg_locks (52.12). */
class DatabaseLockTest {
    private final String url = BothDatabases.migratedPostgresUrl();

    @Test
    void whoWantsASiteAloneIsRefusedByNameWhileAnotherHasItAndComesInWhenThatEnds() {
        try (var first = take(true)) {
            assertThat(first.isHeld()).isTrue();
            assertThatThrownBy(() -> take(true))
                    .isInstanceOf(CannotOpen.class)
                    .hasMessageContainingAll(Place.ofThisProcess(), ", since 20", "stop that one first", "--files");
        }
        try (var several = take(false);
                var more = take(false)) {
            assertThat(several.isHeld()).isTrue();
            assertThat(more.isHeld()).isTrue();
            assertThatThrownBy(() -> take(true)).isInstanceOf(CannotOpen.class);
        }
    }

    @Test
    void oneSiteOnAServerIsNoOthers() {
        try (var one = take(true);
                var other = DatabaseLock.take(BothDatabases.migratedPostgresUrl(), "postgres", "", true)) {
            assertThat(one.isHeld() && other.isHeld()).isTrue();
        }
    }

    @Test
    void aLostSessionIsNoticedAtOnceAndTheLockTakenAgain() throws SQLException {
        try (var lock = take(true)) {
            endItsSession();
            assertThat(lock.isHeld()).isFalse();
            assertThat(lock.keep()).isEmpty();
            assertThat(lock.isHeld()).isTrue();
            assertThatThrownBy(() -> take(true)).isInstanceOf(CannotOpen.class);
        }
    }

    @Test
    void whoeverLostItToAnotherIsTold() throws SQLException {
        try (var lock = take(true)) {
            endItsSession();
            try (var other = take(true)) {
                assertThat(other.isHeld()).isTrue();
                assertThat(lock.keep().orElseThrow()).contains(Place.ofThisProcess());
                assertThat(lock.isHeld()).isFalse();
            }
        }
    }

    private DatabaseLock take(boolean alone) {
        return DatabaseLock.take(url, "postgres", "", alone);
    }

    /** As when the server is started anew, or the network is cut. */
    private void endItsSession() throws SQLException {
        try (var connection = DriverManager.getConnection(url, "postgres", "");
                var statement = connection.createStatement()) {
            statement.execute("select pg_terminate_backend(pid, 5000) from pg_stat_activity"
                    + " where datname = current_database() and application_name like 'process %'");
        }
    }
}
