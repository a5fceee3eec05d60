package groundbass.web.desk.editor;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeService;
import groundbass.document.EpisodeDocument;
import groundbass.form.FieldProblem;
import groundbass.intake.Brought;
import groundbass.intake.Intake;
import groundbass.intake.Intake.Outcome;
import groundbass.intake.Intake.Refused;
import groundbass.intake.Intake.Unclear;
import groundbass.intake.notice.FilePart;
import groundbass.intake.notice.Notice;
import groundbass.text.Message;
import groundbass.text.Messages;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.desk.access.Reauthentication;
import groundbass.web.desk.line.LinePreview;
import groundbass.web.desk.room.Room;
import groundbass.web.desk.room.RoomView;
import groundbass.web.desk.room.Rooms;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.shell.limit.Limit;
import groundbass.web.shell.limit.RateLimits;
import groundbass.web.view.FieldProblems;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/**
 * Brings a file of another program in as a lesson's line. What it became is shown with everything that was guessed,
 * changed or left out, and takes the line's place only when the educator says so; what stood there is kept as a revision.
 */
final class BringInPages implements PageGroup {
    private static final String PATH = DeskContext.EPISODE + Room.LINE.way() + "/bring";

    private final DeskContext desk;
    private final Rooms rooms;
    private final LineRoom line;
    private final Reauthentication reauthentication;
    private final EpisodeService writing;
    private final LinePreviews previews;
    private final RateLimits limits;

    BringInPages(
            DeskContext desk,
            Rooms rooms,
            LineRoom line,
            Reauthentication reauthentication,
            EpisodeService writing,
            LinePreviews previews,
            RateLimits limits) {
        this.desk = desk;
        this.rooms = rooms;
        this.line = line;
        this.reauthentication = reauthentication;
        this.writing = writing;
        this.previews = previews;
        this.limits = limits;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EDUCATOR, ctx -> show(ctx, FieldProblems.NONE, List.of(), Optional.empty()));
        routes.postFiles(PATH, Role.EDUCATOR, this::read);
        routes.post(PATH + "/take", Role.ANYONE, this::take);
    }

    private void show(Context ctx, FieldProblems problems, List<FilePart> parts, Optional<Found> found) {
        var room = rooms.view(ctx, line, desk.episode(ctx)).with(problems);
        desk.pages().show(ctx, "desk/bring", new View(room, parts, found));
    }

    private void read(Context ctx) throws IOException {
        var who = desk.educator(ctx);
        limits.demand(ctx, Limit.UPLOAD, "educator " + who);
        var episode = desk.episode(ctx);
        var part = ctx.uploadedFile("file");
        if (part == null || part.filename().isBlank()) {
            refuse(ctx, Message.of("catalog.problem.missing"), List.of());
            return;
        }
        byte[] file;
        try (var in = part.content()) {
            file = in.readNBytes(Intake.LARGEST + 1);
        }
        var outcome = desk.work(who, () -> Intake.read(file, wanted(ctx)));
        answer(ctx, episode, part.filename(), outcome);
    }

    private static Optional<Integer> wanted(Context ctx) {
        return Optional.of(FormParameters.text(ctx, "part"))
                .filter(number -> number.matches("[1-9][0-9]{0,3}"))
                .map(Integer::valueOf);
    }

    private void answer(Context ctx, Episode episode, String name, Outcome outcome) {
        if (outcome instanceof Brought brought) {
            show(ctx, FieldProblems.NONE, brought.parts(), Optional.of(found(ctx, episode, name, brought)));
        } else if (outcome instanceof Unclear unclear) {
            refuse(ctx, Message.of("desk.bring.unclear"), unclear.parts());
        } else {
            refuse(ctx, ((Refused) outcome).why(), List.of());
        }
    }

    private void refuse(Context ctx, Message why, List<FilePart> parts) {
        ctx.status(HttpStatus.UNPROCESSABLE_CONTENT);
        var problem = new FieldProblem("file", why.key(), why.args());
        show(ctx, new FieldProblems(List.of(problem)), parts, Optional.empty());
    }

    private Found found(Context ctx, Episode episode, String name, Brought brought) {
        String text = brought.text(Messages.of(desk.pages().reader(ctx).locale()));
        var document = document(ctx, episode);
        var live = previews.of(ctx, episode, document, "mainLine", text);
        boolean replaces = !document.mainLine().text().isBlank();
        return new Found(name, brought.part(), text, brought.notices(), live, replaces);
    }

    private EpisodeDocument document(Context ctx, Episode episode) {
        return writing.draft(desk.educator(ctx), episode.id())
                .orElseThrow(NotFoundResponse::new)
                .document();
    }

    /**
     * What stood in the line's place is kept first, be it sound or half done; another window that wrote on it meanwhile is
     * asked as ever.
     */
    private void take(Context ctx) {
        reauthentication.writer(ctx).ifPresent(who -> {
            var episode = desk.episode(ctx, who);
            var before = writing.draft(who, episode.id()).orElseThrow(NotFoundResponse::new);
            if (!before.document().mainLine().text().isBlank()) {
                String note = desk.pages().reader(ctx).say(Message.of("desk.bring.before"));
                writing.keep(who, episode.id(), note).result().orElseThrow(NotFoundResponse::new);
            }
            rooms.save(ctx, line, kept -> rooms.back(ctx, line, "desk.bring.taken"));
        });
    }

    /**
     * What a file became.
     *
     * @param name of the file
     * @param part which of its parts the line is
     * @param replaces whether the lesson has a line that this one would stand in place of
     */
    public record Found(
            String name, FilePart part, String text, List<Notice> notices, LinePreview live, boolean replaces) {}

    /**
     * @param parts those of the file, where there are several
     * @param found what it became, where it could be read
     */
    public record View(RoomView room, List<FilePart> parts, Optional<Found> found) {}
}
