package groundbass.audience;

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
    private final ProgramTokens programs;
    private final ProgramAnswers answers;

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
            ProgramTokens programs,
            ProgramAnswers answers) {
        this.downloads = downloads;
        this.signIns = signIns;
        this.access = access;
        this.previewLinks = previewLinks;
        this.sessions = sessions;
        this.outbox = outbox;
        this.audit = audit;
        this.tries = tries;
        this.newsReaders = newsReaders;
        this.programs = programs;
        this.answers = answers;
    }

    /**
     * Closes silent downloads, destroys the day-old visitor key, deletes ended sessions, old links, old letters, old
     * sign-ins, old tries, news that nobody waits for any more, refusals of addresses that nobody here has, and tokens and
     * answers of programs that are over.
     */
    public void tidy() {
        downloads.sweep();
        signIns.purge();
        access.purge();
        previewLinks.purge();
        sessions.purge();
        outbox.purge();
        audit.purgeSignIns();
        tries.purge();
        newsReaders.purge();
        programs.purge();
        answers.purge();
        newsReaders.strangers().forEach(outbox::forgetRefusal);
    }
}
