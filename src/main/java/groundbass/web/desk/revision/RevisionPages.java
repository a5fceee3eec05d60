package groundbass.web.desk.revision;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.episode.Revision;
import groundbass.catalog.episode.RevisionId;
import groundbass.lesson.Sheets;
import groundbass.publishing.DocumentComparison;
import groundbass.release.Release;
import groundbass.release.Releases;
import groundbass.text.Message;
import groundbass.text.Messages;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.desk.access.Reauthentication;
import groundbass.web.desk.revision.RevisionView.Row;
import groundbass.web.desk.revision.RevisionView.State;
import groundbass.web.desk.room.Room;
import groundbass.web.desk.room.Rooms;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** The states of a lesson that are kept: what each of them brought, how two differ bar by bar, and the way back to one. */
public final class RevisionPages implements PageGroup {
    static final int A_PAGE = 20;

    private static final String PATH = DeskContext.EPISODE + "/revisions";
    private static final String ONE = PATH + "/{number}";
    private static final String RESTORE = ONE + "/restore";

    private final DeskContext desk;
    private final Rooms rooms;
    private final Reauthentication reauthentication;
    private final EpisodeService writing;
    private final Releases releases;

    public RevisionPages(
            DeskContext desk,
            Rooms rooms,
            Reauthentication reauthentication,
            EpisodeService writing,
            Releases releases) {
        this.desk = desk;
        this.rooms = rooms;
        this.reauthentication = reauthentication;
        this.writing = writing;
        this.releases = releases;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EDUCATOR, this::list);
        routes.post(PATH, Role.ANYONE, this::keep);
        routes.get(ONE, Role.EDUCATOR, this::compare);
        routes.post(RESTORE, Role.ANYONE, this::restore);
        routes.get(RESTORE, Role.EDUCATOR, this::asked);
    }

    /** The address in the browser after a sign-in was asked for: it leads to the revision. */
    private void asked(Context ctx) {
        desk.episode(ctx);
        lead(ctx, "/revisions/" + number(ctx));
    }

    private static void lead(Context ctx, String way) {
        ctx.redirect(DeskContext.path(ctx) + way, HttpStatus.SEE_OTHER);
    }

    private void keep(Context ctx) {
        reauthentication.writer(ctx).ifPresent(who -> {
            var episode = desk.episode(ctx, who);
            var kept = writing.makeRevision(who, episode.id(), FormParameters.text(ctx, "revisionNote"));
            boolean done = kept.problems().isEmpty();
            Flash.say(ctx, done ? "desk.revision" : "desk.held");
            lead(ctx, done ? "/revisions" : Room.PUBLISH.way());
        });
    }

    private void restore(Context ctx) {
        int number = number(ctx);
        reauthentication.writer(ctx).ifPresent(who -> {
            var episode = desk.episode(ctx, who);
            String why = desk.pages().reader(ctx).say(Message.of("desk.revision.before", number));
            writing.restore(who, episode.id(), number, why).result().orElseThrow(NotFoundResponse::new);
            Flash.say(ctx, "desk.restored");
            lead(ctx, Room.LINE.way());
        });
    }

    /** Newest first, so many on a page; {@code ?to=20} begins at revision 20. */
    private void list(Context ctx) {
        var episode = desk.episode(ctx);
        var who = desk.educator(ctx);
        // one more than is shown is what the last one shown is compared with
        var found = writing.revisions(who, episode.id(), given(ctx, "to").orElse(Integer.MAX_VALUE), A_PAGE + 1);
        var released = released(episode);
        var rows = desk.work(who, () -> IntStream.range(0, Math.min(found.size(), A_PAGE))
                .mapToObj(i -> row(ctx, found, i, released))
                .toList());
        var older = Optional.of(found)
                .filter(more -> more.size() > A_PAGE)
                .map(more -> DeskContext.path(episode) + "/revisions?to="
                        + more.get(A_PAGE).number());
        desk.pages()
                .show(
                        ctx,
                        "desk/revisions",
                        new RevisionView.Listed(rooms.view(ctx, Room.PUBLISH, episode), rows, older));
    }

    private Row row(Context ctx, List<Revision> found, int place, Map<RevisionId, Integer> released) {
        var revision = found.get(place);
        var brought = place + 1 < found.size()
                ? DocumentComparison.onTheDesk(found.get(place + 1).document(), revision.document())
                : List.<Message>of();
        return new Row(
                revision.number(),
                revision.createdAt(),
                desk.nameOfOther(ctx, revision.by()),
                revision.note(),
                Optional.ofNullable(released.get(revision.id())),
                RevisionView.joined(brought));
    }

    /** The number of the last release that was made from each revision. */
    private Map<RevisionId, Integer> released(Episode episode) {
        return releases.of(episode.id()).stream()
                .map(Release::spec)
                .collect(Collectors.toMap(spec -> spec.revision(), spec -> spec.release(), Math::max));
    }

    /** A revision beside what is written now, or beside a later revision: {@code ?with=7}. */
    private void compare(Context ctx) {
        var who = desk.educator(ctx);
        var episode = desk.episode(ctx);
        var revision = revision(who, episode, number(ctx));
        var later = given(ctx, "with").map(number -> revision(who, episode, number));
        var room = rooms.view(ctx, Room.PUBLISH, episode);
        var document = later.map(Revision::document).orElseGet(() -> writing.draft(who, episode.id())
                .orElseThrow(NotFoundResponse::new)
                .document());
        var sheets = new Sheets(
                        Messages.of(Locale.forLanguageTag(document.settings().language())))
                .with(desk.style(episode));
        var lines = desk.work(who, () -> new ComparedLines(sheets).of(revision.document(), document));
        var view = new RevisionView(
                room,
                state(ctx, revision),
                later.map(one -> state(ctx, one)),
                others(who, episode, revision),
                lines,
                RevisionView.joined(DocumentComparison.besideTheLines(revision.document(), document)),
                revision.document().mainLine().text());
        desk.pages().show(ctx, "desk/revision", view);
    }

    private State state(Context ctx, Revision revision) {
        return new State(
                revision.number(), revision.createdAt(), desk.nameOfOther(ctx, revision.by()), revision.note());
    }

    /** They are counted from 1 without a gap. */
    private List<Integer> others(EducatorId who, Episode episode, Revision revision) {
        int newest = writing.revisions(who, episode.id(), Integer.MAX_VALUE, 1).stream()
                .mapToInt(Revision::number)
                .max()
                .orElse(0);
        return IntStream.range(0, newest)
                .mapToObj(back -> newest - back)
                .filter(number -> number != revision.number())
                .toList();
    }

    private Revision revision(EducatorId who, Episode episode, int number) {
        return writing.revision(who, episode.id(), number).orElseThrow(NotFoundResponse::new);
    }

    private static int number(Context ctx) {
        return number(ctx.pathParam("number")).orElseThrow(NotFoundResponse::new);
    }

    private static Optional<Integer> given(Context ctx, String name) {
        return Optional.ofNullable(ctx.queryParam(name)).flatMap(RevisionPages::number);
    }

    private static Optional<Integer> number(String text) {
        return text.matches("[1-9][0-9]{0,5}") ? Optional.of(Integer.parseInt(text)) : Optional.empty();
    }
}
