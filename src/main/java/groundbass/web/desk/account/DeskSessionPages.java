package groundbass.web.desk.account;

import groundbass.audience.student.Person;
import groundbass.audience.student.Sessions;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.EducatorId;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;

/** Ends an educator's sessions: one, or all of them. */
public final class DeskSessionPages implements PageGroup {
    private static final String PATH = AccountPages.PATH + "/sessions";

    private final DeskContext desk;
    private final Sessions sessions;
    private final Audit audit;

    public DeskSessionPages(DeskContext desk, Sessions sessions, Audit audit) {
        this.desk = desk;
        this.sessions = sessions;
        this.audit = audit;
    }

    @Override
    public void addTo(Routes routes) {
        routes.post(PATH, Role.EDUCATOR, this::endOne);
        routes.post(PATH + "/all", Role.EDUCATOR, this::endAll);
    }

    private void endOne(Context ctx) {
        var who = desk.educator(ctx);
        if (sessions.close(new Person.OfEducator(who), FormParameters.text(ctx, "number"))) {
            note(who);
        }
        Flash.say(ctx, "session.ended");
        ctx.redirect(AccountPages.PATH + "#sessions", HttpStatus.SEE_OTHER);
    }

    private void endAll(Context ctx) {
        var who = desk.educator(ctx);
        sessions.closeAll(new Person.OfEducator(who));
        note(who);
        Flash.say(ctx, "sessions.ended");
        ctx.redirect("/desk/sign-in", HttpStatus.SEE_OTHER);
    }

    private void note(EducatorId who) {
        audit.note(who.value(), AuditWord.SESSIONS_ENDED, who.value());
    }
}
