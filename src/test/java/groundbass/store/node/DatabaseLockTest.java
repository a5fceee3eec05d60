package groundbass.store.node;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import groundbass.store.BothDatabases;
import groundbass.store.CannotOpen;
import groundbass.store.Database;
import groundbass.store.StoredValues;
import java.lang.reflect.Proxy;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import org.jdbi.v3.core.ConnectionFactory;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
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

    /** The network was cut: the server has not noticed yet, and lists a session through which nobody speaks any more. */
    @Test
    void whatIsLeftOfItsOwnSessionIsNobodyElse() {
        var cut = new AtomicBoolean();
        var made = new AtomicInteger();
        try (var lock = DatabaseLock.take(() -> made.getAndIncrement() == 0 ? mute(cut) : session(), true)) {
            cut.set(true);
            assertThat(lock.isHeld()).isFalse();
            assertThat(lock.keep()).isEmpty();
            assertThat(lock.isHeld()).isTrue();
            assertThatThrownBy(() -> take(true)).isInstanceOf(CannotOpen.class);
        }
    }

    private Handle session() {
        return Database.session(url, "postgres", "", Place.ofThisProcess());
    }

    /** Through it nothing can be said any more once it was cut, while the server's end stays as it is. */
    private Handle mute(AtomicBoolean cut) {
        var real = session().getConnection();
        var kind = Connection.class;
        ConnectionFactory only = () -> kind.cast(
                Proxy.newProxyInstance(kind.getClassLoader(), new Class<?>[] {kind}, (proxy, method, args) -> {
                    if (cut.get()) {
                        throw new SQLException("connection reset");
                    }
                    return method.invoke(real, args);
                }));
        return Jdbi.create(only).installPlugin(new StoredValues()).open();
    }

    @Test
    void theConnectionEndsWithItsSession() throws SQLException {
        Connection connection;
        try (var session = session()) {
            connection = session.getConnection();
        }
        assertThat(connection.isClosed()).isTrue();
    }

    /** pg_stat_activity hides most of them from a role that has no rights: PostgreSQL's manual, 27.2.3. */
    @Test
    void whoeverHasItUnderAnotherRoleIsToldAsFarAsTheServerTells() throws SQLException {
        execute("create role nobody_in_particular login");
        try (var first = take(true)) {
            assertThat(first.isHeld()).isTrue();
            String asAnybody = url.replaceFirst("\\?.*", ""); // it names the user
            assertThatThrownBy(() -> DatabaseLock.take(asAnybody, "nobody_in_particular", "", true))
                    .isInstanceOf(CannotOpen.class)
                    .hasMessageContaining("in use by another server (process ");
        }
    }

    private DatabaseLock take(boolean alone) {
        return DatabaseLock.take(url, "postgres", "", alone);
    }

    /** As when the server is started anew, or the network is cut. */
    private void endItsSession() throws SQLException {
        execute("select pg_terminate_backend(pid, 5000) from pg_stat_activity"
                + " where datname = current_database() and application_name like 'process %'");
    }

    private void execute(String sql) throws SQLException {
        try (var connection = DriverManager.getConnection(url, "postgres", "");
                var statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }
}
