package groundbass.web.desk.account;

import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.educator.ProgramScope;
import groundbass.catalog.educator.ProgramSecret;
import groundbass.catalog.educator.ProgramToken;
import groundbass.catalog.educator.ProgramTokens;
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
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Where an educator lets programs of theirs in, and ends that. A token is shown once, and asks for the password. */
public final class ProgramTokenPages implements PageGroup {
    private static final String PATH = AccountPages.PATH + "/programs";
    private static final String TEMPLATE = "desk/programs";

    private final DeskContext desk;
    private final Educators educators;
    private final EducatorSignIn signIn;
    private final ProgramTokens programs;
    private final Clock clock;

    public ProgramTokenPages(
            DeskContext desk, Educators educators, EducatorSignIn signIn, ProgramTokens programs, Clock clock) {
        this.desk = desk;
        this.educators = educators;
        this.signIn = signIn;
        this.programs = programs;
        this.clock = clock;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EDUCATOR, this::show);
        routes.post(PATH, Role.EDUCATOR, this::make);
        routes.post(PATH + "/withdraw", Role.EDUCATOR, this::withdraw);
        routes.get(PATH + "/withdraw", Role.EDUCATOR, ctx -> ctx.redirect(PATH, HttpStatus.SEE_OTHER));
    }

    private void show(Context ctx) {
        desk.pages().show(ctx, TEMPLATE, view(ctx, Form.BLANK, Optional.empty(), FieldProblems.NONE));
    }

    private void make(Context ctx) {
        var who = educator(ctx);
        var form = Form.read(ctx);
        var outcome = signIn.doubt(ctx, who)
                .map(wrong -> Outcome.<ProgramSecret>refused(List.of(wrong)))
                .orElseGet(() -> programs.make(who.id(), form.name(), form.chosen(), form.days()));
        if (outcome.result().isPresent()) {
            desk.pages().show(ctx, TEMPLATE, view(ctx, Form.BLANK, outcome.result(), FieldProblems.NONE));
        } else {
            var problems = new FieldProblems(outcome.problems());
            desk.pages().showAgain(ctx, TEMPLATE, view(ctx, form, Optional.empty(), problems));
        }
    }

    private void withdraw(Context ctx) {
        programs.withdraw(desk.educator(ctx), FormParameters.text(ctx, "id"));
        Flash.say(ctx, "desk.program.withdrawn");
        ctx.redirect(PATH, HttpStatus.SEE_OTHER);
    }

    private Educator educator(Context ctx) {
        return educators.find(desk.educator(ctx)).orElseThrow();
    }

    private View view(Context ctx, Form form, Optional<ProgramSecret> made, FieldProblems problems) {
        var who = educator(ctx);
        var rows = programs.of(who.id()).stream()
                .map(token -> Row.of(token, clock.instant()))
                .toList();
        return new View(
                who.email(),
                signIn.hasFactor(who.id()),
                form,
                rows,
                made.map(ProgramSecret::value).orElse(""),
                problems);
    }

    /**
     * What somebody types who lets a program in.
     *
     * @param scopes by their words
     */
    public record Form(String name, Set<String> scopes, int days) {
        static final Form BLANK = new Form("", Set.of(ProgramScope.READ.word()), ProgramTokens.DAYS.get(1));

        static Form read(Context ctx) {
            return new Form(
                    FormParameters.text(ctx, "name"),
                    Set.copyOf(ctx.formParams("scopes")),
                    FormParameters.number(ctx, "days", 0));
        }

        Set<ProgramScope> chosen() {
            return scopes.stream()
                    .flatMap(word -> ProgramScope.parse(word).stream())
                    .collect(Collectors.toSet());
        }
    }

    /**
     * A program that was let in.
     *
     * @param scopes by their words
     * @param over whether its token has run out
     */
    public record Row(
            String id,
            String name,
            List<String> scopes,
            Instant made,
            Optional<Instant> used,
            Instant ends,
            boolean over) {
        static Row of(ProgramToken token, Instant now) {
            var scopes =
                    token.scopes().stream().sorted().map(ProgramScope::word).toList();
            return new Row(
                    token.id(),
                    token.name(),
                    scopes,
                    token.createdAt(),
                    token.usedAt(),
                    token.expiresAt(),
                    token.isOver(now));
        }
    }

    /**
     * What the page shows.
     *
     * @param email whose it is, for the browser's store of passwords
     * @param factor whether a code of a second factor is asked for as well
     * @param made the token that was just made, this once; empty for none
     */
    public record View(String email, boolean factor, Form form, List<Row> rows, String made, FieldProblems problems) {
        public List<String> scopes() {
            return Stream.of(ProgramScope.values()).map(ProgramScope::word).toList();
        }

        public List<Integer> days() {
            return ProgramTokens.DAYS;
        }
    }
}
