package groundbass.web.desk.access;

import groundbass.audience.student.Person;
import groundbass.audience.student.SecretToken;
import groundbass.audience.student.Sessions;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.educator.SecondFactors;
import groundbass.form.FieldProblem;
import groundbass.web.shell.Devices;
import groundbass.web.shell.SessionCookie;
import groundbass.web.shell.limit.Limit;
import groundbass.web.shell.limit.RateLimits;
import io.javalin.http.Context;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Lets educators in and out. A try counts against the caller's network and against the account that is tried; but in a
 * browser in which the account's owner has signed in before only its own tries count, so that strangers lock nobody out.
 */
public final class EducatorSignIn {
    // the row ends the session earlier; the cookie only has to outlast it
    private static final Duration LONGEST = Duration.ofDays(7);
    private static final String WRONG_PASSWORD = "catalog.problem.password.wrong";

    private final Educators educators;
    private final Sessions sessions;
    private final SessionCookie cookie;
    private final KnownBrowser browser;
    private final RateLimits limits;
    private final Audit audit;
    private final SecondFactors factors;

    public EducatorSignIn(
            Educators educators,
            Sessions sessions,
            SessionCookie cookie,
            KnownBrowser browser,
            RateLimits limits,
            Audit audit,
            SecondFactors factors) {
        this.educators = educators;
        this.sessions = sessions;
        this.cookie = cookie;
        this.browser = browser;
        this.limits = limits;
        this.audit = audit;
        this.factors = factors;
    }

    /** What somebody types who wants to come in; its text form keeps it to itself. */
    public record Entry(String email, String password, String code) {
        public static Entry read(Context ctx) {
            return new Entry(
                    FormParameters.text(ctx, "email"),
                    FormParameters.text(ctx, "password"),
                    FormParameters.text(ctx, "factor"));
        }

        @Override
        public String toString() {
            return "Entry[hidden]";
        }
    }

    /**
     * Signs in whoever has this address, this password and, where they have a second factor, a code of it; which of them
     * was wrong is not told. Answers 429 where it was tried too often.
     */
    public Optional<Educator> enter(Context ctx, Entry typed) {
        String email = typed.email();
        count(ctx, email);
        var known =
                educators.verify(email, typed.password()).filter(educator -> factors.lets(educator.id(), typed.code()));
        known.ifPresentOrElse(educator -> letIn(ctx, educator.id(), email), () -> turnAway(email));
        return known;
    }

    private void letIn(Context ctx, EducatorId educator, String email) {
        open(ctx, educator);
        browser.remember(ctx, email);
        String way = factors.isOn(educator) ? "sign-in.way.two-factors" : "sign-in.way.password";
        audit.note(educator.value(), AuditWord.SIGN_IN_DONE, Devices.of(ctx).key() + " " + way);
    }

    /** Whose account was tried, if anybody's: an address of a stranger is not kept. */
    private void turnAway(String email) {
        String tried =
                educators.withEmail(email).map(known -> known.id().value()).orElse("");
        audit.note(Audit.STRANGER, AuditWord.SIGN_IN_REFUSED, tried);
    }

    private void count(Context ctx, String email) {
        var mark = browser.id(ctx, email);
        if (mark.isPresent()) {
            limits.demand(ctx, Limit.DESK_BROWSER, mark.get());
            return;
        }
        limits.demand(ctx, Limit.DESK_OF_NETWORK);
        limits.demand(ctx, Limit.DESK_ACCOUNT, email.strip().toLowerCase(Locale.ROOT));
    }

    /** Opens a session here; one that this browser had before ends. */
    public void open(Context ctx, EducatorId educator) {
        cookie.token(ctx).map(SecretToken::new).ifPresent(sessions::close);
        cookie.set(
                ctx,
                sessions.open(new Person.OfEducator(educator), Devices.of(ctx)).value(),
                LONGEST);
    }

    /** Ends every session of this educator and opens a new one here. */
    public void reopen(Context ctx, EducatorId educator) {
        sessions.closeAll(new Person.OfEducator(educator));
        open(ctx, educator);
    }

    /** The token that this browser carries. */
    public Optional<SecretToken> token(Context ctx) {
        return cookie.token(ctx).map(SecretToken::new);
    }

    public void leave(Context ctx) {
        cookie.token(ctx).map(SecretToken::new).ifPresent(sessions::close);
        cookie.clear(ctx);
    }

    /** Counts a try at a set-up code. */
    public void countSetUp(Context ctx) {
        limits.demand(ctx, Limit.SET_UP);
    }

    /** Keeps that a code or a link that sets up access was refused; nothing of what was tried. */
    public void noteRefusedEntry(Context ctx) {
        audit.note(Audit.STRANGER, AuditWord.ENTRY_REFUSED, Devices.of(ctx).key());
    }

    /** Keeps that somebody who is signed in typed a wrong password, where that is among what is wrong. */
    public void noteWrong(Context ctx, EducatorId who, List<FieldProblem> problems) {
        if (problems.stream().anyMatch(problem -> problem.key().equals(WRONG_PASSWORD))) {
            noteRefused(ctx, who);
        }
    }

    private void noteRefused(Context ctx, EducatorId who) {
        audit.note(who.value(), AuditWord.PRESENT_REFUSED, Devices.of(ctx).key());
    }

    /** Counts a try at the present password of somebody who is signed in. */
    public void countPassword(Context ctx, EducatorId educator) {
        limits.demand(ctx, Limit.PASSWORD, educator.value());
    }

    /**
     * Whether somebody who is signed in has typed their present password once more, as {@code present}: asked for before
     * what cannot be undone, so that a borrowed session alone is not enough. The try is counted.
     */
    private boolean confirms(Context ctx, Educator who) {
        countPassword(ctx, who.id());
        return educators
                .verify(who.email(), FormParameters.text(ctx, "present"))
                .isPresent();
    }

    /**
     * What is wrong with the password that somebody who is signed in types once more as {@code present} or, where they
     * have a second factor, with its code, {@code factor}: asked for before a way in is made or taken away. The try is
     * counted.
     */
    public Optional<FieldProblem> doubt(Context ctx, Educator who) {
        if (confirms(ctx, who)) {
            return factorDoubt(ctx, who.id()); // only now, since a code that is right is used up
        }
        noteRefused(ctx, who.id());
        return Optional.of(FieldProblem.of("present", WRONG_PASSWORD));
    }

    /** What is wrong with the code of the second factor that they typed as {@code factor}; nothing where they have none. */
    public Optional<FieldProblem> factorDoubt(Context ctx, EducatorId who) {
        if (factors.lets(who, FormParameters.text(ctx, "factor"))) {
            return Optional.empty();
        }
        noteRefused(ctx, who);
        return Optional.of(FieldProblem.of("factor", "desk.factor.wrong"));
    }

    /** Whether they have a second factor, so that pages ask for its code. */
    public boolean hasFactor(EducatorId who) {
        return factors.isOn(who);
    }

    /** Whether they have to set up a second factor before the desk opens. */
    boolean lacksFactor(EducatorId who) {
        return factors.demand().lacks(who);
    }

    /** Counts that somebody asks for a link to an address. */
    public void countLetter(Context ctx, String email) {
        limits.demand(ctx, Limit.LETTERS_OF_NETWORK);
        limits.demand(ctx, Limit.LETTER, "desk " + email.strip().toLowerCase(Locale.ROOT));
    }
}
