package groundbass.site;

import groundbass.audience.colleague.Transfers;
import groundbass.audience.news.NewsQueue;
import groundbass.audience.rollup.RollUps;
import groundbass.audience.student.IdleStudents;
import groundbass.audience.student.Sessions;
import groundbass.audience.student.Students;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.educator.ProgramTokens;
import groundbass.catalog.educator.SecondFactors;
import groundbass.post.Outbox;
import java.time.Clock;
import java.util.List;
import org.jdbi.v3.core.Jdbi;

/** What a site knows of people, and the sums of what they took; an operator works with it at the command line, without pages and jobs. */
public record Accounts(
        Jdbi jdbi,
        Audit audit,
        Educators educators,
        SecondFactors factors,
        Outbox outbox,
        NewsQueue newsQueue,
        Students students,
        IdleStudents idleStudents,
        ProgramTokens programs,
        Sessions sessions,
        RollUps rollUps) {
    public static Accounts over(Jdbi jdbi, Clock clock) {
        var audit = new Audit(jdbi, clock);
        var outbox = new Outbox(jdbi, clock);
        var programs = new ProgramTokens(jdbi, audit, clock);
        return new Accounts(
                jdbi,
                audit,
                new Educators(jdbi, audit, clock),
                new SecondFactors(jdbi, audit, clock),
                outbox,
                new NewsQueue(jdbi, clock),
                new Students(jdbi, outbox, audit, clock),
                new IdleStudents(jdbi),
                programs,
                new Sessions(jdbi, programs, clock),
                new RollUps(jdbi, clock));
    }

    /**
     * Makes somebody with a desk the one who keeps the site, whom the operator chose; what was offered of it is offered no
     * more.
     *
     * @return whether their desk is open; nothing has changed where it is not
     */
    public boolean handSiteOver(EducatorId to) {
        return jdbi.inTransaction(handle -> {
            educators.lock(handle, List.of(to));
            if (educators.standing(to).isEmpty()) {
                return false;
            }
            educators.setOwner(handle, to);
            Transfers.endInvitationsToTheSite(handle);
            audit.append(handle, Audit.OPERATOR, AuditWord.SITE_HANDED, to.value());
            return true;
        });
    }
}
