package groundbass.store.node;

import groundbass.store.CannotOpen;
import groundbass.store.RandomId;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * The servers of a site that may have several, as rows. A server that has not been heard of for some seconds is gone; all
 * times here are the database server's, so that no machine's clock matters.
 */
public final class Nodes implements AutoCloseable {
    /** One that hangs for so long is taken for gone; nothing hangs on it but whether another may be set up otherwise. */
    private static final String GONE = "now() - interval '20' second";

    private final Jdbi jdbi;
    private final String id = RandomId.next();
    private final SetUp setUp;
    private final String program;

    /** @param program the version of this program */
    public Nodes(Jdbi jdbi, SetUp setUp, String program) {
        this.jdbi = jdbi;
        this.setUp = setUp;
        this.program = program;
    }

    /** A server that is up. */
    record Node(String place, String publicAddress, String mail) {
        SetUp setUp() {
            return new SetUp(publicAddress, mail);
        }
    }

    /**
     * Enters this server.
     *
     * @throws CannotOpen where one that is up is set up otherwise
     */
    public void enter() {
        jdbi.useTransaction(handle -> {
            // two that start at once see each other
            handle.execute("select id from pulse where id = 1 for update");
            handle.execute("delete from node where seen_at < " + GONE);
            others(handle).forEach(this::refuseIfOther);
            insert(handle);
        });
    }

    private List<Node> others(Handle handle) {
        return handle.createQuery("select place, public_address, mail from node where id <> :id order by started_at")
                .bind("id", id)
                .mapTo(Node.class)
                .list();
    }

    private void refuseIfOther(Node other) {
        setUp.difference(other.setUp()).ifPresent(difference -> {
            throw new CannotOpen("Another server of this site is set up otherwise (" + other.place() + "): "
                    + difference + ". One that has just ended is forgotten after 20 seconds.");
        });
    }

    private void insert(Handle handle) {
        handle.createUpdate("insert into node (id, place, public_address, mail, program, started_at, seen_at)"
                        + " values (:id, :place, :publicAddress, :mail, :program, now(), now())")
                .bind("id", id)
                .bind("place", Place.ofThisProcess())
                .bindMethods(setUp)
                .bind("program", program)
                .execute();
    }

    /** To be called every few seconds. */
    public void beat() {
        jdbi.useTransaction(handle -> {
            int there = handle.execute("update node set seen_at = now() where id = ?", id);
            if (there == 0) {
                insert(handle); // forgotten while the database was away
            }
        });
    }

    @Override
    public void close() {
        jdbi.useHandle(handle -> handle.execute("delete from node where id = ?", id));
    }
}
