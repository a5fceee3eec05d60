package groundbass.web.desk.account;

import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.educator.FactorSecret;
import groundbass.catalog.educator.SecondFactors;
import groundbass.form.FieldProblem;
import groundbass.form.Outcome;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.EducatorSignIn;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.shell.AccessFilter;
import groundbass.web.shell.CachedSettings;
import groundbass.web.shell.Flash;
import groundbass.web.shell.Next;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.FieldProblems;
import groundbass.web.view.SquareCode;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Optional;

/**
 * Where an educator sets up a second factor, and takes it away. Both ask for the password once more, and where there is
 * one already for a code of it: a borrowed session and a password alone must not be enough to be rid of it. Where the site
 * demands one of everybody, the first way leads here.
 */
public final class SecondFactorPages implements PageGroup {
    private static final String PATH = AccessFilter.SET_UP_FACTOR;
    private static final String TEMPLATE = "desk/factor";

    private final DeskContext desk;
    private final Educators educators;
    private final EducatorSignIn signIn;
    private final SecondFactors factors;
    private final CachedSettings chosen;

    public SecondFactorPages(
            DeskContext desk,
            Educators educators,
            EducatorSignIn signIn,
            SecondFactors factors,
            CachedSettings chosen) {
        this.desk = desk;
        this.educators = educators;
        this.signIn = signIn;
        this.factors = factors;
        this.chosen = chosen;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.ENTERED, ctx -> desk.pages().show(ctx, TEMPLATE, view(ctx, FactorSecret.next())));
        routes.post(PATH, Role.ENTERED, this::turnOn);
        routes.post(PATH + "/off", Role.EDUCATOR, this::turnOff);
        routes.get(PATH + "/off", Role.EDUCATOR, ctx -> ctx.redirect(PATH, HttpStatus.SEE_OTHER));
    }

    private View view(Context ctx, FactorSecret secret) {
        return view(ctx, secret, List.of(), FieldProblems.NONE);
    }

    private View view(Context ctx, FactorSecret secret, List<String> codes, FieldProblems problems) {
        var who = educator(ctx);
        String site = chosen.get().siteName();
        return new View(
                who.email(),
                factors.isOn(who.id()),
                factors.demand().isOn(),
                next(ctx),
                factors.recoveryCodes(who.id()),
                secret.base32(),
                secret.spaced(),
                SquareCode.of(secret.address(site, who.email()).toString()),
                codes,
                problems);
    }

    /** Where somebody wanted to go who was led here first. */
    private static String next(Context ctx) {
        var typed = Optional.ofNullable(ctx.formParam("next"));
        return Next.orElse(typed.or(() -> Optional.ofNullable(ctx.queryParam("next"))), AccountPages.PATH);
    }

    private void turnOn(Context ctx) {
        var who = educator(ctx);
        var secret = FactorSecret.parse(FormParameters.text(ctx, "secret")).orElseGet(FactorSecret::next);
        var outcome = signIn.doubt(ctx, who)
                .map(wrong -> Outcome.<List<String>>refused(List.of(wrong)))
                .orElseGet(() -> factors.turnOn(who.id(), secret, FormParameters.text(ctx, "code")));
        if (outcome.result().isEmpty()) {
            var problems = new FieldProblems(outcome.problems());
            desk.pages().showAgain(ctx, TEMPLATE, view(ctx, secret, List.of(), problems));
            return;
        }
        signIn.reopen(ctx, who.id());
        desk.pages().show(ctx, TEMPLATE, view(ctx, secret, outcome.result().get(), FieldProblems.NONE));
    }

    private void turnOff(Context ctx) {
        var who = educator(ctx);
        var doubt = factors.demand().isOn()
                ? Optional.of(FieldProblem.of("present", "desk.factor.stays"))
                : signIn.doubt(ctx, who);
        if (doubt.isEmpty()) {
            factors.turnOff(who.id(), who.id().value());
            Flash.say(ctx, "desk.factor.off");
            ctx.redirect(AccountPages.PATH, HttpStatus.SEE_OTHER);
        } else {
            var problems = new FieldProblems(List.of(doubt.get()));
            desk.pages().showAgain(ctx, TEMPLATE, view(ctx, FactorSecret.next(), List.of(), problems));
        }
    }

    private Educator educator(Context ctx) {
        return educators.find(desk.entered(ctx)).orElseThrow();
    }

    /**
     * What the page shows.
     *
     * @param email whose it is, for the browser's store of passwords
     * @param demanded whether the site demands it of everybody, so that it can be exchanged and not turned off
     * @param next where to go afterwards
     * @param left codes on paper that are still good
     * @param secret a new one, which counts from the moment on at which a code of it is typed
     * @param square the same for a camera
     * @param codes the codes for paper, this once
     */
    public record View(
            String email,
            boolean on,
            boolean demanded,
            String next,
            int left,
            String secret,
            String spaced,
            SquareCode square,
            List<String> codes,
            FieldProblems problems) {}
}
