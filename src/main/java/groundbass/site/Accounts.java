package groundbass.site;

import groundbass.audience.news.NewsQueue;
import groundbass.audience.student.Sessions;
import groundbass.audience.student.Students;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.educator.ProgramTokens;
import groundbass.catalog.educator.SecondFactors;
import groundbass.post.Outbox;
import java.time.Clock;
import org.jdbi.v3.core.Jdbi;

/** What a site knows of people; an operator works with it at the command line, without pages and jobs. */
public record Accounts(
        Audit audit,
        Educators educators,
        SecondFactors factors,
        Outbox outbox,
        NewsQueue newsQueue,
        Students students,
        ProgramTokens programs,
        Sessions sessions) {
    public static Accounts over(Jdbi jdbi, Clock clock) {
        var audit = new Audit(jdbi, clock);
        var outbox = new Outbox(jdbi, clock);
        var programs = new ProgramTokens(jdbi, audit, clock);
        return new Accounts(
                audit,
                new Educators(jdbi, audit, clock),
                new SecondFactors(jdbi, audit, clock),
                outbox,
                new NewsQueue(jdbi, clock),
                new Students(jdbi, outbox, audit, clock),
                programs,
                new Sessions(jdbi, programs, clock));
    }
}
