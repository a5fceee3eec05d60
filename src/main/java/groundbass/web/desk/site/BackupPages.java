package groundbass.web.desk.site;

import groundbass.backup.Backup;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.Educators;
import groundbass.form.FieldProblem;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.EducatorSignIn;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.FieldProblems;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.concurrent.Semaphore;

/**
 * The whole site as one file, for whoever answers for it. It holds everybody's addresses, so the password is asked for
 * once more; and it reads everything, so one is made at a time.
 */
public final class BackupPages implements PageGroup {
    private static final String PATH = "/desk/backup";
    private static final String TEMPLATE = "desk/backup";

    private final DeskContext desk;
    private final Educators educators;
    private final EducatorSignIn signIn;
    private final Audit audit;
    private final Backup backup;
    private final Clock clock;
    private final Semaphore free = new Semaphore(1);

    public BackupPages(
            DeskContext desk, Educators educators, EducatorSignIn signIn, Audit audit, Backup backup, Clock clock) {
        this.desk = desk;
        this.educators = educators;
        this.signIn = signIn;
        this.audit = audit;
        this.backup = backup;
        this.clock = clock;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.OWNER, ctx -> desk.pages().show(ctx, TEMPLATE, view(ctx, FieldProblems.NONE)));
        routes.post(PATH, Role.OWNER, this::make);
    }

    private void make(Context ctx) throws IOException {
        var who = educator(ctx);
        var doubt = signIn.doubt(ctx, who); // secrets of second factors are in it, too
        if (doubt.isPresent()) {
            showAgain(ctx, doubt.get());
            return;
        }
        if (!free.tryAcquire()) {
            showAgain(ctx, FieldProblem.of("present", "desk.backup.busy"));
            ctx.status(HttpStatus.SERVICE_UNAVAILABLE);
            return;
        }
        try {
            audit.note(who.id().value(), AuditWord.BACKUP_MADE, "");
            send(ctx);
        } finally {
            free.release();
        }
    }

    private void showAgain(Context ctx, FieldProblem problem) {
        desk.pages().showAgain(ctx, TEMPLATE, view(ctx, new FieldProblems(List.of(problem))));
    }

    private View view(Context ctx, FieldProblems problems) {
        var who = educator(ctx);
        return new View(who.email(), signIn.hasFactor(who.id()), problems);
    }

    private void send(Context ctx) throws IOException {
        var day = LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC);
        ctx.header("Cache-Control", "no-store");
        ctx.header("Content-Disposition", "attachment; filename=\"site-backup-" + day + ".zip\"");
        ctx.contentType("application/zip");
        backup.writeTo(ctx.outputStream());
    }

    private Educator educator(Context ctx) {
        return educators.find(desk.educator(ctx)).orElseThrow();
    }

    /** What the page shows; {@code email} for the browser's store of passwords; {@code factor}: whether its code is asked for. */
    public record View(String email, boolean factor, FieldProblems problems) {}
}
