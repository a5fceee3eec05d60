package groundbass.web.desk.people;

import groundbass.audience.colleague.Invitations;
import groundbass.audience.colleague.Offer;
import groundbass.audience.colleague.Partings;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.educator.Member;
import groundbass.catalog.educator.SiteStanding;
import groundbass.form.FieldProblem;
import groundbass.form.Outcome;
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

/** Who is at the desks of this site, for who keeps it. */
final class PeoplePages implements PageGroup {
    private static final String PATH = "/desk/people";
    private static final String TEMPLATE = "desk/people";
    private static final String GONE = "people.problem.gone";

    private final DeskContext desk;
    private final Educators educators;
    private final Invitations invitations;
    private final Partings partings;
    private final EducatorSignIn signIn;
    private final Sending sending;
    private final Clock clock;

    PeoplePages(
            DeskContext desk,
            Educators educators,
            Invitations invitations,
            Partings partings,
            EducatorSignIn signIn,
            Sending sending,
            Clock clock) {
        this.desk = desk;
        this.educators = educators;
        this.invitations = invitations;
        this.partings = partings;
        this.signIn = signIn;
        this.sending = sending;
        this.clock = clock;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.OWNER, ctx -> desk.pages()
                .show(ctx, TEMPLATE, view(ctx, "", Chosen.NOBODY, FieldProblems.NONE)));
        routes.post(PATH, Role.OWNER, this::invite);
        routes.post(PATH + "/end", Role.OWNER, this::end);
        routes.post(PATH + "/hand-over", Role.OWNER, this::handOver);
        for (String act : List.of("/end", "/hand-over")) {
            routes.get(PATH + act, Role.OWNER, ctx -> ctx.redirect(PATH, HttpStatus.SEE_OTHER));
        }
    }

    private void invite(Context ctx) {
        String typed = FormParameters.text(ctx, "email");
        Optional<FieldProblem> problem = sending.problem(ctx, typed);
        if (problem.isPresent()) {
            showAgain(ctx, typed, Chosen.NOBODY, List.of(problem.get()));
            return;
        }
        sending.invite(ctx, new Offer.OwnDesk(), EmailAddress.read(typed).orElseThrow(), PATH);
    }

    private void end(Context ctx) {
        var who = person(ctx);
        String heir = FormParameters.text(ctx, "heir");
        var chosen = new Chosen(id(who), heir, "");
        var doubt = who.flatMap(one -> signIn.doubt(ctx, me(ctx)));
        if (doubt.isPresent()) {
            showAgain(ctx, "", chosen, at(id(who), List.of(doubt.get())));
            return;
        }
        var outcome = who.map(one -> partings.fromSite(desk.educator(ctx), one, EducatorId.parse(heir)))
                .orElseGet(() -> Outcome.refused("", GONE));
        if (outcome.result().isPresent()) {
            Flash.say(ctx, "people.closed");
            ctx.redirect(PATH, HttpStatus.SEE_OTHER);
        } else {
            showAgain(ctx, "", chosen, at(id(who), outcome.problems()));
        }
    }

    /** Each person has a form of their own on the page, so its fields carry their id. */
    private static List<FieldProblem> at(String id, List<FieldProblem> problems) {
        return problems.stream()
                .map(one ->
                        new FieldProblem(one.field().isEmpty() ? "" : one.field() + "-" + id, one.key(), one.args()))
                .toList();
    }

    private void handOver(Context ctx) {
        var to = person(ctx);
        var chosen = new Chosen("", "", id(to));
        if (to.isEmpty()) {
            showAgain(ctx, "", chosen, List.of(FieldProblem.of("", GONE)));
            return;
        }
        var doubt = signIn.doubt(ctx, me(ctx));
        if (doubt.isEmpty()) {
            sending.offer(ctx, new Offer.TheSite(), to.get(), PATH);
        } else {
            showAgain(ctx, "", chosen, at("hand", List.of(doubt.get())));
        }
    }

    private static String id(Optional<EducatorId> who) {
        return who.map(EducatorId::value).orElse("");
    }

    private Educator me(Context ctx) {
        return educators.find(desk.educator(ctx)).orElseThrow();
    }

    /** Somebody with a desk, who does not keep the site. */
    private Optional<EducatorId> person(Context ctx) {
        return EducatorId.parse(FormParameters.text(ctx, "who")).filter(who -> educators
                .standing(who)
                .filter(one -> one != SiteStanding.OWNER)
                .isPresent());
    }

    private void showAgain(Context ctx, String email, Chosen chosen, List<FieldProblem> problems) {
        desk.pages().showAgain(ctx, TEMPLATE, view(ctx, email, chosen, new FieldProblems(problems)));
    }

    private View view(Context ctx, String email, Chosen chosen, FieldProblems problems) {
        Instant now = clock.instant();
        var people = educators.members().stream().map(this::row).toList();
        var pending = invitations.ofSite().stream()
                .map(one -> PendingRow.of(one, "", now))
                .toList();
        var me = me(ctx);
        return new View(
                people,
                pending,
                me.email(),
                signIn.hasFactor(me.id()),
                email,
                chosen,
                Audit.SIGN_INS_KEPT.toDays(),
                problems);
    }

    private Row row(Member member) {
        var held = partings.held(member.educator().id());
        boolean owns = held.stream().anyMatch(one -> one.part().isOwner());
        return new Row(
                member.educator().id().value(),
                member.educator().name(),
                member.educator().email(),
                member.educator().createdAt(),
                member.standing(),
                held,
                owns,
                member.hasFactor(),
                member.lastSignIn());
    }

    /**
     * What the page shows.
     *
     * @param me    with which address its reader signs in, for the browser's store of passwords
     * @param factor whether they have a second factor
     * @param email what was typed
     * @param days  for how long it is kept who signed in
     */
    public record View(
            List<Row> people,
            List<PendingRow> pending,
            String me,
            boolean factor,
            String email,
            Chosen chosen,
            long days,
            FieldProblems problems) {
        /** Those to whom the site can be handed over, or whose desk can be closed. */
        public List<Row> others() {
            return people.stream().filter(row -> !row.keepsSite()).toList();
        }

        /** Who can take over the series of somebody. */
        public List<Row> heirs(Row of) {
            return people.stream().filter(row -> !row.id().equals(of.id())).toList();
        }
    }

    /**
     * What was chosen before, by ids; empty where nothing was.
     *
     * @param closing whose desk was to be closed, and {@code heir} who was to take the series over
     * @param handing to whom the site was to be handed
     */
    public record Chosen(String closing, String heir, String handing) {
        static final Chosen NOBODY = new Chosen("", "", "");
    }

    /**
     * Somebody with a desk.
     *
     * @param owns whether any series is theirs
     */
    public record Row(
            String id,
            String name,
            String email,
            Instant since,
            SiteStanding standing,
            List<Partings.Held> series,
            boolean owns,
            boolean hasFactor,
            Optional<Instant> lastSignIn) {
        public boolean keepsSite() {
            return standing.keepsSite();
        }
    }
}
