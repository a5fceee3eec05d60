package groundbass.web.desk.people;

import groundbass.audience.colleague.Invitation;
import groundbass.audience.colleague.Invitations;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.identity.IdForm;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.util.Optional;

/** What is done about an invitation: by who may invite to the same, and by whom it is to, at their desk. */
final class PendingPages implements PageGroup {
    private static final String PATH = "/desk/invitations/{invitation}";

    private final DeskContext desk;
    private final SeriesCatalog catalog;
    private final Invitations invitations;
    private final Sending sending;

    PendingPages(DeskContext desk, SeriesCatalog catalog, Invitations invitations, Sending sending) {
        this.desk = desk;
        this.catalog = catalog;
        this.invitations = invitations;
        this.sending = sending;
    }

    @Override
    public void addTo(Routes routes) {
        routes.post(PATH + "/again", Role.EDUCATOR, this::again);
        routes.post(PATH + "/withdraw", Role.EDUCATOR, this::withdraw);
        routes.post(PATH + "/accept", Role.EDUCATOR, this::accept);
        routes.post(PATH + "/decline", Role.EDUCATOR, this::decline);
    }

    private void again(Context ctx) {
        var invitation = theirs(ctx);
        sending.sendAgain(ctx, invitation, back(invitation));
    }

    private void withdraw(Context ctx) {
        var invitation = theirs(ctx);
        invitations.withdraw(desk.educator(ctx), invitation);
        Flash.say(ctx, "people.withdrawn");
        ctx.redirect(back(invitation), HttpStatus.SEE_OTHER);
    }

    private void accept(Context ctx) {
        var invitation = sentTo(ctx);
        boolean accepted = invitations.accept(desk.educator(ctx), invitation.id());
        Flash.say(ctx, accepted ? "people.accepted" : "people.gone");
        ctx.redirect("/desk", HttpStatus.SEE_OTHER);
    }

    private void decline(Context ctx) {
        var invitation = sentTo(ctx);
        invitations.decline(desk.educator(ctx), invitation);
        Flash.say(ctx, "people.declined");
        ctx.redirect("/desk", HttpStatus.SEE_OTHER);
    }

    /** The invitation of the address, where whoever is signed in may invite to the same. */
    private Invitation theirs(Context ctx) {
        return named(ctx).filter(one -> mayInvite(ctx, one)).orElseThrow(NotFoundResponse::new);
    }

    private boolean mayInvite(Context ctx, Invitation invitation) {
        return invitation
                .offer()
                .ofSeries()
                .map(series ->
                        catalog.open(desk.educator(ctx), Deed.KEEP, series).isPresent())
                .orElseGet(() -> desk.standing(ctx).keepsSite());
    }

    private Invitation sentTo(Context ctx) {
        return named(ctx).filter(one -> one.isTo(desk.educator(ctx))).orElseThrow(NotFoundResponse::new);
    }

    private Optional<Invitation> named(Context ctx) {
        return Optional.of(ctx.pathParam("invitation")).filter(IdForm::isId).flatMap(invitations::find);
    }

    private static String back(Invitation invitation) {
        return invitation
                .offer()
                .ofSeries()
                .map(series -> "/desk/series/" + series + "/colleagues")
                .orElse("/desk/people");
    }
}
