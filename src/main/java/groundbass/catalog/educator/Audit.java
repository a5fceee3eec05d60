package groundbass.catalog.educator;

import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * Who changed what, append-only but for sign-ins, which are forgotten after a while. An entry is written in the transaction of the change, so neither
 * is there alone.
 */
public final class Audit {
    /** Whoever tried without proving who they are. */
    public static final String STRANGER = "a stranger";
    /** A student; which one is not kept, so that an account can be deleted whole. */
    public static final String STUDENT = "a student";
    /** Whoever has the machine: what is done at the command line. */
    public static final String OPERATOR = "the operator";

    /** How long it is kept who signed in and who was refused. */
    public static final Duration SIGN_INS_KEPT = Duration.ofDays(90);

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

    public void append(Handle handle, EducatorId who, String what, String detail) {
        append(handle, who.value(), what, detail);
    }

    /** Writes an entry of its own, for what changes no row: somebody was let in or turned away. */
    public void note(String who, String what, String detail) {
        jdbi.useHandle(handle -> append(handle, who, what, detail));
    }

    /** @see AuditEntry for what the words mean */
    public void append(Handle handle, String who, String what, String detail) {
        handle.createUpdate(
                        "insert into audit (at, who, what, detail, program) values (:at, :who, :what, :detail, :program)")
                .bind("at", clock.instant())
                .bind("who", who)
                .bind("what", what)
                .bind("detail", detail.substring(0, Math.min(detail.length(), LONGEST_DETAIL)))
                .bind("program", Optional.ofNullable(program.get()))
                .execute();
    }

    /** The latest entries, newest first. */
    public List<AuditEntry> latest(int count) {
        return jdbi.withHandle(handle -> handle.createQuery(
                        "select at, who, what, detail, program from audit order by id desc limit :count")
                .bind("count", count)
                .mapTo(AuditEntry.class)
                .list());
    }

    /**
     * A part of what concerns one educator, newest first: what they did, and what was done by nobody with an account of
     * an educator.
     */
    public List<AuditEntry> concerning(EducatorId educator, int skipped, int count) {
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select at, who, what, detail, program from audit
                        where who = :who or who not in (select id from educator)
                        order by id desc limit :count offset :skipped""")
                .bind("who", educator)
                .bind("count", count)
                .bind("skipped", skipped)
                .mapTo(AuditEntry.class)
                .list());
    }

    /** Deletes sign-ins, good and refused, that are older than {@link #SIGN_INS_KEPT}; all else stays. */
    public int purgeSignIns() {
        return jdbi.withHandle(handle -> handle.createUpdate("""
                        delete from audit where what in ('sign-in.done', 'sign-in.refused') and at < :before""")
                .bind("before", clock.instant().minus(SIGN_INS_KEPT))
                .execute());
    }
}
