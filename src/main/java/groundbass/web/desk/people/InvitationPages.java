package groundbass.web.desk.people;

import groundbass.audience.colleague.Invitation;
import groundbass.audience.colleague.Invitations;
import groundbass.audience.student.SecretToken;
import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.Educators;
import groundbass.text.Message;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.EducatorSignIn;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.shell.AccessFilter;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.FieldProblems;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Optional;

/**
 * The page behind the link of an invitation. Opening it changes nothing, since mail scanners open links; it shows a way in
 * for who has a desk and one for who has none, so that it does not tell which of them its reader is.
 */
final class InvitationPages implements PageGroup {
    private static final String PATH = "/desk/invitation/{token}";
    private static final String TEMPLATE = "desk/invitation";

    private final DeskContext desk;
    private final Educators educators;
    private final Invitations invitations;
    private final EducatorSignIn signIn;

    InvitationPages(DeskContext desk, Educators educators, Invitations invitations, EducatorSignIn signIn) {
        this.desk = desk;
        this.educators = educators;
        this.invitations = invitations;
        this.signIn = signIn;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.ANYONE, ctx -> show(ctx, "", FieldProblems.NONE));
        routes.post(PATH, Role.ANYONE, this::accept);
        routes.post(PATH + "/new", Role.ANYONE, this::open);
        routes.get(PATH + "/new", Role.ANYONE, ctx -> lead(ctx));
    }

    private void show(Context ctx, String name, FieldProblems problems) {
        var invitation = invitations.find(token(ctx));
        if (invitation.isEmpty()) {
            over(ctx);
            return;
        }
        var view = view(ctx, invitation.get(), name, problems);
        if (problems.isEmpty()) {
            desk.pages().show(ctx, TEMPLATE, view);
        } else {
            desk.pages().showAgain(ctx, TEMPLATE, view);
        }
    }

    private View view(Context ctx, Invitation invitation, String name, FieldProblems problems) {
        var me = me(ctx);
        return new View(
                "/desk/invitation/" + ctx.pathParam("token"),
                invitations.name(invitation.by()),
                Message.of(invitation.offer().key(), invitations.title(invitation.offer())),
                Message.of(invitation.offer().key() + ".may"),
                invitation.email().value(),
                invitation.offer().handsOver(),
                me.map(Educator::email),
                me.filter(invitation::isLinkOf).isPresent(),
                name,
                problems);
    }

    private void accept(Context ctx) {
        signIn.countSetUp(ctx);
        var invitation = invitations.find(token(ctx));
        var me = me(ctx);
        if (invitation.isEmpty()) {
            signIn.noteRefusedEntry(ctx);
            over(ctx);
        } else if (me.isEmpty()) {
            AccessFilter.sendToSignIn(ctx, Role.EDUCATOR, "/desk");
        } else if (invitations.accept(me.get(), token(ctx))) {
            Flash.say(ctx, "people.accepted");
            ctx.redirect("/desk", HttpStatus.SEE_OTHER);
        } else {
            lead(ctx);
        }
    }

    private void open(Context ctx) {
        signIn.countSetUp(ctx);
        String name = FormParameters.text(ctx, "name");
        var outcome = invitations.accept(token(ctx), name, FormParameters.text(ctx, "password"));
        if (outcome.isEmpty()) {
            signIn.noteRefusedEntry(ctx);
            over(ctx);
        } else if (outcome.get().result().isEmpty()) {
            show(ctx, name, new FieldProblems(outcome.get().problems()));
        } else {
            signIn.open(ctx, outcome.get().result().get().id());
            Flash.say(ctx, "people.accepted");
            ctx.redirect("/desk", HttpStatus.SEE_OTHER);
        }
    }

    private void over(Context ctx) {
        ctx.status(HttpStatus.GONE);
        desk.pages().show(ctx, "desk/invitation-over", new Over());
    }

    private static void lead(Context ctx) {
        ctx.redirect("/desk/invitation/" + token(ctx).value(), HttpStatus.SEE_OTHER);
    }

    private Optional<Educator> me(Context ctx) {
        return desk.principal(ctx).flatMap(educators::find);
    }

    private static SecretToken token(Context ctx) {
        return new SecretToken(ctx.pathParam("token"));
    }

    /**
     * What the page shows.
     *
     * @param offer    what its reader is invited to, and {@code may} what they can do then
     * @param handsOver whether only who has a desk can accept it
     * @param signedIn with which address this browser is signed in
     * @param mine     whether whoever is signed in may accept the invitation
     */
    public record View(
            String path,
            String inviter,
            Message offer,
            Message may,
            String email,
            boolean handsOver,
            Optional<String> signedIn,
            boolean mine,
            String name,
            FieldProblems problems) {}

    /** A link that does not work any more. */
    public record Over() {}
}
