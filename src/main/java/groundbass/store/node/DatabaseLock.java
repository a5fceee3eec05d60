package groundbass.store.node;

import groundbass.store.CannotOpen;
import groundbass.store.Database;
import java.sql.SQLException;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.JdbiException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * One server alone, or several together, work on the database of a PostgreSQL server: a lock of that server
 * (an advisory lock of session level), held by a connection that does nothing else.
 *
 * <p>What is promised. The server frees the lock when the session ends, so a process that died holds nobody up: at once
 * where its machine tells that, and after some 25 seconds where the machine is gone without a word, for that is how long
 * the server asks such a session before it ends it. While {@link #isHeld} says yes, no server that wants the site for
 * itself has it: it asks the server each time, and so it is as true as the answer. A session can be lost under a process
 * that lives (the server was started anew, the network was cut); then {@code isHeld} says no until {@link #keep} has the
 * lock again, and what must not be done by two is not done meanwhile. A session that the server has not given up yet,
 * although this process can no longer speak through it, is its own and ended by it. Where another server came first,
 * {@code keep} says so, and this one has to end: two alone there never are, but for as long as it takes to come round to
 * that question. Rows need no such lock: their transactions are right with several servers.
 *
 * <p>It needs a session of its own from end to end, and so a connection to the server itself, or through something that
 * hands on whole sessions.
 */
public final class DatabaseLock implements AutoCloseable {
    private static final Logger log = LoggerFactory.getLogger(DatabaseLock.class);

    /** Two numbers of our own; a lock is of one database, so that sites on one server do not meet. */
    private static final int OURS = 26466;

    private static final int SITE = 1;
    private static final String KEY = OURS + ", " + SITE;

    private static final String HERS = "l.locktype = 'advisory' and l.classid = " + OURS + " and l.objid = " + SITE
            + " and l.granted"
            + " and l.database = (select oid from pg_database where datname = current_database())";

    /** So long a process that has just been killed may still be taken for alive. */
    private static final String PATIENCE = "1s";

    /** Of a session {@code a}: a number of a process comes again, with its beginning it does not. */
    private static final String ID = "a.pid || '@' || extract(epoch from a.backend_start)";

    private static final String LOCK_NOT_AVAILABLE = "55P03"; // PostgreSQL's manual, appendix A

    private static final int TRIES = 3;

    private final Supplier<Handle> sessions;
    private final boolean alone;
    private Optional<Session> session = Optional.empty();
    /** Sessions of this process that the server may still hold open. */
    private final Set<String> abandoned = new HashSet<>();

    /** @param id how the server tells it from every other session, at any time */
    private record Session(Handle handle, String id) {}

    private DatabaseLock(Supplier<Handle> sessions, boolean alone) {
        this.sessions = sessions;
        this.alone = alone;
    }

    /**
     * @param alone whether no other server may work on the database meanwhile; else only none that wants it alone
     * @throws CannotOpen where that cannot be had; the message says who has it, since when, and what to do
     */
    public static DatabaseLock take(String url, String user, String password, boolean alone) {
        return take(() -> Database.session(url, user, password, Place.ofThisProcess()), alone);
    }

    static DatabaseLock take(Supplier<Handle> sessions, boolean alone) {
        var lock = new DatabaseLock(sessions, alone);
        List<Holder> others = List.of();
        for (int i = 0; i < TRIES && lock.session.isEmpty() && others.isEmpty(); i++) {
            others = lock.acquire();
        }
        if (lock.session.isEmpty()) {
            throw new CannotOpen(lock.refusal(others.isEmpty() ? "it has just ended; try again" : told(others)));
        }
        return lock;
    }

    private String refusal(String others) {
        return alone
                ? "The database is in use by another server (" + others + "). A restore, and a site whose files lie in"
                        + " a folder (--data), need it for themselves: stop that one first. Several servers of one site"
                        + " need an object store (--files)."
                : "The database is in use by a restore, or by a server whose files lie in a folder of its own ("
                        + others + "). Wait until the restore is done; or stop that server first, and bring its files"
                        + " into the object store; see \"Several machines\" in the operator's guide.";
    }

    /** Whether this process has the lock at this moment. */
    public synchronized boolean isHeld() {
        return session.map(Session::handle).filter(DatabaseLock::holds).isPresent();
    }

    /**
     * To be called every few seconds: takes the lock again where its session was lost.
     *
     * @return who has it, where another server came first; this one must not go on
     */
    public synchronized Optional<String> keep() {
        if (isHeld()) {
            return Optional.empty();
        }
        drop();
        try {
            var others = acquire();
            if (session.isPresent()) {
                log.warn("the connection that keeps this server's place was lost; it is there again");
            }
            return others.isEmpty() ? Optional.empty() : Optional.of(told(others));
        } catch (CannotOpen e) {
            log.warn("the connection that keeps this server's place is lost: {}", e.getMessage());
            return Optional.empty();
        }
    }

    /** @return who has it, if somebody else has; empty also where whoever had it has just ended, and it is not taken yet */
    private synchronized List<Holder> acquire() {
        var fresh = sessions.get();
        var id = Optional.<String>empty();
        try {
            id = Optional.of(id(fresh));
            endAbandoned(fresh);
            if (locks(fresh)) {
                session = Optional.of(new Session(fresh, id.get()));
                abandoned.clear();
                return List.of();
            }
            var others = holders(fresh);
            close(fresh, id);
            return others;
        } catch (RuntimeException e) {
            close(fresh, id);
            throw new CannotOpen("The database does not answer: " + e.getMessage(), e);
        }
    }

    private static String id(Handle fresh) {
        return fresh.createQuery("select " + ID + " from pg_stat_activity a where a.pid = pg_backend_pid()")
                .mapTo(String.class)
                .one();
    }

    /** Where the network was cut, the server takes a while to see that nobody is there any more. */
    private void endAbandoned(Handle fresh) {
        for (String id : abandoned) {
            fresh.createQuery("select pg_terminate_backend(a.pid) from pg_stat_activity a where " + ID + " = :id")
                    .bind("id", id)
                    .mapTo(Boolean.class)
                    .list();
        }
    }

    private boolean locks(Handle fresh) {
        // a machine that vanished is asked three times and then given up
        fresh.execute("set tcp_keepalives_idle = 10");
        fresh.execute("set tcp_keepalives_interval = 5");
        fresh.execute("set tcp_keepalives_count = 3");
        fresh.execute("set idle_session_timeout = 0");
        fresh.execute("set lock_timeout = '" + PATIENCE + "'");
        try {
            fresh.execute("select pg_advisory_lock" + (alone ? "" : "_shared") + "(" + KEY + ")");
            return true;
        } catch (JdbiException e) {
            if (e.getCause() instanceof SQLException sql && LOCK_NOT_AVAILABLE.equals(sql.getSQLState())) {
                return false;
            }
            throw e;
        }
    }

    /** Who has the lock, as the server lists it. */
    record Holder(Optional<String> name, Optional<String> address, Optional<Instant> since, Optional<String> id) {
        @Override
        public String toString() {
            return name.orElse("another user's process")
                    + address.map(at -> " at " + at).orElse("")
                    + since.map(at -> ", since " + at.truncatedTo(ChronoUnit.SECONDS))
                            .orElse("");
        }
    }

    /** Of another role's sessions the server shows little more than that they are there. Our own are nobody else. */
    private List<Holder> holders(Handle fresh) {
        return fresh
                .createQuery("select a.application_name as name, host(a.client_addr) as address,"
                        + " a.backend_start as since, " + ID
                        + " as id from pg_locks l join pg_stat_activity a on a.pid = l.pid where " + HERS)
                .mapTo(Holder.class)
                .list()
                .stream()
                .filter(holder -> holder.id().filter(abandoned::contains).isEmpty())
                .toList();
    }

    private static String told(List<Holder> holders) {
        return holders.stream().map(Holder::toString).collect(Collectors.joining("; "));
    }

    private static boolean holds(Handle one) {
        try {
            return one.createQuery("select count(*) from pg_locks l where l.pid = pg_backend_pid() and " + HERS)
                            .mapTo(Integer.class)
                            .one()
                    > 0;
        } catch (JdbiException e) {
            log.debug("the session that holds the lock is lost", e);
            return false;
        }
    }

    private void drop() {
        session.ifPresent(lost -> close(lost.handle(), Optional.of(lost.id())));
        session = Optional.empty();
    }

    /** The server frees the lock with the session anyhow; by word it has done so when this returns. */
    private void close(Handle one, Optional<String> id) {
        try (one) {
            one.execute("select pg_advisory_unlock_all()");
        } catch (RuntimeException e) {
            log.debug("a lost session cannot be closed by word", e);
            id.ifPresent(abandoned::add);
        }
    }

    @Override
    public synchronized void close() {
        drop();
    }
}
