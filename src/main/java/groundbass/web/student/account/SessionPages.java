package groundbass.web.student.account;

import groundbass.audience.student.Person;
import groundbass.audience.student.Sessions;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditWord;
import groundbass.web.shell.AccessFilter;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Optional;

/** Ends a student's sessions: one, or all of them. */
public final class SessionPages implements PageGroup {
    private static final String PATH = "/me/sessions";

    private final AccessFilter accessFilter;
    private final Sessions sessions;
    private final Audit audit;

    public SessionPages(AccessFilter accessFilter, Sessions sessions, Audit audit) {
        this.accessFilter = accessFilter;
        this.sessions = sessions;
        this.audit = audit;
    }

    @Override
    public void addTo(Routes routes) {
        routes.post(PATH, Role.STUDENT, this::endOne);
        routes.post(PATH + "/all", Role.STUDENT, this::endAll);
    }

    private void endOne(Context ctx) {
        String number = Optional.ofNullable(ctx.formParam("number")).orElse("");
        if (sessions.close(student(ctx), number)) {
            audit.note(Audit.STUDENT, AuditWord.SESSIONS_ENDED, "");
        }
        Flash.say(ctx, "session.ended");
        ctx.redirect("/me#sessions", HttpStatus.SEE_OTHER);
    }

    private void endAll(Context ctx) {
        sessions.closeAll(student(ctx));
        audit.note(Audit.STUDENT, AuditWord.SESSIONS_ENDED, "");
        Flash.say(ctx, "sessions.ended");
        ctx.redirect("/", HttpStatus.SEE_OTHER);
    }

    private Person student(Context ctx) {
        return new Person.OfStudent(accessFilter.principal(ctx).student().orElseThrow());
    }
}
