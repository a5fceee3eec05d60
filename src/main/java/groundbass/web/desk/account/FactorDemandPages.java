package groundbass.web.desk.account;

import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.educator.SecondFactors;
import groundbass.form.Outcome;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.EducatorSignIn;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.FieldProblems;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;

/**
 * Where who keeps the site demands a second factor of everybody with a desk. It asks for the password and a code once more:
 * whoever has borrowed their session must not leave the desks less guarded.
 */
public final class FactorDemandPages implements PageGroup {
    private static final String PATH = "/desk/settings/second-factor";

    private final DeskContext desk;
    private final Educators educators;
    private final EducatorSignIn signIn;
    private final SecondFactors factors;

    public FactorDemandPages(DeskContext desk, Educators educators, EducatorSignIn signIn, SecondFactors factors) {
        this.desk = desk;
        this.educators = educators;
        this.signIn = signIn;
        this.factors = factors;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.OWNER, ctx -> desk.pages()
                .show(
                        ctx,
                        "desk/factor-demand",
                        view(owner(ctx), factors.demand().isOn(), FieldProblems.NONE)));
        routes.post(PATH, Role.OWNER, this::choose);
    }

    private Educator owner(Context ctx) {
        return educators.find(desk.educator(ctx)).orElseThrow();
    }

    private View view(Educator owner, boolean demanded, FieldProblems problems) {
        return new View(
                owner.email(), factors.isOn(owner.id()), factors.demand().lacking(), demanded, problems);
    }

    private void choose(Context ctx) {
        var owner = owner(ctx);
        boolean demanded = FormParameters.ticked(ctx, "demanded");
        var outcome = signIn.doubt(ctx, owner)
                .map(wrong -> Outcome.<Boolean>refused(List.of(wrong)))
                .orElseGet(() -> factors.demand().choose(owner.id(), demanded));
        if (outcome.result().isPresent()) {
            Flash.say(ctx, "desk.saved");
            ctx.redirect(PATH, HttpStatus.SEE_OTHER);
        } else {
            var problems = new FieldProblems(outcome.problems());
            desk.pages().showAgain(ctx, "desk/factor-demand", view(owner, demanded, problems));
        }
    }

    /**
     * What the page shows.
     *
     * @param email the owner's, for the browser's store of passwords
     * @param own whether the owner has a second factor, without which they can demand none
     * @param lacking how many desks have none
     * @param demanded as it was chosen, or ticked just now
     */
    public record View(String email, boolean own, int lacking, boolean demanded, FieldProblems problems) {}
}
