package groundbass.web.desk.account;

import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.Educators;
import groundbass.web.desk.access.Desk;
import groundbass.web.desk.access.Entrance;
import groundbass.web.desk.access.Typed;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.Problems;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;

/** The educator's own access: password, and the way out. */
public final class AccountPages implements PageGroup {
    private static final String PATH = "/desk/account";

    private final Desk desk;
    private final Educators educators;
    private final Entrance entrance;

    public AccountPages(Desk desk, Educators educators, Entrance entrance) {
        this.desk = desk;
        this.educators = educators;
        this.entrance = entrance;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EDUCATOR, ctx -> desk.pages().show(ctx, "desk/account", view(ctx, Problems.NONE)));
        routes.post(PATH, Role.EDUCATOR, this::changePassword);
    }

    private void changePassword(Context ctx) {
        var who = desk.educator(ctx);
        entrance.countPassword(ctx, who);
        var outcome = educators.changePassword(who, Typed.text(ctx, "present"), Typed.text(ctx, "chosen"));
        if (outcome.result().isEmpty()) {
            desk.pages().showAgain(ctx, "desk/account", view(ctx, new Problems(outcome.problems())));
            return;
        }
        entrance.reopen(ctx, who);
        Flash.say(ctx, "desk.password");
        ctx.redirect(PATH, HttpStatus.SEE_OTHER);
    }

    private View view(Context ctx, Problems problems) {
        Educator educator = educators.find(desk.educator(ctx)).orElseThrow();
        return new View(educator.name(), educator.email(), problems);
    }

    /** What the page shows. */
    public record View(String name, String email, Problems problems) {}
}
