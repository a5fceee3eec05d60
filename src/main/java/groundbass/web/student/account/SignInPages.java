package groundbass.web.student.account;

import groundbass.audience.student.LinkState;
import groundbass.audience.student.SecretToken;
import groundbass.audience.student.SignInCode;
import groundbass.audience.student.SignIns;
import groundbass.audience.student.SignedIn;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.settings.AgeSaid;
import groundbass.catalog.settings.SiteSettings;
import groundbass.form.FieldProblem;
import groundbass.post.EmailAddress;
import groundbass.post.Postman;
import groundbass.web.shell.AccessFilter;
import groundbass.web.shell.Devices;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.shell.limit.Limit;
import groundbass.web.shell.limit.RateLimits;
import groundbass.web.student.lesson.Lessons;
import groundbass.web.student.visit.VisitCounter;
import groundbass.web.view.FieldProblems;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Signing in by a mailed link, or by the code beside it. Asking is answered alike for everyone; opening the link shows a
 * button, and only the button uses it up, because mail scanners open what is mailed. Nobody guesses a link of 256 bits, so
 * using one is not counted: a whole class may do it at once.
 */
public final class SignInPages implements PageGroup {
    /** The version of {@code student.signin.consent}; a new text gets a new one. */
    public static final String WORDING = "account-3";

    private static final FieldProblem NO_AGE = FieldProblem.of("age", "student.signin.age.missing");

    private final Pages pages;
    private final AccessFilter accessFilter;
    private final SignIns signIns;
    private final Supplier<SiteSettings> settings;
    private final StudentSignIn signIn;
    private final Audit audit;
    private final RateLimits limits;
    private final ReturnCookie returnCookie;
    private final AskedCookie asked;
    private final Optional<Postman> toDesk;
    private final Lessons lessons;
    private final VisitCounter visits;

    /** @param toDesk where no letter leaves: who lays it on the desk, so that it is read there at once */
    public SignInPages(
            Pages pages,
            AccessFilter accessFilter,
            SignIns signIns,
            Supplier<SiteSettings> settings,
            StudentSignIn signIn,
            Audit audit,
            RateLimits limits,
            ReturnCookie returnCookie,
            AskedCookie asked,
            Optional<Postman> toDesk,
            Lessons lessons,
            VisitCounter visits) {
        this.pages = pages;
        this.accessFilter = accessFilter;
        this.signIns = signIns;
        this.settings = settings;
        this.signIn = signIn;
        this.audit = audit;
        this.limits = limits;
        this.returnCookie = returnCookie;
        this.asked = asked;
        this.toDesk = toDesk;
        this.lessons = lessons;
        this.visits = visits;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/sign-in", Role.ANYONE, this::ask);
        routes.post("/sign-in", Role.ANYONE, this::send);
        routes.get("/sign-in/sent", Role.ANYONE, ctx -> pages.show(ctx, "student/sent", sent(ctx, FieldProblems.NONE)));
        routes.post("/sign-in/code", Role.ANYONE, this::useCode);
        routes.get("/sign-in/code", Role.ANYONE, ctx -> ctx.redirect("/sign-in/sent", HttpStatus.SEE_OTHER));
        routes.get("/sign-in/{token}", Role.ANYONE, this::show);
        routes.post("/sign-in/{token}", Role.ANYONE, this::use);
        routes.post("/sign-out", Role.ANYONE, this::leave);
    }

    private void ask(Context ctx) {
        String next = ReturnCookie.of(Optional.ofNullable(ctx.queryParam("next")));
        if (accessFilter.principal(ctx).student().isPresent()) {
            ctx.redirect(next, HttpStatus.SEE_OTHER); // who is signed in already needs no form
            return;
        }
        pages.show(ctx, "student/sign-in", form("", next, FieldProblems.NONE));
    }

    private void send(Context ctx) {
        String typed = Optional.ofNullable(ctx.formParam("email")).orElse("");
        String next = ReturnCookie.of(Optional.ofNullable(ctx.formParam("next")));
        var email = EmailAddress.read(typed);
        if (email.isEmpty()) {
            var problem = FieldProblem.of("email", "catalog.problem.email", typed.strip());
            pages.showAgain(ctx, "student/sign-in", form(typed, next, new FieldProblems(List.of(problem))));
            return;
        }
        limits.demand(ctx, Limit.LETTERS_OF_NETWORK);
        limits.demand(ctx, Limit.LETTER, email.get().value());
        signIns.request(email.get(), pages.reader(ctx).locale());
        toDesk.ifPresent(Postman::deliverDue);
        returnCookie.keep(ctx, next);
        asked.keep(ctx, email.get());
        ctx.redirect("/sign-in/sent", HttpStatus.SEE_OTHER);
    }

    private Form form(String email, String next, FieldProblems problems) {
        return new Form(
                email, next, toDesk.isPresent(), settings.get().imprint().guardians(), problems);
    }

    private void show(Context ctx) {
        var state = signIns.peek(token(ctx));
        if (state == LinkState.VALID) {
            pages.show(ctx, "student/link", link(ctx, FieldProblems.NONE));
        } else {
            refuse(ctx, state);
        }
    }

    private Link link(Context ctx, FieldProblems problems) {
        boolean isAsked = signIns.wantsAge(token(ctx), settings.get().accounts().age());
        return new Link(ctx.path(), age(isAsked), problems);
    }

    private void use(Context ctx) {
        var result = signIns.use(token(ctx), agreed(ctx), Devices.of(ctx));
        if (result instanceof SignedIn.As student) {
            open(ctx, student, "sign-in.way.link");
        } else if (result instanceof SignedIn.AgeWanted) {
            pages.showAgain(ctx, "student/link", link(ctx, new FieldProblems(List.of(NO_AGE))));
        } else if (result instanceof SignedIn.Refused refused) {
            audit.note(Audit.STRANGER, AuditWord.SIGN_IN_REFUSED, "");
            refuse(ctx, refused.why());
        }
    }

    /** In the browser in which it was asked for: it knows the address. */
    private void useCode(Context ctx) {
        String typed = Optional.ofNullable(ctx.formParam("code")).orElse("");
        var email = asked.email(ctx);
        email.ifPresent(address -> limits.demand(ctx, Limit.CODE, address.value()));
        var result = email.flatMap(address ->
                SignInCode.read(typed).map(code -> signIns.use(address, code, agreed(ctx), Devices.of(ctx))));
        if (result.isPresent() && result.get() instanceof SignedIn.As student) {
            asked.forget(ctx);
            open(ctx, student, "sign-in.way.code");
        } else if (result.isPresent() && result.get() instanceof SignedIn.AgeWanted) {
            // who typed the right code sees the question for the first time here
            boolean isOverlooked = ctx.formParam("ageAsked") != null;
            var problems = isOverlooked ? new FieldProblems(List.of(NO_AGE)) : FieldProblems.NONE;
            pages.showAgain(ctx, "student/sent", sent(ctx, typed.strip(), age(true), problems));
        } else {
            audit.note(Audit.STRANGER, AuditWord.SIGN_IN_REFUSED, "");
            var problem = FieldProblem.of("code", "student.code.wrong", typed.strip());
            pages.showAgain(ctx, "student/sent", sent(ctx, new FieldProblems(List.of(problem))));
        }
    }

    private SignIns.Agreed agreed(Context ctx) {
        var said = AgeSaid.parse(Optional.ofNullable(ctx.formParam("age")).orElse(""));
        return new SignIns.Agreed(WORDING, settings.get().accounts().age(), said);
    }

    private AgeQuestion age(boolean isAsked) {
        var chosen = settings.get();
        return new AgeQuestion(
                chosen.accounts().age().filter(years -> isAsked),
                isAsked ? chosen.imprint().guardians() : "");
    }

    private void open(Context ctx, SignedIn.As student, String how) {
        signIn.open(ctx, student);
        audit.note(Audit.STUDENT, AuditWord.SIGN_IN_DONE, Devices.of(ctx).key() + " " + how);
        Flash.say(ctx, student.first() ? "student.welcome" : "student.signed-in");
        String way = returnCookie.take(ctx);
        lessons.at(way).ifPresent(lesson -> visits.signedIn(ctx, lesson, student.student()));
        ctx.redirect(way, HttpStatus.SEE_OTHER);
    }

    private Sent sent(Context ctx, FieldProblems problems) {
        return sent(ctx, "", age(false), problems);
    }

    private Sent sent(Context ctx, String code, AgeQuestion age, FieldProblems problems) {
        return new Sent(toDesk.isPresent(), minutes(), asked.email(ctx).isPresent(), code, age, problems);
    }

    private void leave(Context ctx) {
        signIn.leave(ctx);
        Flash.say(ctx, "student.signed-out");
        ctx.redirect("/", HttpStatus.SEE_OTHER);
    }

    private void refuse(Context ctx, LinkState state) {
        var why =
                switch (state) {
                    case EXPIRED -> "student.link.expired";
                    case USED -> "student.link.used";
                    case UNKNOWN, VALID -> "student.link.unknown";
                };
        ctx.status(state == LinkState.UNKNOWN ? HttpStatus.NOT_FOUND : HttpStatus.GONE);
        pages.show(ctx, "student/link-over", new Over(why));
    }

    private static SecretToken token(Context ctx) {
        return new SecretToken(ctx.pathParam("token"));
    }

    private static long minutes() {
        return SignIns.VALID.toMinutes();
    }

    /**
     * The form.
     *
     * @param onTheDesk whether letters do not leave this machine
     * @param guardians what the operator says to those who are not of age
     */
    public record Form(String email, String next, boolean onTheDesk, String guardians, FieldProblems problems) {}

    /**
     * What is asked of whoever holds an address, before there is an account.
     *
     * @param years     from which on nobody needs a guardian's consent; none where nothing is asked
     * @param guardians what the operator says to those who are not of age; may be empty
     */
    public record AgeQuestion(Optional<Integer> years, String guardians) {}

    /**
     * What follows, whoever asked.
     *
     * @param typed whether a code can be typed in this browser
     * @param code  the right one, where there is only the question of age left
     */
    public record Sent(
            boolean onTheDesk, long minutes, boolean typed, String code, AgeQuestion age, FieldProblems problems) {}

    /** The button's page. */
    public record Link(String path, AgeQuestion age, FieldProblems problems) {}

    /** A link that does not work any more, and why: a message's key. */
    public record Over(String why) {}
}
