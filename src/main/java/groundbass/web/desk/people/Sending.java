package groundbass.web.desk.people;

import groundbass.audience.colleague.Invitation;
import groundbass.audience.colleague.Invitations;
import groundbass.audience.colleague.Invited;
import groundbass.audience.colleague.Offer;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.Educators;
import groundbass.form.FieldProblem;
import groundbass.post.EmailAddress;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.shell.Flash;
import groundbass.web.shell.limit.Limit;
import groundbass.web.shell.limit.RateLimits;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Locale;
import java.util.Optional;

/** Sends invitations: by mail where mail leaves this machine, else with a link that is shown once, to be passed on. */
final class Sending {
    private final DeskContext desk;
    private final Educators educators;
    private final Invitations invitations;
    private final RateLimits limits;
    private final boolean mailed;

    /** @param mailed whether letters leave this machine */
    Sending(DeskContext desk, Educators educators, Invitations invitations, RateLimits limits, boolean mailed) {
        this.desk = desk;
        this.educators = educators;
        this.invitations = invitations;
        this.limits = limits;
        this.mailed = mailed;
    }

    /** What is wrong with an address that was typed; whether somebody here has it is not told. */
    Optional<FieldProblem> problem(Context ctx, String typed) {
        var address = EmailAddress.read(typed);
        if (address.isEmpty()) {
            return Optional.of(FieldProblem.of("email", "catalog.problem.email", typed));
        }
        boolean own = educators
                .find(desk.educator(ctx))
                .filter(me -> me.email().equals(address.get().value()))
                .isPresent();
        return own ? Optional.of(FieldProblem.of("email", "people.problem.yourself")) : Optional.empty();
    }

    /** Invites, and answers; {@code back} is the page that it was asked on. */
    void invite(Context ctx, Offer offer, EmailAddress email, String back) {
        count(ctx, email);
        answer(ctx, invitations.invite(desk.educator(ctx), offer, email, letter(ctx)), back);
    }

    void sendAgain(Context ctx, Invitation invitation, String back) {
        count(ctx, invitation.email());
        answer(ctx, invitations.sendAgain(desk.educator(ctx), invitation, letter(ctx)), back);
    }

    /** Offers something to somebody with a desk, who finds the question there; also by mail, where it leaves. */
    void offer(Context ctx, Offer offer, EducatorId to, String back) {
        educators.find(to).flatMap(one -> EmailAddress.read(one.email())).ifPresent(email -> {
            count(ctx, email);
            invitations.offer(desk.educator(ctx), offer, to, email, letter(ctx));
            Flash.say(ctx, "people.offered");
        });
        ctx.redirect(back, HttpStatus.SEE_OTHER);
    }

    private void count(Context ctx, EmailAddress email) {
        limits.demand(ctx, Limit.INVITATION, desk.educator(ctx).value());
        limits.demand(ctx, Limit.LETTER, "invitation " + email);
    }

    private Optional<Locale> letter(Context ctx) {
        return mailed ? Optional.of(desk.pages().reader(ctx).locale()) : Optional.empty();
    }

    private void answer(Context ctx, Invited invited, String back) {
        if (mailed) {
            Flash.say(ctx, "people.invited");
            ctx.redirect(back, HttpStatus.SEE_OTHER);
            return;
        }
        var address = desk.pages().address("/desk/invitation/" + invited.token().value());
        desk.pages()
                .show(
                        ctx,
                        "desk/invited",
                        new Shown(
                                address.toString(),
                                invited.invitation().email().value(),
                                Invitations.VALID.toDays(),
                                back));
    }

    /** A link that is shown this once. */
    public record Shown(String address, String email, long days, String back) {}
}
