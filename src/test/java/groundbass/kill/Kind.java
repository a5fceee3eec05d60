package groundbass.kill;

import java.util.HashSet;
import java.util.Set;
import org.jdbi.v3.core.Handle;

/** What a {@link Victim} acknowledges, and where it must then be found. */
enum Kind {
    /** A download that was begun: its first byte may go. */
    BEGUN("select id from download"),
    /** A download whose end was settled. */
    COMPLETE("select id from download where state = 'complete'"),
    /** A sign-in link that was asked for, told by its address: the link and the letter that carries it. */
    LETTER("select sign_in.email from sign_in join outbox on outbox.recipient = sign_in.email"),
    /** A link that was used, told by its address: the account, what it agreed to, and its session. */
    ACCOUNT("""
            select student.email from student join consent on consent.student_id = student.id
                join session on session.student_id = student.id"""),
    /** A version of a draft, as {@code EPISODE/VERSION}; later ones stand in its place. */
    DRAFT("select episode_id || '/' || version from draft"),
    /** A recording: its row; the file is looked at apart. */
    UPLOAD("select id from upload"),
    /** A release that was ordered: its row, its revision and its place in the queue. */
    RELEASE("""
            select release.id from release join revision on revision.id = release.revision_id
                join scheduled_tasks on scheduled_tasks.task_instance = release.id""");

    private final String kept;

    Kind(String kept) {
        this.kept = kept;
    }

    /** The keys of all that a database holds of this kind. */
    Set<String> keys(Handle handle) {
        return new HashSet<>(handle.createQuery(kept).mapTo(String.class).list());
    }
}
