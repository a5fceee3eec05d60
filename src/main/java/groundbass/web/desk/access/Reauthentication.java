package groundbass.web.desk.access;

import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.EducatorId;
import groundbass.form.FieldProblem;
import groundbass.web.view.FieldProblems;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Lets a form through whose writer is signed in, or signs in with it. Where the sign-in has run out the answer is a page
 * that carries all that was typed on to the same address, so that none of it is lost.
 */
public final class Reauthentication {
    private static final Set<String> NEVER_CARRIED = Set.of("email", "password", "factor");

    private static final FieldProblems WRONG =
            new FieldProblems(List.of(FieldProblem.of("email", "desk.signin.wrong")));
    /** Said beside the field that they will need; the page leads to where it is set up, in another window. */
    private static final FieldProblems FACTOR_FIRST =
            new FieldProblems(List.of(FieldProblem.of("factor", "desk.factor.first")));

    private final DeskContext desk;
    private final EducatorSignIn signIn;

    public Reauthentication(DeskContext desk, EducatorSignIn signIn) {
        this.desk = desk;
        this.signIn = signIn;
    }

    /** Asks for a sign-in, with the address that was typed and what was wrong with it. */
    public interface Asking {
        void ask(String email, FieldProblems problems);
    }

    /** Who sent the form; empty where the answer is given already. */
    public Optional<EducatorId> writer(Context ctx) {
        return writer(ctx, (email, problems) -> carryOn(ctx, email, problems));
    }

    /** The same for a page that asks in its own way. */
    public Optional<EducatorId> writer(Context ctx, Asking asking) {
        var known = desk.principal(ctx);
        if (known.isPresent()) {
            return known;
        }
        String email = FormParameters.text(ctx, "email");
        if (email.isBlank()) {
            asking.ask(email, desk.lacksFactor(ctx) ? FACTOR_FIRST : FieldProblems.NONE);
            return Optional.empty();
        }
        var entered = signIn.enter(ctx, EducatorSignIn.Entry.read(ctx)).map(Educator::id);
        boolean complete = entered.filter(who -> !signIn.lacksFactor(who)).isPresent();
        if (!complete) {
            asking.ask(email, entered.isPresent() ? FACTOR_FIRST : WRONG);
        }
        return entered.filter(who -> complete);
    }

    private void carryOn(Context ctx, String email, FieldProblems problems) {
        ctx.status(HttpStatus.UNAUTHORIZED);
        desk.pages().show(ctx, "desk/again", new View(ctx.path(), email, typed(ctx), problems));
    }

    private static List<Entry> typed(Context ctx) {
        return ctx.formParamMap().entrySet().stream()
                .filter(entry -> !NEVER_CARRIED.contains(entry.getKey()))
                .flatMap(entry -> entry.getValue().stream().map(value -> new Entry(entry.getKey(), value)))
                .toList();
    }

    /** A field and what stands in it. */
    public record Entry(String name, String value) {
        /** Whether a person would miss it. */
        public boolean isText() {
            return value.strip().contains(" ");
        }
    }

    /** What the page shows. */
    public record View(String path, String email, List<Entry> typed, FieldProblems problems) {}
}
