package groundbass.web.desk.people;

import groundbass.audience.colleague.Invitations;
import groundbass.audience.colleague.Offer;
import groundbass.audience.colleague.Partings;
import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.series.Colleague;
import groundbass.catalog.series.Colleagues;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesPart;
import groundbass.form.FieldProblem;
import groundbass.post.EmailAddress;
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

/** Who works on a series beside its owner: for the owner, who invites them and ends it. */
final class ColleaguePages implements PageGroup {
    private static final String PATH = "/desk/series/{id}/colleagues";
    private static final String TEMPLATE = "desk/colleagues";

    private final DeskContext desk;
    private final Educators educators;
    private final Colleagues colleagues;
    private final Invitations invitations;
    private final Partings partings;
    private final EducatorSignIn signIn;
    private final Sending sending;
    private final Clock clock;

    ColleaguePages(
            DeskContext desk,
            Educators educators,
            Colleagues colleagues,
            Invitations invitations,
            Partings partings,
            EducatorSignIn signIn,
            Sending sending,
            Clock clock) {
        this.desk = desk;
        this.educators = educators;
        this.colleagues = colleagues;
        this.invitations = invitations;
        this.partings = partings;
        this.signIn = signIn;
        this.sending = sending;
        this.clock = clock;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EDUCATOR, ctx -> desk.pages()
                .show(ctx, TEMPLATE, view(ctx, series(ctx), Typed.NOTHING, FieldProblems.NONE)));
        routes.post(PATH, Role.EDUCATOR, this::invite);
        routes.post(PATH + "/end", Role.EDUCATOR, this::end);
        routes.post(PATH + "/hand-over", Role.EDUCATOR, this::handOver);
        for (String act : List.of("/end", "/hand-over")) {
            routes.get(PATH + act, Role.EDUCATOR, ctx -> lead(ctx, series(ctx)));
        }
    }

    private Series series(Context ctx) {
        return desk.series(ctx, Deed.KEEP);
    }

    private void invite(Context ctx) {
        var series = series(ctx);
        String typed = FormParameters.text(ctx, "email");
        var part = SeriesPart.parse(FormParameters.text(ctx, "part"))
                .filter(SeriesPart.SHARED::contains)
                .orElse(SeriesPart.READER_OF_FIGURES);
        Optional<FieldProblem> problem = sending.problem(ctx, typed);
        if (problem.isPresent()) {
            showAgain(ctx, series, new Typed(typed, part, ""), problem.get());
            return;
        }
        var email = EmailAddress.read(typed).orElseThrow();
        sending.invite(ctx, new Offer.InSeries(series.id(), part), email, path(series));
    }

    private void end(Context ctx) {
        var series = series(ctx);
        boolean ended = colleague(ctx, series)
                .filter(one -> partings.fromSeries(desk.educator(ctx), one.id(), series.id()))
                .isPresent();
        Flash.say(ctx, ended ? "people.ended" : "people.gone");
        lead(ctx, series);
    }

    private void handOver(Context ctx) {
        var series = series(ctx);
        var to = colleague(ctx, series);
        if (to.isEmpty()) {
            Flash.say(ctx, "people.gone");
            lead(ctx, series);
            return;
        }
        var who = to.get().id();
        var doubt = signIn.doubt(ctx, me(ctx));
        if (doubt.isEmpty()) {
            sending.offer(ctx, new Offer.InSeries(series.id(), SeriesPart.OWNER), who, path(series));
        } else {
            var typed = new Typed("", SeriesPart.EDITOR, who.value());
            // the fields of this form are told from others by their ending
            showAgain(
                    ctx,
                    series,
                    typed,
                    new FieldProblem(
                            doubt.get().field() + "-hand",
                            doubt.get().key(),
                            doubt.get().args()));
        }
    }

    private void showAgain(Context ctx, Series series, Typed typed, FieldProblem problem) {
        desk.pages().showAgain(ctx, TEMPLATE, view(ctx, series, typed, new FieldProblems(List.of(problem))));
    }

    private Educator me(Context ctx) {
        return educators.find(desk.educator(ctx)).orElseThrow();
    }

    private Optional<Colleague> colleague(Context ctx, Series series) {
        return EducatorId.parse(FormParameters.text(ctx, "who")).flatMap(who -> colleagues.of(series.id(), who));
    }

    private static void lead(Context ctx, Series series) {
        ctx.redirect(path(series), HttpStatus.SEE_OTHER);
    }

    private static String path(Series series) {
        return "/desk/series/" + series.id() + "/colleagues";
    }

    private View view(Context ctx, Series series, Typed typed, FieldProblems problems) {
        Instant now = clock.instant();
        var pending = invitations.of(series.id()).stream()
                .map(one -> PendingRow.of(one, series.title(), now))
                .toList();
        var me = me(ctx);
        return new View(
                path(series),
                series.title(),
                colleagues.of(series.id()),
                pending,
                me.email(),
                signIn.hasFactor(me.id()),
                typed,
                problems);
    }

    /**
     * What the page shows.
     *
     * @param me with which address its reader signs in, for the browser's store of passwords
     * @param factor whether they have a second factor
     */
    public record View(
            String path,
            String series,
            List<Colleague> colleagues,
            List<PendingRow> pending,
            String me,
            boolean factor,
            Typed typed,
            FieldProblems problems) {
        public List<SeriesPart> parts() {
            return SeriesPart.SHARED;
        }
    }

    /**
     * What was typed and chosen before.
     *
     * @param email whom to invite, and {@code part} as what
     * @param handing the id of whom the series was to be handed to; empty where it was not
     */
    public record Typed(String email, SeriesPart part, String handing) {
        static final Typed NOTHING = new Typed("", SeriesPart.EDITOR, "");
    }
}
