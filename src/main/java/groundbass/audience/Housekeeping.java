package groundbass.audience;

import groundbass.audience.colleague.Invitations;
import groundbass.audience.download.Downloads;
import groundbass.audience.news.NewsReaders;
import groundbass.audience.student.EducatorAccess;
import groundbass.audience.student.PreviewLinks;
import groundbass.audience.student.Sessions;
import groundbass.audience.student.SignIns;
import groundbass.audience.student.Tries;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.ProgramAnswers;
import groundbass.catalog.educator.ProgramTokens;
import groundbass.post.Outbox;

/** All that must not be kept longer than needed, in one idempotent pass; to be run every few minutes. */
public final class Housekeeping {
    private final Downloads downloads;
    private final SignIns signIns;
    private final EducatorAccess access;
    private final PreviewLinks previewLinks;
    private final Sessions sessions;
    private final Outbox outbox;
    private final Audit audit;
    private final Tries tries;
    private final NewsReaders newsReaders;
    private final Invitations invitations;
    private final ProgramTokens programs;
    private final ProgramAnswers answers;
    private final IdleAccounts idle;

    public Housekeeping(
            Downloads downloads,
            SignIns signIns,
            EducatorAccess access,
            PreviewLinks previewLinks,
            Sessions sessions,
            Outbox outbox,
            Audit audit,
            Tries tries,
            NewsReaders newsReaders,
            Invitations invitations,
            ProgramTokens programs,
            ProgramAnswers answers,
            IdleAccounts idle) {
        this.downloads = downloads;
        this.signIns = signIns;
        this.access = access;
        this.previewLinks = previewLinks;
        this.sessions = sessions;
        this.outbox = outbox;
        this.audit = audit;
        this.tries = tries;
        this.newsReaders = newsReaders;
        this.invitations = invitations;
        this.programs = programs;
        this.answers = answers;
        this.idle = idle;
    }

    /**
     * Closes silent downloads, deletes ended sessions, old links, old letters, old
     * sign-ins, old tries, old invitations, news that nobody waits for any more, refusals of addresses that nobody here has,
     * tokens and answers of programs that are over, and accounts that nobody uses, where the site says so.
     */
    public void tidy() {
        downloads.sweep();
        signIns.purge();
        access.purge();
        previewLinks.purge();
        sessions.purge();
        idle.pass(); // before old letters go: it looks which of its own have left
        outbox.purge();
        audit.purgeSignIns();
        tries.purge();
        newsReaders.purge();
        invitations.purge();
        programs.purge();
        answers.purge();
        newsReaders.strangers().forEach(outbox::forgetRefusal);
    }
}
