package groundbass.web.desk.account;

import groundbass.audience.student.EducatorAccess;
import groundbass.audience.student.Person;
import groundbass.audience.student.Sessions;
import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.Educators;
import groundbass.form.Outcome;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.EducatorSignIn;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.FieldProblems;
import groundbass.web.view.SessionRow;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Locale;

/** The educator's own access: who they are, password, where they are signed in, and the way out. */
public final class AccountPages implements PageGroup {
    static final String PATH = "/desk/account";

    private final DeskContext desk;
    private final Educators educators;
    private final Sessions sessions;
    private final EducatorAccess access;
    private final EducatorSignIn signIn;

    public AccountPages(
            DeskContext desk, Educators educators, Sessions sessions, EducatorAccess access, EducatorSignIn signIn) {
        this.desk = desk;
        this.educators = educators;
        this.sessions = sessions;
        this.access = access;
        this.signIn = signIn;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EDUCATOR, this::show);
        routes.post(PATH, Role.EDUCATOR, this::changePassword);
        routes.post(PATH + "/who", Role.EDUCATOR, this::change);
        routes.get(PATH + "/who", Role.EDUCATOR, ctx -> ctx.redirect(PATH, HttpStatus.SEE_OTHER));
    }

    private void show(Context ctx) {
        var educator = educator(ctx);
        desk.pages().show(ctx, "desk/account", view(ctx, educator.name(), educator.email(), FieldProblems.NONE));
    }

    private void changePassword(Context ctx) {
        var who = educator(ctx);
        signIn.countPassword(ctx, who.id());
        var outcome = educators.changePassword(
                who.id(), FormParameters.text(ctx, "present"), FormParameters.text(ctx, "chosen"));
        signIn.noteWrong(ctx, who.id(), outcome.problems());
        if (outcome.result().isEmpty()) {
            showAgain(ctx, who.name(), who.email(), new FieldProblems(outcome.problems()));
            return;
        }
        signIn.reopen(ctx, who.id());
        access.tellPasswordChanged(who, language(ctx));
        done(ctx, "desk.password");
    }

    private void change(Context ctx) {
        var before = educator(ctx);
        signIn.countPassword(ctx, before.id());
        String name = FormParameters.text(ctx, "name");
        String email = FormParameters.text(ctx, "email");
        var outcome = changed(ctx, before, name, email);
        signIn.noteWrong(ctx, before.id(), outcome.problems());
        if (outcome.result().isEmpty()) {
            showAgain(ctx, name, email, new FieldProblems(outcome.problems()));
            return;
        }
        outcome.result()
                .filter(now -> !now.email().equals(before.email()))
                .ifPresent(now -> access.tellAddressChanged(before.email(), now, language(ctx)));
        done(ctx, "desk.saved");
    }

    /** Whoever has another address has a way to a new password, so that the second factor is asked for as well. */
    private Outcome<Educator> changed(Context ctx, Educator before, String name, String email) {
        String present = FormParameters.text(ctx, "known");
        if (email.strip().equalsIgnoreCase(before.email())
                || educators.verify(before.email(), present).isEmpty()) {
            return educators.change(before.id(), name, email, present);
        }
        return signIn.factorDoubt(ctx, before.id())
                .map(wrong -> Outcome.<Educator>refused(List.of(wrong)))
                .orElseGet(() -> educators.change(before.id(), name, email, present));
    }

    private static void done(Context ctx, String said) {
        Flash.say(ctx, said);
        ctx.redirect(PATH, HttpStatus.SEE_OTHER);
    }

    private void showAgain(Context ctx, String name, String email, FieldProblems problems) {
        desk.pages().showAgain(ctx, "desk/account", view(ctx, name, email, problems));
    }

    private Educator educator(Context ctx) {
        return educators.find(desk.educator(ctx)).orElseThrow();
    }

    private Locale language(Context ctx) {
        return desk.pages().reader(ctx).locale();
    }

    private View view(Context ctx, String name, String email, FieldProblems problems) {
        var person = new Person.OfEducator(desk.educator(ctx));
        var rows = sessions.of(person, signIn.token(ctx)).stream()
                .map(SessionRow::of)
                .toList();
        var now = educator(ctx);
        return new View(now, signIn.hasFactor(now.id()), name, email, rows, problems);
    }

    /** What the page shows; {@code factor}: whether another address asks for a code of it; {@code name} and {@code email} as typed. */
    public record View(
            Educator now,
            boolean factor,
            String name,
            String email,
            List<SessionRow> sessions,
            FieldProblems problems) {}
}
