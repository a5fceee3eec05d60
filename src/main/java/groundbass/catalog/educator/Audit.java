package groundbass.catalog.educator;

import groundbass.store.RequestId;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.Query;

/**
 * Who changed what, append-only but for sign-ins, which are forgotten after a while. An entry is written in the transaction of the change, so neither
 * is there alone.
 */
public final class Audit {
    /** Whoever tried without proving who they are. */
    public static final String STRANGER = "a stranger";
    /** A student; which one is not kept, so that an account can be deleted whole. */
    public static final String STUDENT = "a student";
    /** What was promised for an hour, and what is done when some time has passed. */
    public static final String CALENDAR = "calendar";
    /** Whoever has the machine: what is done at the command line. */
    public static final String OPERATOR = "the operator";

    /** How long it is kept who signed in and who was refused. */
    public static final Duration SIGN_INS_KEPT = Duration.ofDays(90);

    private static final String CONCERNING = """
            where who = :who or detail = :who
            or (what in ('colleague.ended', 'series.handed') and detail like '% ' || :who)
            or (who = :calendar and what = 'release.published')""";

    private static final int LONGEST_DETAIL = 2000;

    private final Jdbi jdbi;
    private final Clock clock;
    private final ThreadLocal<String> program = new ThreadLocal<>();

    public Audit(Jdbi jdbi, Clock clock) {
        this.jdbi = jdbi;
        this.clock = clock;
    }

    /** Something that may fail in one way. */
    public interface Work<E extends Exception> {
        void run() throws E;
    }

    /**
     * Does what a program asks for, for the educator whose program it is: what is appended by this thread meanwhile says
     * that the program did it.
     *
     * @param name what the educator calls the program
     */
    public <E extends Exception> void byProgram(String name, Work<E> work) throws E {
        program.set(name);
        try {
            work.run();
        } finally {
            program.remove();
        }
    }

    public void append(Handle handle, EducatorId who, AuditWord what, String detail) {
        append(handle, who.value(), what, detail);
    }

    /** Writes an entry of its own, for what changes no row: somebody was let in or turned away. */
    public void note(String who, AuditWord what, String detail) {
        jdbi.useHandle(handle -> append(handle, who, what, detail));
    }

    public void append(Handle handle, String who, AuditWord what, String detail) {
        handle.createUpdate("""
                        insert into audit (at, who, what, detail, program, request)
                        values (:at, :who, :what, :detail, :program, :request)""")
                .bind("at", clock.instant())
                .bind("who", who)
                .bind("what", what)
                .bind("detail", detail.substring(0, Math.min(detail.length(), LONGEST_DETAIL)))
                .bind("program", Optional.ofNullable(program.get()))
                .bind("request", RequestId.current())
                .execute();
    }

    /** The latest entries, newest first. */
    public List<AuditEntry> latest(int count) {
        return jdbi.withHandle(handle -> handle.createQuery(
                        "select at, who, what, detail, program, request from audit order by id desc limit :count")
                .bind("count", count)
                .mapTo(AuditEntry.class)
                .list());
    }

    /** A part of all of it, newest first: for who keeps the site. */
    public List<AuditEntry> all(int skipped, int count) {
        return jdbi.withHandle(handle ->
                part(handle, "", skipped, count).mapTo(AuditEntry.class).list());
    }

    /**
     * A part of what concerns one educator, newest first: what they did, what was done to them, and what went out at its
     * hour. The texts of other entries may end in anything, so that only those are read to their last word that name a
     * person there.
     */
    public List<AuditEntry> concerning(EducatorId educator, int skipped, int count) {
        return jdbi.withHandle(handle -> part(handle, CONCERNING, skipped, count)
                .bind("who", educator)
                .bind("calendar", CALENDAR)
                .mapTo(AuditEntry.class)
                .list());
    }

    private static Query part(Handle handle, String which, int skipped, int count) {
        return handle.createQuery("select at, who, what, detail, program, request from audit " + which
                        + " order by id desc limit :count offset :skipped")
                .bind("count", count)
                .bind("skipped", skipped);
    }

    /** Deletes sign-ins and other proofs of who somebody is, good and refused, that are older than {@link #SIGN_INS_KEPT}; all else stays. */
    public int purgeSignIns() {
        return jdbi.withHandle(handle -> handle.createUpdate("""
                        delete from audit where at < :before
                        and what in ('sign-in.done', 'sign-in.refused', 'entry.refused', 'present.refused')""")
                .bind("before", clock.instant().minus(SIGN_INS_KEPT))
                .execute());
    }
}
