package groundbass.web.desk.account;

import groundbass.audience.student.EducatorAccess;
import groundbass.audience.student.SecretToken;
import groundbass.web.desk.access.EducatorSignIn;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.FieldProblems;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;

/**
 * The way back for who has forgotten the password: a mailed link, and a form behind it. Where no mail leaves, no link is
 * written either, as whoever else has a desk could read it there.
 */
public final class ForgottenPages implements PageGroup {
    private static final String ASK = "/desk/forgotten";
    private static final String RESET = "/desk/reset/{token}";

    private final Pages pages;
    private final EducatorAccess access;
    private final EducatorSignIn signIn;
    private final boolean mailed;

    public ForgottenPages(Pages pages, EducatorAccess access, EducatorSignIn signIn, boolean mailed) {
        this.pages = pages;
        this.access = access;
        this.signIn = signIn;
        this.mailed = mailed;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(ASK, Role.ANYONE, ctx -> pages.show(ctx, "desk/forgotten", new Ask(mailed)));
        routes.post(ASK, Role.ANYONE, this::send);
        routes.get(
                ASK + "/sent",
                Role.ANYONE,
                ctx -> pages.show(ctx, "desk/forgotten-sent", new Sent(EducatorAccess.VALID.toMinutes())));
        routes.get(RESET, Role.ANYONE, ctx -> show(ctx, FieldProblems.NONE));
        routes.post(RESET, Role.ANYONE, this::reset);
    }

    private void send(Context ctx) {
        String email = FormParameters.text(ctx, "email");
        signIn.countLetter(ctx, email);
        if (mailed) {
            access.forgotten(email, pages.reader(ctx).locale());
        }
        ctx.redirect(ASK + "/sent", HttpStatus.SEE_OTHER);
    }

    private void show(Context ctx, FieldProblems problems) {
        if (!access.isValid(token(ctx))) {
            over(ctx);
        } else if (problems.isEmpty()) {
            pages.show(ctx, "desk/reset", new Reset(ctx.path(), problems));
        } else {
            pages.showAgain(ctx, "desk/reset", new Reset(ctx.path(), problems));
        }
    }

    private void reset(Context ctx) {
        signIn.countSetUp(ctx);
        var outcome = access.reset(
                token(ctx),
                FormParameters.text(ctx, "chosen"),
                pages.reader(ctx).locale());
        if (outcome.isEmpty()) {
            signIn.noteRefusedEntry(ctx);
            over(ctx);
        } else if (outcome.get().result().isEmpty()) {
            show(ctx, new FieldProblems(outcome.get().problems()));
        } else {
            Flash.say(ctx, "desk.reset");
            ctx.redirect("/desk/sign-in", HttpStatus.SEE_OTHER);
        }
    }

    private void over(Context ctx) {
        ctx.status(HttpStatus.GONE);
        pages.show(ctx, "desk/reset-over", new Over());
    }

    private static SecretToken token(Context ctx) {
        return new SecretToken(ctx.pathParam("token"));
    }

    /** The form that asks; {@code mailed} says whether this site sends anything. */
    public record Ask(boolean mailed) {}

    /** What follows, whoever asked. */
    public record Sent(long minutes) {}

    /** The form behind the link. */
    public record Reset(String path, FieldProblems problems) {}

    /** A link that does not work any more. */
    public record Over() {}
}
