package groundbass.web.desk.calendar;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.Rhythms;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesId;
import groundbass.form.FieldProblem;
import groundbass.form.Outcome;
import groundbass.publishing.Seen;
import groundbass.publishing.Timetable;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.desk.calendar.WeeksView.Held;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.FieldProblems;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.time.Clock;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;

/** The coming hours of every series: which lesson goes out when, which hours are free, and what waits for one. */
public final class WeeksPage implements PageGroup {
    private static final String PATH = "/desk/weeks";
    private static final String TEMPLATE = "desk/weeks";
    private static final String NO_HOUR = "desk.publish.hour.missing";

    private final DeskContext desk;
    private final SeriesCatalog catalog;
    private final Episodes episodes;
    private final Timetable timetable;
    private final WeekTable table;

    public WeeksPage(
            DeskContext desk,
            SeriesCatalog catalog,
            Episodes episodes,
            Rhythms rhythms,
            Timetable timetable,
            PublishingViews publishing,
            Clock clock) {
        this.desk = desk;
        this.catalog = catalog;
        this.episodes = episodes;
        this.timetable = timetable;
        this.table = new WeekTable(desk, catalog, episodes, rhythms, publishing, clock);
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EDUCATOR, this::show);
        routes.post(PATH + "/promise", Role.EDUCATOR, this::promise);
        routes.post(PATH + "/withdraw", Role.EDUCATOR, this::free);
        routes.post(PATH + "/swap", Role.EDUCATOR, this::swap);
        routes.post(PATH + "/skip", Role.EDUCATOR, ctx -> onDay(ctx, timetable::skip, "desk.weeks.skipped"));
        routes.post(PATH + "/resume", Role.EDUCATOR, ctx -> onDay(ctx, timetable::resume, "desk.weeks.resumed"));
        for (String act : List.of("/promise", "/withdraw", "/swap", "/skip", "/resume")) {
            routes.get(PATH + act, Role.EDUCATOR, ctx -> ctx.redirect(PATH, HttpStatus.SEE_OTHER));
        }
    }

    private void show(Context ctx) {
        var touched = lesson(
                desk.educator(ctx),
                Optional.ofNullable(ctx.queryParam("lesson")).orElse(""));
        desk.pages().show(ctx, TEMPLATE, view(ctx, Optional.empty(), touched));
    }

    private WeeksView view(Context ctx, Optional<Held> held, Optional<Episode> touched) {
        return table.of(desk.educator(ctx), desk.pages().reader(ctx), held, touched);
    }

    private void promise(Context ctx) {
        var who = desk.educator(ctx);
        var chosen = Chosen.read(ctx, "episode", FormParameters.text(ctx, "seen"));
        var episode = needed(who, chosen.id());
        var seen = chosen.seen();
        var outcome = FormParameters.time(FormParameters.text(ctx, "local"), LocalDateTime::parse)
                .<Outcome<?>>map(local -> timetable.promise(who, episode.id(), local, seen))
                .orElseGet(() -> Outcome.refused("local", NO_HOUR));
        answer(ctx, episode, outcome, "desk.promised");
    }

    private void free(Context ctx) {
        var who = desk.educator(ctx);
        var episode = needed(who, FormParameters.text(ctx, "episode"));
        var outcome = timetable.free(who, episode.id(), new Seen(FormParameters.text(ctx, "seen")));
        answer(ctx, episode, outcome, "desk.withdrawn");
    }

    /**
     * A lesson that was chosen among others.
     *
     * @param seen how it stood on the page: named with it, after a space, or what the form says of all that are not
     */
    private record Chosen(String id, Seen seen) {
        static Chosen read(Context ctx, String field, String otherwise) {
            String[] named = FormParameters.text(ctx, field).split(" ", 2);
            return new Chosen(named[0], new Seen(named.length > 1 ? named[1] : otherwise));
        }
    }

    private void swap(Context ctx) {
        var who = desk.educator(ctx);
        var episode = needed(who, FormParameters.text(ctx, "episode"));
        var other = Chosen.read(ctx, "other", "");
        var with = needed(who, other.id());
        var seen = List.of(new Seen(FormParameters.text(ctx, "seen")), other.seen());
        answer(ctx, episode, timetable.swap(who, episode.id(), with.id(), seen), "desk.weeks.swapped");
    }

    /** Leads to where the lesson stands now, or says why it stands where it stood. */
    private void answer(Context ctx, Episode episode, Outcome<?> outcome, String said) {
        if (outcome.problems().isEmpty()) {
            Flash.say(ctx, said);
            ctx.redirect(PATH + "?lesson=" + episode.id() + "#moved", HttpStatus.SEE_OTHER);
        } else {
            String local = FormParameters.text(ctx, "local");
            var path = Optional.of(DeskContext.path(episode));
            refuse(ctx, episode.id().value(), local, path, episode.title(), outcome.problems());
        }
    }

    private void refuse(
            Context ctx, String id, String local, Optional<String> path, String title, List<FieldProblem> problems) {
        boolean meanwhile = Seen.isOtherwise(problems);
        var held = new Held(id, local, path.filter(way -> !meanwhile), title, meanwhile, new FieldProblems(problems));
        ctx.status(meanwhile ? HttpStatus.CONFLICT : HttpStatus.UNPROCESSABLE_CONTENT);
        desk.pages().show(ctx, TEMPLATE, view(ctx, Optional.of(held), Optional.empty()));
    }

    /** What is done with a day of a series. */
    private interface OnDay {
        Outcome<?> act(EducatorId who, SeriesId series, LocalDate day);
    }

    private void onDay(Context ctx, OnDay act, String said) {
        var who = desk.educator(ctx);
        var series = SeriesId.parse(FormParameters.text(ctx, "series"))
                .flatMap(id -> catalog.open(who, Deed.WRITE, id))
                .orElseThrow(NotFoundResponse::new);
        String typed = FormParameters.text(ctx, "day").strip();
        var outcome = FormParameters.time(typed, LocalDate::parse)
                .<Outcome<?>>map(day -> act.act(who, series.id(), day))
                .orElseGet(() -> Outcome.refused("local", NO_HOUR));
        if (outcome.problems().isEmpty()) {
            Flash.say(ctx, said);
            ctx.redirect(PATH + "#day-" + series.id() + "-" + typed, HttpStatus.SEE_OTHER);
        } else {
            refuse(ctx, "", "", Optional.empty(), series.title(), outcome.problems());
        }
    }

    private Episode needed(EducatorId who, String id) {
        return lesson(who, id).orElseThrow(NotFoundResponse::new);
    }

    private Optional<Episode> lesson(EducatorId who, String id) {
        return EpisodeId.parse(id).flatMap(one -> episodes.open(who, Deed.WRITE, one));
    }
}
