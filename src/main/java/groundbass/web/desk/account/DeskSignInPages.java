package groundbass.web.desk.account;

import groundbass.catalog.educator.Educators;
import groundbass.form.FieldProblem;
import groundbass.web.desk.access.EducatorSignIn;
import groundbass.web.shell.Flash;
import groundbass.web.shell.Next;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.FieldProblems;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Optional;

/** The first educator's set-up, signing in and signing out. */
public final class DeskSignInPages implements PageGroup {
    private static final FieldProblems DO_NOT_FIT =
            new FieldProblems(List.of(FieldProblem.of("email", "desk.signin.wrong")));

    private final Pages pages;
    private final Educators educators;
    private final EducatorSignIn signIn;

    public DeskSignInPages(Pages pages, Educators educators, EducatorSignIn signIn) {
        this.pages = pages;
        this.educators = educators;
        this.signIn = signIn;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/desk/set-up", Role.ANYONE, this::askSetUp);
        routes.post("/desk/set-up", Role.ANYONE, this::setUp);
        routes.get("/desk/sign-in", Role.ANYONE, this::askSignIn);
        routes.post("/desk/sign-in", Role.ANYONE, this::signIn);
        routes.post("/desk/sign-out", Role.ANYONE, this::signOut);
    }

    private void askSetUp(Context ctx) {
        if (educators.owner().isPresent()) {
            ctx.redirect("/desk/sign-in", HttpStatus.SEE_OTHER);
        } else {
            pages.show(ctx, "desk/set-up", new SetUp(SetUpForm.EMPTY.name(), "", FieldProblems.NONE));
        }
    }

    private void setUp(Context ctx) {
        signIn.countSetUp(ctx);
        var form = SetUpForm.read(ctx);
        var outcome = educators.setUp(form.code(), form.name(), form.email(), form.password());
        if (outcome.result().isEmpty()) {
            var problems = new FieldProblems(outcome.problems());
            if (problems.has("code")) {
                signIn.noteRefusedEntry(ctx);
            }
            pages.showAgain(ctx, "desk/set-up", new SetUp(form.name(), form.email(), problems));
            return;
        }
        signIn.open(ctx, outcome.result().get().id());
        Flash.say(ctx, "desk.welcome");
        ctx.redirect("/desk", HttpStatus.SEE_OTHER);
    }

    private void askSignIn(Context ctx) {
        String next = Next.orElse(Optional.ofNullable(ctx.queryParam("next")), "/desk");
        pages.show(ctx, "desk/sign-in", new SignIn("", next, first(), FieldProblems.NONE));
    }

    private void signIn(Context ctx) {
        var form = SignInForm.read(ctx);
        if (signIn.enter(ctx, form.entry()).isPresent()) {
            ctx.redirect(form.next(), HttpStatus.SEE_OTHER);
        } else {
            pages.showAgain(ctx, "desk/sign-in", new SignIn(form.entry().email(), form.next(), first(), DO_NOT_FIT));
        }
    }

    private void signOut(Context ctx) {
        signIn.leave(ctx);
        Flash.say(ctx, "desk.signed-out");
        ctx.redirect("/desk/sign-in", HttpStatus.SEE_OTHER);
    }

    private boolean first() {
        return educators.owner().isEmpty();
    }

    /** What the set-up page shows; code and password are typed anew each time. */
    public record SetUp(String name, String email, FieldProblems problems) {}

    /** What the sign-in page shows; {@code nobodyYet} leads on to the set-up. */
    public record SignIn(String email, String next, boolean nobodyYet, FieldProblems problems) {}
}
