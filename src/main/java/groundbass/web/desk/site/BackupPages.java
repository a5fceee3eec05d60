package groundbass.web.desk.site;

import groundbass.backup.Backup;
import groundbass.catalog.educator.Audit;
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
        routes.get(PATH, Role.OWNER, ctx -> desk.pages()
                .show(ctx, TEMPLATE, new View(educator(ctx).email(), FieldProblems.NONE)));
        routes.post(PATH, Role.OWNER, this::make);
    }

    private void make(Context ctx) throws IOException {
        var who = educator(ctx);
        if (!signIn.confirms(ctx, who)) {
            showAgain(ctx, "catalog.problem.password.wrong");
            return;
        }
        if (!free.tryAcquire()) {
            showAgain(ctx, "desk.backup.busy");
            ctx.status(HttpStatus.SERVICE_UNAVAILABLE);
            return;
        }
        try {
            audit.note(who.id().value(), "backup.made", "");
            send(ctx);
        } finally {
            free.release();
        }
    }

    private void showAgain(Context ctx, String problem) {
        var problems = new FieldProblems(List.of(FieldProblem.of("present", problem)));
        desk.pages().showAgain(ctx, TEMPLATE, new View(educator(ctx).email(), problems));
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

    /** What the page shows; {@code email} for the browser's store of passwords. */
    public record View(String email, FieldProblems problems) {}
}
