package groundbass.web.desk.editor;

import groundbass.form.FieldProblem;
import groundbass.form.Outcome;
import groundbass.publishing.Publisher;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;

/** Brings an episode out: now, or at an hour; takes a promise back; tells how its releases stand. */
public final class PublishingPages implements PageGroup {
    private static final Outcome<Object> NO_HOUR = Outcome.refused("local", "desk.publish.hour.missing");
    private static final int MOST_ACCEPTED = 500;
    private static final Outcome<Object> NO_ZONE = Outcome.refused("zone", "catalog.problem.missing");

    private final DeskContext desk;
    private final Editor editor;
    private final Saving saving;
    private final Publisher publisher;

    public PublishingPages(DeskContext desk, Editor editor, Saving saving, Publisher publisher) {
        this.desk = desk;
        this.editor = editor;
        this.saving = saving;
        this.publisher = publisher;
    }

    @Override
    public void addTo(Routes routes) {
        routes.post(DeskContext.EPISODE + "/publish", Role.ANYONE, this::publish);
        routes.post(
                DeskContext.EPISODE + "/promise",
                Role.ANYONE,
                ctx -> act(ctx, saved -> promise(ctx, saved), "desk.promised"));
        routes.post(DeskContext.EPISODE + "/withdraw", Role.ANYONE, ctx -> act(ctx, this::withdraw, "desk.withdrawn"));
        routes.post(DeskContext.EPISODE + "/trial", Role.ANYONE, this::tryOut);
        routes.get(DeskContext.EPISODE + "/calendar", Role.EDUCATOR, ctx -> editor.calendar(ctx, desk.episode(ctx)));
    }

    private void publish(Context ctx) {
        act(
                ctx,
                saved -> {
                    accept(ctx, saved);
                    return publisher.publishNow(saved.who(), saved.episode().id());
                },
                "desk.publishing");
    }

    /** Saves what was typed and leads to what students would see of it. */
    private void tryOut(Context ctx) {
        saving.save(ctx).ifPresent(saved -> {
            var built = publisher.trials().build(saved.who(), saved.episode().id());
            built.result()
                    .ifPresentOrElse(
                            release -> ctx.redirect("/preview/" + release, HttpStatus.SEE_OTHER),
                            () -> editor.showAgain(ctx, saved.episode(), saved.form(), saved.at(), built.problems()));
        });
    }

    /** Lets stand what the page showed when the box was ticked, and nothing that came up since. */
    private void accept(Context ctx, Saved saved) {
        var digests = Stream.of(FormParameters.text(ctx, "accepted").split(" "))
                .filter(digest -> digest.matches("[0-9a-f]{64}"))
                .limit(MOST_ACCEPTED)
                .toList();
        publisher.accept(saved.who(), saved.episode().id(), digests);
    }

    private Outcome<?> promise(Context ctx, Saved saved) {
        accept(ctx, saved);
        var local = Preview.local(saved.form().local());
        var zone = Preview.zone(saved.form().zone());
        if (local.isEmpty() || zone.isEmpty()) {
            return local.isEmpty() ? NO_HOUR : NO_ZONE;
        }
        return publisher.schedule(saved.who(), saved.episode().id(), local.get(), zone.get());
    }

    private Outcome<?> withdraw(Saved saved) {
        return publisher.withdraw(saved.who(), saved.episode().id());
    }

    /** Saves what was typed, then does what the button says. */
    private void act(Context ctx, Function<Saved, Outcome<?>> action, String said) {
        saving.save(ctx).ifPresent(saved -> {
            List<FieldProblem> problems =
                    saved.problems().isEmpty() ? List.copyOf(action.apply(saved).problems()) : saved.problems();
            if (problems.isEmpty()) {
                Flash.say(ctx, said);
                ctx.redirect(DeskContext.path(ctx) + "#calendar", HttpStatus.SEE_OTHER);
            } else {
                editor.showAgain(ctx, saved.episode(), saved.form(), saved.at(), problems);
            }
        });
    }
}
